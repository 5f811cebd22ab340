"""A car weighed more than once is balanced as heavy as all weigh-ins say."""

from typing import Any

import pytest

from tarebook.core.balance.balance import Question, balance
from tarebook.core.garage.garage import read_garage
from tarebook.core.standing.standing import standing
from tests.core.test_balance import CORNERS, LEAD, LIGHT, found, varied


def two_weigh_ins(**second: Any) -> dict[str, Any]:
    """The garage weighed twice: before any job, by a total, and again by corners; ballast and fuel differ."""
    aboard = {"driver_in": False, "fuel_within": "0.1 L"}
    first = {"id": "w0", "layout": "total", "trim": "road", "scale": "pads", "at": "2026-02-07", "total": "940 kg",
             "jobs": [], "fuel": "20 L", **aboard}  # fmt: skip
    given_ = varied(weigh_ins={"at": "2026-03-14", "fuel": "8 L", "ballast": "6 kg", **aboard, **second})
    return {**given_, "weigh_ins": [first, *given_["weigh_ins"]]}


def test_it_is_as_heavy_as_all_weigh_ins_say_and_stands_as_the_last_by_corners_did():
    """Led back by hand: the weight now, its fuel and ballast those of that day, without the job since."""
    garage = read_garage(two_weigh_ins())
    now = standing(garage).weight
    states = balance(garage).states
    alone = balance(garage, Question(weigh_in="w")).states["weighed"]
    weighed = states["weighed"]
    assert weighed.body.mass.value == pytest.approx(now.value + LEAD.mass - LIGHT.mass, rel=1e-12)
    assert abs(weighed.body.mass.value - sum(CORNERS.values())) > 0.01
    assert alone.body.mass.value == pytest.approx(sum(CORNERS.values()), rel=1e-12)
    for name in ("front", "left"):
        assert weighed.shares[name].value == pytest.approx(alone.shares[name].value, rel=1e-12)
        assert weighed.shares[name].u == pytest.approx(alone.shares[name].u, rel=1e-6)
    factor = weighed.body.mass.value / alone.body.mass.value
    assert {name: weighed.loads[name].value / factor for name in CORNERS} == pytest.approx(CORNERS, rel=1e-12)


def test_a_weigh_in_that_does_not_count_is_balanced_as_it_was_read():
    """Nobody confirmed its list of jobs."""
    states = found(two_weigh_ins(jobs=None)).states
    assert states["weighed"].body.mass.value == pytest.approx(sum(CORNERS.values()), rel=1e-12)
