"""Load transfer keeps statics' laws, and its doubt is what numerical derivatives say."""

from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.core.balance.body import Body
from tarebook.core.balance.load_transfer import POWER_UNITS, transfer
from tarebook.core.numbers.uncertain import Uncertain
from tests.core.bodies import Inputs, inputs, numerically

TRACK, WHEELBASE = Uncertain(1.43, {"t": 0.002}), Uncertain(2.42, {"L": 0.002})


def given_car(seed: int) -> list[Uncertain]:
    return [*inputs(Random(seed), 0), TRACK, WHEELBASE]


@pytest.mark.parametrize("name", ["lateral", "longitudinal", "stability", "per_power"])
@pytest.mark.parametrize("seed", range(6))
def test_every_source_counts_as_a_numerical_derivative_says(name, seed):
    def compute(items: Inputs) -> Uncertain:
        found: Uncertain = getattr(transfer(Body(*items[:4]), items[4], items[5], 0.9, -0.7, 96_000.0), name)
        return found

    car = given_car(seed)
    found, wanted = compute(car), numerically(compute, car)
    assert {source: found.sources.get(source, 0.0) for source in wanted} == pytest.approx(wanted, rel=1e-5, abs=1e-12)


@given(st.floats(0.1, 1.2), st.floats(0.1, 1.2))
def test_twice_the_acceleration_moves_twice_the_load(lateral, longitudinal):
    body = Body(*inputs(Random(1), 0))
    once, twice = (transfer(body, TRACK, WHEELBASE, n * lateral, n * longitudinal) for n in (1, 2))
    assert twice.lateral.value == pytest.approx(2 * once.lateral.value)
    assert twice.longitudinal.value == pytest.approx(2 * once.longitudinal.value)


@given(st.floats(0.05, 4.0))
def test_the_inner_wheels_lift_beyond_the_stability_factor_and_not_before(share):
    body = Body(*inputs(Random(2), 0))
    factor = transfer(body, TRACK, WHEELBASE, 0.0, 0.0).stability.value
    lifted = transfer(body, TRACK, WHEELBASE, share * factor, 0.0).wheels_lift
    assert ("lateral" in lifted) == (share > 1) or share == pytest.approx(1, rel=1e-12)


def test_a_car_stands_on_its_nose_under_brakes_before_it_would_stand_on_its_tail():
    front_heavy = Body(Uncertain(900.0), Uncertain(0.9), Uncertain(0.0), Uncertain(0.5))
    assert transfer(front_heavy, TRACK, WHEELBASE, 0.0, -2.0).wheels_lift == ("longitudinal",)
    assert transfer(front_heavy, TRACK, WHEELBASE, 0.0, 2.0).wheels_lift == ()


def test_a_car_that_loses_weight_from_the_roof_gains_stability():
    before = Body(Uncertain(900.0), Uncertain(1.0), Uncertain(0.0), Uncertain(0.52))
    after = Body(Uncertain(880.0), Uncertain(1.0), Uncertain(0.0), Uncertain(0.505))
    one, other = (transfer(body, TRACK, WHEELBASE, 1.0, 0.5, 100 * POWER_UNITS["kW"]) for body in (before, after))
    assert other.stability.value > one.stability.value
    assert other.lateral.value < one.lateral.value
    assert other.per_power.value * POWER_UNITS["kW"] == pytest.approx(8.8)


def test_what_is_not_known_is_not_told():
    body = Body(Uncertain(900.0), None, None, None)
    found = transfer(body, TRACK, WHEELBASE, 1.0, 1.0)
    assert (found.lateral, found.longitudinal, found.stability, found.per_power) == (None, None, None, None)
