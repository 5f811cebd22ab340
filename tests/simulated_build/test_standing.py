"""A few hundred simulated builds: the standing is as often right as it says, and names what is there.

Seeds are fixed. Bounds are four standard errors of so many runs from the aim, wide enough for any seed and too narrow
for an estimator that is wrong. `python -m tests.simulated_build` counts ten thousand of each.
"""

import json
import subprocess
import sys
from math import sqrt

import numpy as np
import pytest

from tarebook.core.garage.garage import read_garage
from tarebook.core.standing.standing import RISK, standing
from tests.machine import ROOT
from tests.simulated_build.evidence import evidence_of
from tests.simulated_build.garage import records
from tests.simulated_build.run import Outcome, outcome, world_of
from tests.simulated_build.scenarios import NONE, SCENARIOS, TWO
from tests.simulated_build.setting import Setting
from tests.simulated_build.tally import Tally
from tests.simulated_build.world import draw, measured

SEED, RUNS, AGAIN = 20261125, 120, 100


def tally(name: str) -> Tally:
    scenario = SCENARIOS[name]
    return Tally(scenario, [outcome(scenario, SEED, number) for number in range(RUNS)])


@pytest.fixture(scope="module")
def nothing_unlogged() -> Tally:
    return tally("plain")


@pytest.fixture(scope="module")
def two_unlogged() -> Tally:
    return tally("plain-two")


def slack(share: float) -> float:
    """Four standard errors of a share of so many runs."""
    return 4.0 * sqrt(share * (1.0 - share) / RUNS)


def squares(outcomes: list[Outcome]) -> float:
    """The mean of (off/u)²: one, when the standard uncertainty is what it says it is."""
    return float(np.mean([(each.off / each.u) ** 2 for each in outcomes]))


def test_the_interval_holds_the_truth_as_often_as_it_says(nothing_unlogged, two_unlogged):
    for found, aim in ((nothing_unlogged, NONE.covers), (two_unlogged, TWO.covers)):
        assert found.covers.value > aim[0] - slack(aim[0])
        assert abs(squares(found.outcomes) - 1.0) < 4.0 * sqrt(2.0 / RUNS)


def test_a_car_trimmed_to_the_minimum_and_what_to_keep_in_hand_is_seldom_shown_under_it(nothing_unlogged):
    assert nothing_unlogged.shown_under.value < RISK + slack(RISK)


def test_a_change_that_is_not_there_is_seldom_named(nothing_unlogged):
    assert nothing_unlogged.invents.value < NONE.invents[1] + slack(NONE.invents[1])


def test_two_changes_that_can_be_seen_are_named(two_unlogged):
    assert two_unlogged.names_all.value > TWO.names_all[0] - slack(TWO.names_all[0])


def test_all_weigh_ins_together_tell_more_than_the_last_alone(nothing_unlogged, two_unlogged):
    assert nothing_unlogged.ratio < 0.7
    assert two_unlogged.ratio < 0.7


def test_each_weigh_in_alone_says_what_it_says_by_the_textbook():
    """Against A·Aᵀ of the sources as stated, whose gains act on the readings; the product's act on the fitted loads."""
    world = world_of(SCENARIOS["guesses-two"], SEED, 0)
    found, told = standing(read_garage(records(world))), evidence_of(world)
    assert found.fused is not None
    alone = [each.alone for each in found.fused.counted]
    assert [each.value for each in alone] == pytest.approx(list(told.z), abs=1e-3)
    assert [each.u for each in alone] == pytest.approx(list(np.sqrt(np.diag(told.s))), rel=0.02)


def test_one_run_is_printed_whole_by_its_number():
    asked = ["--only", "plain-two", "--run", "7", "--seed", str(SEED)]
    command = [sys.executable, "-m", "tests.simulated_build", *asked]
    told = json.loads(subprocess.run(command, cwd=ROOT, capture_output=True, check=True).stdout)
    world = world_of(SCENARIOS["plain-two"], SEED, 7)
    assert told["truth"]["weight_now"] == world.truth
    assert told["garage"] == records(world)
    assert told["outcome"]["off"] == told["answer"]["weight"]["value"] - world.truth


def test_weighing_the_same_build_again_spreads_the_answers_as_their_u_says():
    """Propagation against seeded Monte Carlo: one car, the same jobs, every error of measuring drawn anew each time."""
    world = draw(np.random.default_rng(SEED), Setting(guessed=0))
    off = []
    for number in range(AGAIN):
        again = measured(np.random.default_rng([SEED, number]), world)
        found = standing(read_garage(records(again)))
        assert found.weight is not None
        off.append((found.weight.value - world.weight) / found.weight.u)
    assert abs(np.mean(off)) < 4.0 / sqrt(AGAIN)
    assert abs(np.mean(np.square(off)) - 1.0) < 4.0 * sqrt(2.0 / AGAIN)
