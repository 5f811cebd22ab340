"""The mutation run finds what a test finds, and nothing else: a planted slip, and one that changes nothing."""

import json
from pathlib import Path

import pytest

from tests.machine import ROOT
from tests.mutants import run
from tests.mutants.__main__ import slips, table
from tests.mutants.run import find
from tests.mutants.slip import CORES, SUFFIX, Slip

TESTS = [ROOT / "tests" / name for name in ("outside/test_published_chances.py", "core/ratio.test.ts")]


@pytest.mark.parametrize(
    ("language", "name", "was", "slip", "same"),
    [
        ("python", "numbers/normal", "-z / sqrt(2.0)", "-z * sqrt(2.0)", "-z / 2.0**0.5"),
        ("typescript", "numbers/ratio", "a.n * b.d + b.n * a.d", "a.n * b.d - b.n * a.d", "b.n * a.d + a.n * b.d"),
    ],
)
def test_a_planted_slip_is_found_and_an_equivalent_survives(language, name, was, slip, same):
    path = CORES[language] / f"{name}{SUFFIX[language]}"
    start = path.read_text(encoding="utf-8").index(was)
    planted = [Slip(str(path), start, start + len(was), now) for now in (slip, same)]
    found, missed = find(planted, TESTS)
    assert (found.by, missed.by) == ("tests", "")
    assert [line.split()[-6:] for line in table([found, missed])][1:] == [["2", "1", "0", "1", "0", "50.0%"]] * 2


def test_there_are_slips_in_every_room_of_both_languages():
    rooms = {(slip.language, slip.room) for slip in slips(list(CORES))}
    assert {language for language, _ in rooms} == {"python", "typescript"}
    assert {room for language, room in rooms if language == "python"} == {
        room for language, room in rooms if language == "typescript"
    }


def test_told_files_of_typescript_alone_python_asks_what_compares_and_does_not_run_the_whole_house(monkeypatch):
    jobs = []

    def lines(command, *_):
        jobs.append(json.loads(Path(command[-1]).read_text(encoding="utf-8")))
        return iter([[]])

    monkeypatch.setattr(run, "_lines", lines)
    assert list(find([], TESTS[1:])) == []
    assert str(ROOT / "tests/core/test_both_languages.py") in jobs[0]["tests"]
