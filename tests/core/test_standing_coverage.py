"""Seeded Monte Carlo of the standing: its intervals hold the truth, and its chances come true, as often as they say."""

from math import sqrt
from random import Random

import pytest

from tarebook.core.garage.garage import read_garage
from tarebook.core.numbers.uncertain import Uncertain
from tarebook.core.standing.standing import Standing, standing
from tests.core import worlds
from tests.core.worlds import World

SEED, RUNS = 20261125, 1000
SAMPLING = 3 * (0.95 * 0.05 / RUNS) ** 0.5
Outcome = tuple[World, Standing, bool]


@pytest.fixture(scope="module")
def outcomes() -> list[Outcome]:
    random = Random(SEED)
    drawn = [worlds.draw(random) for _ in range(RUNS)]
    return [
        (world, standing(read_garage(worlds.records(world, random))), worlds.shown_under(world, random))
        for world in drawn
    ]


def held(pairs: list[tuple[float, Uncertain | None]]) -> float:
    """How often the interval of 95 % (1.96 standard uncertainties) holds the truth."""
    return sum(abs(item.value - truth) <= 1.96 * item.u for truth, item in pairs if item is not None) / len(pairs)


def test_the_answers_for_the_weight_hold_the_truth_as_often_as_they_say(outcomes):
    """Where two weigh-ins differ there are two answers, and one of them is right."""
    assert abs(sum(map(answered, outcomes)) / RUNS - 0.95) < SAMPLING


def answered(outcome: Outcome) -> bool:
    world, found, _ = outcome
    answers = found.fused.answers if found.fused else ()
    return any(held([(world.weight, answer.weight)]) for answer in answers)


def test_of_two_answers_that_which_trusts_the_reading_is_right_where_nobody_read_wrongly(outcomes):
    """Half of these cars have a change nobody wrote down, none a reading that is off: more often than the odds say."""
    two = [
        (world, found.fused.answers) for world, found, _ in outcomes if found.fused and len(found.fused.answers) == 2
    ]
    right = [next(answer for answer in answers if not answer.off) for _, answers in two]
    off = [next(answer for answer in answers if answer.off) for _, answers in two]
    assert len(two) > 100
    nearer = [
        abs(a.weight.value - w.weight) < abs(b.weight.value - w.weight)
        for (w, _), a, b in zip(two, right, off, strict=True)
    ]
    assert sum(nearer) / len(two) > sum(answer.odds for answer in right) / len(two)


def test_the_interval_of_the_gap_holds_what_nobody_wrote_down_as_often_as_it_says(outcomes):
    gaps = [(world.secret, found.gap.difference if found.gap else None) for world, found, _ in outcomes]
    # Half of it are two rectangles, litres read twice: less far-flung than normal, so a little more is held.
    assert -SAMPLING < held(gaps) - 0.95 < SAMPLING + 0.015


def test_a_change_nobody_wrote_down_is_called_significant_and_nothing_is_not(outcomes):
    called = {
        secret: [found.gap.significant for world, found, _ in outcomes if world.secret == secret] for secret in (0, 3)
    }
    assert sum(called[0]) / len(called[0]) < 0.05 + SAMPLING
    # 3 kg is three and a half standard uncertainties: beyond two in 93 of 100.
    assert sum(called[3]) / len(called[3]) > 0.85


@pytest.mark.parametrize(("low", "high"), [(0.0, 1.0), (0.0, 0.2), (0.2, 0.5), (0.5, 0.8), (0.8, 1.0)])
def test_the_chances_of_being_shown_under_come_true(outcomes, low, high):
    pairs = [
        (found.official.chance_under, under) for world, found, under in outcomes if found.official and not world.secret
    ]
    chosen = [(chance, under) for chance, under in pairs if low <= chance < high]
    assert len(chosen) > 20
    assert abs(came_true(chosen)) < 3


def test_with_something_in_the_car_that_nobody_wrote_down_the_chances_are_on_the_safe_side(outcomes):
    """Two weigh-ins cannot say whether it is there or the last is off, so the lower weight counts."""
    pairs = [
        (found.official.chance_under, under) for world, found, under in outcomes if found.official and world.secret
    ]
    assert came_true(pairs) < 3


def came_true(pairs: list[tuple[float, bool]]) -> float:
    """How many more were shown under than the chances say, in standard deviations of that."""
    spread = sqrt(sum(chance * (1 - chance) for chance, _ in pairs))
    return (sum(under for _, under in pairs) - sum(chance for chance, _ in pairs)) / spread


def test_with_the_guard_in_hand_one_in_twenty_is_shown_under():
    """Cars that stand exactly at the minimum and the guard of 5 %, by their own standing."""
    random = Random(SEED + 1)
    under = 0
    for _ in range(RUNS):
        world = worlds.draw(random)
        found = standing(read_garage(worlds.records(world, random)))
        assert found.official is not None
        assert found.weight is not None
        # The doubt does not depend on where the car stands, so ballast may take this one to its guard.
        world.weight += worlds.MINIMUM + found.official.in_hand - found.weight.value
        under += worlds.shown_under(world, random)
    assert abs(under / RUNS - found.risk) < SAMPLING
