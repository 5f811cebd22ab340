"""Of causes told at 60 %, about 60 % are true: counted over garages whose truth numpy drew (`slip_worlds`)."""

from math import sqrt

import pytest

from tarebook.core.causes.priors import PRIORS
from tests.core.slip_worlds import MIX, Count, count

RUNS = 700


@pytest.fixture(scope="module")
def found() -> Count:
    return count(RUNS)


def test_slips_are_drawn_as_often_as_the_table_says():
    assert MIX == PRIORS  # odds cannot hold where slips are made otherwise


def test_the_odds_told_are_the_odds_there_are(found):
    bins = found.bins()
    assert len(bins) == 5
    for odds, true, number in bins:
        by_chance = sqrt(odds * (1.0 - odds) / number)
        assert abs(true - odds) < 3.0 * by_chance + 0.04, (odds, true, number)


def test_the_true_cause_is_mostly_the_first_and_nearly_always_told(found):
    assert found.named > 150
    assert found.first > 0.5 * found.named
    assert found.among > 0.8 * found.named
