"""What the official scale will show: chances that agree with counting, and a guard that gives back its risk."""

import numpy
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.core.numbers.uncertain import Uncertain
from tarebook.core.standing.official import (
    OfficialScale,
    chance_under,
    expected_reading,
    in_hand,
    official_reading,
    weight_behind,
)

MINIMUM = 900.0
weights = st.builds(
    Uncertain,
    st.floats(850, 950),
    st.dictionaries(st.sampled_from(["cal:a", "rep:w", "d"]), st.floats(0.05, 3), min_size=1),
)
scales = st.builds(
    OfficialScale,
    st.none(),
    st.builds(
        Uncertain,
        st.floats(-0.005, 0.005),
        st.dictionaries(st.sampled_from(["cal:a", "cal:b"]), st.floats(-0.002, 0.002)),
    ),
    st.floats(0.05, 1),
    st.none() | st.sampled_from([0.1, 0.5, 1.0, 5.0]),
    st.sampled_from(["nearest", "unknown"]),
)
risks = st.floats(0.001, 0.5)


@given(weights, scales, risks)
def test_with_the_guard_in_hand_the_chance_is_the_risk(weight, scale, risk):
    guard = in_hand(weight, MINIMUM, scale, risk)
    assert guard == pytest.approx(round(guard, 3), abs=1e-12)  # whole grams, rounded up
    assert chance_under(Uncertain(MINIMUM + guard, weight.sources), MINIMUM, scale) <= risk * (1 + 1e-6)
    assert chance_under(Uncertain(MINIMUM + guard - 0.001, weight.sources), MINIMUM, scale) >= risk * (1 - 1e-6)


@given(weights, scales, risks)
def test_behind_a_reading_stands_the_weight_it_was_foretold_of(weight, scale, risk):
    found = weight_behind(official_reading(weight, MINIMUM, scale, risk))
    assert found.value == pytest.approx(weight.value)
    names = found.sources.keys() | weight.sources.keys()
    assert "rep:official" not in names
    for name in names:
        assert found.sources.get(name, 0.0) == pytest.approx(weight.sources.get(name, 0.0), abs=1e-9)


@given(weights, scales, risks, risks)
def test_a_smaller_risk_asks_for_more_in_hand(weight, scale, one, other):
    small, large = sorted((one, other))
    assert in_hand(weight, MINIMUM, scale, small) >= in_hand(weight, MINIMUM, scale, large)


@given(weights, scales, st.floats(0.1, 20))
def test_a_heavier_car_is_less_likely_shown_under(weight, scale, more):
    heavier = Uncertain(weight.value + more, weight.sources)
    # Its doubt grows a little with its mass; far from the minimum both chances are as good as none.
    assert chance_under(heavier, MINIMUM, scale) <= chance_under(weight, MINIMUM, scale) + 1e-9


@given(weights)
def test_the_scale_that_weighed_the_car_shows_it_again(weight):
    """The gain is in the weight with the other sign, and cancels: only the new look is added."""
    relative = 0.003
    seen = Uncertain(weight.value, {**weight.sources, "cal:p": -relative * weight.value})
    scale = OfficialScale("p", Uncertain(0.0, {"cal:p": relative}), 0.2, 1.0, "nearest")
    again = expected_reading(seen, scale)
    assert again.u == pytest.approx((weight.u**2 + 0.2**2) ** 0.5, rel=1e-9)
    assert seen.u > again.u or relative * weight.value < 0.2


def test_a_display_that_rounds_to_nearest_forgives_half_a_division():
    exact = OfficialScale(None, Uncertain(0.0), 0.0, 1.0, "nearest")
    assert chance_under(Uncertain(899.51), MINIMUM, exact) == 0.0
    assert chance_under(Uncertain(899.49), MINIMUM, exact) == 1.0
    # A minimum between two divisions needs the next one up: 899.8 is not reached by a shown 899.5.
    half = OfficialScale(None, Uncertain(0.0), 0.0, 0.5, "nearest")
    assert chance_under(Uncertain(899.7), 899.8, half) == 1.0
    assert chance_under(Uncertain(899.8), 899.8, half) == 0.0


@pytest.mark.parametrize("rounding", ["nearest", "unknown"])
@pytest.mark.parametrize("offset", [-1.0, 0.0, 1.5])
def test_the_chance_is_how_often_a_simulated_scale_shows_under(rounding, offset):
    """Seeded: weight, gain and look drawn, the display rounded; within four standard deviations of counting."""
    draws, division, random = 200_000, 0.5, numpy.random.default_rng(20261125)
    weight = Uncertain(MINIMUM + offset, {"cal:a": 0.7, "rep:w": 0.4})
    gain = Uncertain(0.001, {"cal:a": -0.0005, "cal:b": 0.0004})
    scale = OfficialScale("b", gain, 0.3, division, rounding)
    z = {name: random.standard_normal(draws) for name in ("cal:a", "cal:b", "rep:w")}
    mass = weight.value + sum(part * z[name] for name, part in weight.sources.items())
    through = 1 + gain.value + sum(part * z[name] for name, part in gain.sources.items())
    load = mass * through + 0.3 * random.standard_normal(draws)
    shown = numpy.round(load / division) * division if rounding == "nearest" else load
    chance = chance_under(weight, MINIMUM, scale)
    assert abs(numpy.mean(shown < MINIMUM) - chance) < 4 * (chance * (1 - chance) / draws) ** 0.5
