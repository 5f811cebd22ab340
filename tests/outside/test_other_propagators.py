"""Uncertainty against the `uncertainties` package and a seeded Monte Carlo, on a garage's kind of sum.

Parts off and parts on, weighed on two scales: every reading has its own rounding and its scale's gain; the net is
turned into a share of a car whose total was weighed on one of the same scales.
"""

import math
from random import Random

import numpy
import pytest
from uncertainties import covariance_matrix, ufloat

from tarebook.core.numbers import uncertain
from tarebook.core.numbers.uncertain import Uncertain

DRAWS = 400_000


def readings(random, count):
    """(shown, weight, scale, own u): what was read, on or off, on which scale."""
    return [
        (random.uniform(0.1, 40), random.choice((-1.0, 1.0, 4.0)), random.choice("ab"), random.uniform(1e-4, 0.05))
        for _ in range(count)
    ]


GAIN = {"a": 0.003, "b": 0.01}
CAR = (912.4, "b", 0.3)


def by_us(listed):
    items = [
        Uncertain(shown, {f"cal:{on}": shown * GAIN[on], f"round:{n}": u}) for n, (shown, _, on, u) in enumerate(listed)
    ]
    net = uncertain.weighted_sum(items, [weight for _, weight, _, _ in listed])
    car = Uncertain(CAR[0], {f"cal:{CAR[1]}": CAR[0] * GAIN[CAR[1]], "round:car": CAR[2]})
    return net, uncertain.add(car, net), uncertain.divide(net, car), uncertain.multiply(net, car)


def by_package(listed):
    gains = {name: ufloat(1, u) for name, u in GAIN.items()}
    net = sum(weight * (shown * gains[on] + ufloat(0, u)) for shown, weight, on, u in listed)
    car = CAR[0] * gains[CAR[1]] + ufloat(0, CAR[2])
    return net, car + net, net / car, net * car


@pytest.mark.parametrize("seed", range(20))
def test_the_uncertainties_package_finds_the_same(seed):
    listed = readings(Random(seed), 30)
    for ours, theirs in zip(by_us(listed), by_package(listed), strict=True):
        assert ours.value == pytest.approx(theirs.nominal_value, rel=1e-12)
        assert ours.u == pytest.approx(theirs.std_dev, rel=1e-9)


@pytest.mark.parametrize("seed", range(3))
def test_the_uncertainties_package_finds_the_same_covariance(seed):
    listed = readings(Random(seed), 30)
    ours, theirs = by_us(listed), covariance_matrix(by_package(listed))
    for row, one in enumerate(ours):
        for column, other in enumerate(ours):
            assert uncertain.covariance(one, other) == pytest.approx(theirs[row][column], rel=1e-9)


def test_drawing_the_errors_by_the_hundred_thousand_finds_the_same_spread():
    seed = 7
    listed, draw = readings(Random(seed), 12), numpy.random.default_rng(seed)
    gains = {name: 1 + u * draw.standard_normal(DRAWS) for name, u in GAIN.items()}
    # Rounding is a rectangle, not a normal: the standard deviation is what propagates.
    net = sum(
        weight * (shown * gains[on] + u * math.sqrt(3) * draw.uniform(-1, 1, DRAWS)) for shown, weight, on, u in listed
    )
    car = CAR[0] * gains[CAR[1]] + CAR[2] * draw.standard_normal(DRAWS)
    # The scatter of a standard deviation from so many draws is u / sqrt(2 n); five of those.
    allowed = 5 / math.sqrt(2 * DRAWS)
    for ours, drawn in zip(by_us(listed), (net, car + net, net / car, net * car), strict=True):
        assert numpy.std(drawn) == pytest.approx(ours.u, rel=allowed + 1e-4)
