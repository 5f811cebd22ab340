"""Every vector, run in Python, and the tool that renews them. `tests/vectors.test.ts` runs them in TypeScript."""

import json
from typing import Any

import pytest

from tests.vectors import FILES, changes, claims, load, outcome
from tests.vectors.__main__ import main, renew
from tests.vectors.written import WIDTH, written

CLAIMS = claims()
CASES = [
    pytest.param(vector["function"], case, id=f"{path.stem}: {case['name']}")
    for path in FILES
    for vector in [load(path)]
    for case in vector["cases"]
]


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_vector_file_is_claimed_and_named_after_its_room(path):
    vector = load(path)
    names = [case["name"] for case in vector["cases"]]
    assert vector["function"] in CLAIMS
    assert path.stem.split(".")[0] == vector["function"].split(".")[0]
    assert names
    assert len(names) == len(set(names))


def test_every_claim_has_a_file():
    assert set(CLAIMS) - {load(path)["function"] for path in FILES} == set()


@pytest.mark.parametrize(("function", "case"), CASES)
def test_a_vector_holds(function: str, case: dict[str, Any]):
    assert changes(case, outcome(CLAIMS[function], case)) == []


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_vector_file_is_laid_out_as_it_would_be_renewed(path):
    text = path.read_text(encoding="utf-8")
    assert text == written(json.loads(text)) + "\n"


TWICE = {"shown.twice": lambda given: {"twice": 2 * given["x"], "of": given, "none": None, "empty": []}}


def vector(path, *cases: dict[str, Any], **more: Any):
    """A file of the cases given, laid out as it should be."""
    path.write_text(written({"about": "Twice.", "function": "shown.twice", **more, "cases": list(cases)}) + "\n")
    return path


def kept(path) -> list[dict[str, Any]]:
    cases: list[dict[str, Any]] = json.loads(path.read_text(encoding="utf-8"))["cases"]
    return cases


def test_a_machine_made_case_is_renewed_and_what_changed_is_told(tmp_path, capsys):
    path = vector(tmp_path / "a.json", {"name": "three", "in": {"x": 3}, "leaves": {"twice": 5, "of.x": 3, "none": 1}})
    assert renew(path, TWICE, write=False) == 1
    assert capsys.readouterr().out == "a: three\n  leaves.twice: 5 → 6, 0.2 of it\n  leaves.none: 1 → null\n"
    assert kept(path)[0]["leaves"]["twice"] == 5
    assert renew(path, TWICE, write=True) == 0
    assert kept(path)[0]["leaves"] == {"twice": 6, "of.x": 3, "none": None}
    assert renew(path, TWICE, write=False) == 0


def test_a_case_worked_by_hand_is_refused_and_its_neighbours_are_renewed(tmp_path, capsys):
    cases = [
        {"name": name, "in": {"x": 3}, "leaves": {"twice": 7}, **({"by_hand": "2 × 3"} if name == "by hand" else {})}
        for name in ("by hand", "machine")
    ]
    path = vector(tmp_path / "a.json", *cases)
    assert renew(path, TWICE, write=True) == 1
    assert "Refused: worked by hand (2 × 3)." in capsys.readouterr().out
    assert [case["leaves"]["twice"] for case in kept(path)] == [7, 6]
    assert renew(vector(tmp_path / "b.json", cases[1], by_hand="in the file"), TWICE, write=True) == 1


def test_a_case_without_an_outcome_gets_all_of_it_with_the_digits_that_are_compared(tmp_path):
    path = vector(tmp_path / "a.json", {"name": "a third", "in": {"x": 1 / 3}}, close=1e-3)
    renew(path, TWICE, write=True)
    assert kept(path)[0]["out"] == {"twice": 0.66667, "of": {"x": 0.33333}, "none": None, "empty": []}


def test_nothing_and_an_empty_list_are_told_apart(tmp_path):
    path = vector(tmp_path / "a.json", {"name": "one", "in": {"x": 1}, "leaves": {"empty": None, "none": []}})
    assert renew(path, TWICE, write=False) == 1


def test_a_case_says_only_what_differs_from_what_is_given(tmp_path):
    given = {"unit": "kg", "parts": [{"id": "a", "count": 1}, {"id": "b", "count": 2}]}
    change = {"unit": None, "parts": {"a": {"count": None, "x": 1}, "b": None, "c": {"count": 3}}}
    [case] = load(vector(tmp_path / "a.json", {"name": "changed", "in": change}, given=given))["cases"]
    assert case["in"] == {"parts": [{"id": "a", "x": 1}, {"id": "c", "count": 3}]}


def test_records_have_a_line_each_and_no_line_is_wider_than_the_code(tmp_path):
    records = {"list": [{"id": n, "about": "x" * 50} for n in range(2)], "numbers": list(range(100))}
    lines = written(records).splitlines()
    assert lines[2] == '  {"id": 0, "about": "' + "x" * 50 + '"},'
    assert max(map(len, lines)) <= WIDTH


def test_the_command_takes_a_room_or_a_file_and_refuses_a_name_that_is_none(capsys):
    assert main(["normal", "fixtures/vectors/shown.hours.json"]) == 0
    with pytest.raises(SystemExit):
        main(["nothing"])
    assert "no such room or file" in capsys.readouterr().err
