"""A short seeded run of every kind; `python -m tests.fuzz` is the long one."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from importlib import import_module
from itertools import count
from pathlib import Path
from random import Random

import pytest

from tests.fuzz.__main__ import KINDS
from tests.fuzz.kind import Case, TooLongError, limited, run

CASES = {"api": 30, "pictures": 20, "backups": 6, "imports": 10, "kills": 8, "proxy": 2}


@pytest.mark.parametrize("name", KINDS)
def test_nothing_is_found_in_a_few_cases(name: str, tmp_path: Path) -> None:
    tally = run(name, import_module(f"tests.fuzz.{name}").opened, tmp_path, seed=1, minutes=3, most=CASES[name])
    print(tally.line())
    assert list(tally.found()) == []
    assert tally.cases == CASES[name]


def test_a_broken_promise_is_a_finding_with_the_name_of_its_case(tmp_path: Path) -> None:
    @contextmanager
    def opened(_folder: Path) -> Iterator[Case]:
        def case(random: Random) -> str:
            assert random.random() < 0.7, "too large"
            return "small"

        yield case
        raise ValueError("something half there")

    tally = run("odd", opened, tmp_path, seed=1, minutes=1, most=40)
    large = [f"1:{number}" for number in range(1, 41) if Random(f"odd:1:{number}").random() >= 0.7]
    assert list(tally.findings.values()) == [large, ["at the end"]]
    assert tally.outcomes["small"] == 40 - len(large)


def test_what_takes_too_long_is_ended() -> None:
    with pytest.raises(TooLongError), limited(0.05):
        all(True for _ in count())
