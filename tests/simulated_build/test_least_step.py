"""The least change that is named is read off the runs that name each size."""

import re

import pytest

from tests.simulated_build import least_step
from tests.simulated_build.least_step import SIZES, least, names_of, table
from tests.simulated_build.scenarios import SCENARIOS
from tests.simulated_build.world import World

SEED, PLAIN = 20261125, SCENARIOS["plain-6"]


def test_a_change_is_named_once_it_is_large_enough():
    names = [names_of(PLAIN, SEED, number) for number in range(4)]
    assert not any(each[0] for each in names)
    assert all(each[-1] for each in names)


def test_once_three_sizes_running_are_named_no_larger_one_is_asked_of(monkeypatch):
    asked = []

    def name(world: World, gap: int) -> bool:
        asked.append(abs(world.steps[gap]))
        return len(asked) in (2, 5, 6, 7)

    monkeypatch.setattr(least_step, "_is_named", name)
    names = names_of(PLAIN, SEED, 0)
    assert asked == pytest.approx(SIZES[:7])
    assert names == tuple(at in (1, 4) or at > 4 for at in range(len(SIZES)))


def test_the_least_size_lies_where_the_share_is_reached():
    shares = [0.0, 0.4, 0.6, 0.5, *[1.0] * (len(SIZES) - 4)]
    assert least(shares, 0.5) == pytest.approx((SIZES[1] * SIZES[2]) ** 0.5)
    assert least(shares, 0.9) == pytest.approx(SIZES[3] ** 0.2 * SIZES[4] ** 0.8)
    assert least([1.0] * len(SIZES), 0.5) == SIZES[0]
    assert least([0.4] * len(SIZES), 0.5) is None


def test_the_table_has_the_sizes_with_their_doubt():
    runs = [tuple(size >= 1.0 + 0.1 * n for size in SIZES) for n in range(100)]
    cells = [cell.strip() for cell in table([(PLAIN, runs)]).split("\n")[-1].split("|")[1:-1]]
    assert cells[:2] == ["plain-6", "100"]
    for cell, expected, doubt in zip(cells[2:], (6.0, 10.0), (1.0, 0.6), strict=True):
        middle, low, high = map(float, re.findall(r"\d+\.\d+", cell))
        # The sizes tried lie a quarter apart.
        assert (low, middle, high) == pytest.approx((expected - doubt, expected, expected + doubt), rel=0.07)
