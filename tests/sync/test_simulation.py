"""Fixed worlds and some fresh ones of the simulation (`tests/sync/simulation`), and that a seed replays byte for byte.

`python -m tests.sync.simulation --seed 1 --steps 1000000` is the long form.
"""

from __future__ import annotations

import logging
import os
import subprocess
import sys
from collections import Counter
from random import SystemRandom

import pytest

from tests.machine import ROOT
from tests.sync.simulation.moves import KINDS
from tests.sync.simulation.run import run

FIXED = (*range(1, 11), 60010019, 60010103)
FRESH = 4


@pytest.fixture(autouse=True)
def _quiet_log() -> None:
    logging.getLogger("tarebook").setLevel(logging.CRITICAL)


def test_nothing_is_lost_and_nothing_accepted_is_forgotten_in_worlds_that_were_met_before_and_in_fresh_ones(
    capsys: pytest.CaptureFixture[str],
) -> None:
    fresh = [SystemRandom().randrange(10**9) for _ in range(FRESH)]
    with capsys.disabled():
        print(f"\nSimulation: fresh seeds {fresh}")
    counts: Counter[str] = Counter()
    for seed in [*FIXED, *fresh]:
        one = run(seed)
        assert one.found is None, f"seed {seed}, step {one.steps}: {one.found}"
        counts.update(one.counts)
    assert [name for name in KINDS if counts[name] == 0] == [], "never came about"


def test_a_seed_replays_byte_for_byte_in_another_process() -> None:
    command = [sys.executable, "-m", "tests.sync.simulation", "--seed", "3", "--trace"]
    env = {**os.environ, "PYTHONHASHSEED": "1"}
    again = subprocess.run(command, cwd=ROOT, env=env, text=True, capture_output=True, check=True).stdout
    assert run(3).hash in again
