"""A short seeded form of each of the eight tests (`tests/sync/eight`); `python -m tests.sync` has the stated sizes.

Elsewhere, where the usual run has them already: random histories in `test_simulation`, numbering in `test_numbering`,
the server on SQLite killed and a hostile proxy in `tests/fuzz`, real tabs and a killed Chromium in `tests/browser`.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from random import Random

import pytest

from tests.sync.eight import Outcome, clocks, healing, hostile, kills, old_phone


@pytest.mark.parametrize(
    "short",
    [
        lambda folder: healing.run(folder, seed=1, times=1, steps=6),
        lambda folder: kills.on_postgres(folder, seed=1, kills=3),
        lambda folder: hostile.full_disk(folder, Random(1)),
        lambda folder: old_phone.run(folder, seed=1, times=1),
        lambda folder: clocks.run(folder, seed=2, times=1),
    ],
    ids=["healing", "kills", "hostile", "old phone", "clocks"],
)
def test_nothing_is_lost_and_nothing_missing(tmp_path: Path, short: Callable[[Path], Outcome]) -> None:
    found = short(tmp_path)
    print(found)
    assert (found.lost, found.missing) == ([], [])
