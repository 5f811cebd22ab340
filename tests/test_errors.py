"""One error table, one shape, and no sentence that nobody says."""

from __future__ import annotations

import ast
import re
import string
from pathlib import Path

import pytest

from tarebook.errors import ERRORS, TarebookError, describe
from tests.machine import ROOT

ON_PHONE = ROOT / "webapp" / "src"
SOURCES = [
    path
    for folder in (ROOT / "server" / "tarebook", ON_PHONE)
    for path in folder.rglob("*")
    if path.suffix in {".py", ".ts", ".tsx"} and "generated" not in path.parts and path.parent.name != "errors"
]
COMPOSED = re.compile(r"fuel_class_\w+|ballast_(front|left)_(low|high)")  # of a beginning and what the core knows


@pytest.mark.parametrize("code", ERRORS)
def test_a_row_says_what_happened_and_what_to_do(code: str) -> None:
    row = ERRORS[code]
    assert row.status == 200 or 400 <= row.status < 600
    assert row.sentence.endswith((".", "?"))
    assert row.do.endswith((".", "{cars}.", "pip install ."))
    assert code.isascii()
    assert code == code.lower()


def silent(sources: list[Path]) -> set[str]:
    said = "\n".join(path.read_text(encoding="utf-8") for path in sources)
    return {code for code in ERRORS if f'"{code}"' not in said and not COMPOSED.fullmatch(code)}


def test_every_code_is_said_somewhere() -> None:
    assert silent(SOURCES) == set()


def test_the_phone_carries_no_row_that_it_never_says() -> None:
    unsaid = silent([path for path in SOURCES if path.is_relative_to(ON_PHONE)])
    assert {code for code in unsaid if ERRORS[code].told != "at_home"} == set()


def test_data_fills_the_sentence_and_a_missing_name_raises_nothing(unfilled: list[str]) -> None:
    assert describe("upload_offset", {"offset": 7})["sentence"] == "The upload goes on at byte 7."
    assert unfilled == []
    assert "{offset}" in describe("upload_offset", {})["sentence"]
    assert unfilled == ["offset"]
    unfilled.clear()  # here it was meant; in any other test it fails it (`tests/conftest`)


def names_in(code: str) -> set[str]:
    row = ERRORS[code]
    return {name for text in (row.sentence, row.do) for _, name, _, _ in string.Formatter().parse(text) if name}


def codes_in(node: ast.expr) -> list[str]:
    if isinstance(node, ast.IfExp):
        return codes_in(node.body) + codes_in(node.orelse)
    return [node.value] if isinstance(node, ast.Constant) and node.value in ERRORS else []


def given_too_little(path: Path) -> list[str]:
    """Where a code of the table is said without a name that its sentence needs."""
    if path.suffix != ".py":
        text = path.read_text(encoding="utf-8")
        bare = re.findall(r"(?:AppError|warned|describe)\(\s*\"(\w+)\",?\s*\)", text)
        return [f"{path.name}: {code}" for code in bare if names_in(code)]
    calls = [node for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))) if isinstance(node, ast.Call)]
    said = [call for call in calls if ast.unparse(call.func) in ("TarebookError", "warned") and call.args]
    return [
        f"{path.name}:{call.lineno}: {code}"
        for call in said
        for code in codes_in(call.args[0])
        if None not in (given := {one.arg for one in call.keywords}) and names_in(code) - given
    ]


def test_whoever_says_a_code_gives_all_that_its_sentence_names(tmp_path: Path) -> None:
    assert [place for path in SOURCES for place in given_too_little(path)] == []
    (tmp_path / "slip.py").write_text('raise TarebookError("garage_missing" if x else "not_found", file="x")')
    (tmp_path / "slip.ts").write_text('throw new AppError("entry_too_large");')
    assert given_too_little(tmp_path / "slip.py") == ["slip.py:1: garage_missing"]
    assert given_too_little(tmp_path / "slip.ts") == ["slip.ts: entry_too_large"]


def test_data_that_looks_like_a_template_is_left_as_it_is() -> None:
    described = describe("bad_setting", {"name": "{value.__class__}", "value": "x", "reason": "{0}"})
    assert "{value.__class__}" in described["sentence"]


def test_a_refusal_knows_its_status_and_its_body() -> None:
    refusal = TarebookError("too_many_entries", most=500)
    assert refusal.status == 413
    assert refusal.body() == {
        "error": {
            "code": "too_many_entries",
            "sentence": "One push may carry at most 500 entries.",
            "do": ERRORS["too_many_entries"].do,
            "data": {"most": 500},
        }
    }


def test_the_names_in_a_sentence_are_plain() -> None:
    for row in ERRORS.values():
        names = [name for text in (row.sentence, row.do) for _, name, _, _ in string.Formatter().parse(text) if name]
        assert all(name.isidentifier() for name in names)


def test_there_are_sources_to_look_through() -> None:
    assert len(SOURCES) > 50
    assert all(isinstance(path, Path) for path in SOURCES)
