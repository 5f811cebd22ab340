"""The height by axle lift: its doubt against numerical derivatives and draws, and what is refused."""

from math import asin, sqrt, tan
from random import Random
from statistics import fmean, stdev
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from uncertainties import ufloat, umath

from tarebook.core.balance.axle_lift import WIDE, WIDEST, Axles, axle_lift
from tarebook.core.balance.axle_lift import outlook as outlook_of
from tarebook.core.balance.lift import LiftReadings, lift, lift_of
from tarebook.core.garage.garage import read_garage
from tarebook.core.numbers.quantity import read_length, read_mass
from tarebook.core.numbers.uncertain import Uncertain
from tests.core.bodies import Inputs, drawn, numerically

CAR = {"id": "c", "wheelbase": "2420 mm", "tyre_radius_front": "285 mm", "tyre_radius_rear": "287 mm"}
SCALES = [{"id": "pads", "kind": "corner_pads", "division": "0.2 kg", "repeatability": "0.2 kg"}]


def inputs(rise: float = 0.6, height: float = 0.51, load_u: float = 0.3) -> list[Uncertain]:
    """Wheelbase, radii, front, rear, tilted and rise of a built car, with a gain all loads share."""
    long, line, mass, rear = 2.42, 0.286, 920.0, 402.4
    tilt = tan(asin(rise / long))
    front = mass - rear
    tilted = front + mass * (height - line) * tilt / long
    loads = [Uncertain(v, {n: load_u, "cal": 0.002 * v}) for n, v in (("f", front), ("r", rear), ("t", tilted))]
    lengths = [Uncertain(long, {"L": 0.002}), Uncertain(line, {"Rf": 0.003}), Uncertain(line, {"Rr": 0.003})]
    return [*lengths, *loads, Uncertain(rise, {"H": 0.003})]


def height_of(given: Inputs) -> Uncertain:
    long, radius_front, radius_rear, front, rear, tilted, rise = given
    found = axle_lift(Axles(long, radius_front, radius_rear), front, rear, tilted, rise)
    assert found.height is not None
    return found.height


@pytest.mark.parametrize("rise", [0.3, 0.6, 1.2])
def test_every_source_counts_as_a_numerical_derivative_says(rise):
    given = inputs(rise)
    found, wanted = height_of(given), numerically(height_of, given)
    assert {name: found.sources.get(name, 0.0) for name in wanted} == pytest.approx(wanted, rel=1e-5, abs=1e-9)


def test_the_scale_s_gain_cancels():
    assert abs(height_of(inputs()).sources.get("cal", 0.0)) < 1e-12


def test_doubts_are_as_wide_as_those_drawn_at_random():
    given = inputs()
    found, runs = height_of(given), drawn(height_of, given, Random(4), 2000)
    assert stdev(runs) == pytest.approx(found.u, rel=0.08)
    assert fmean(runs) == pytest.approx(found.value, abs=0.1 * found.u)


def test_doubts_are_those_the_uncertainties_package_propagates():
    plain = [Uncertain(i.value, {n: p for n, p in i.sources.items() if n != "cal"}) for i in inputs()]
    long, radius_front, radius_rear, front, rear, tilted, rise = (ufloat(item.value, item.u) for item in plain)
    mass = front + rear
    a, b = long * rear / mass, long * front / mass
    angle = umath.asin(rise / long)
    theirs = (radius_front * b + radius_rear * a) / long + long * (tilted - front) / (mass * umath.tan(angle))
    ours = height_of(plain)
    assert ours.value == pytest.approx(theirs.nominal_value, rel=1e-12)
    assert ours.u == pytest.approx(theirs.std_dev, rel=1e-6)


@given(st.floats(0.2, 1.5), st.floats(0.3, 0.9))
def test_a_built_car_is_undone_whatever_the_lift(rise, height):
    assert height_of(inputs(rise, height, 0.01)).value == pytest.approx(height, rel=1e-9)


@given(st.floats(0.2, 1.0), st.floats(1.05, 2.0))
def test_a_higher_lift_is_never_less_sure_of_the_loads_part(rise, more):
    low, high = height_of(inputs(rise, load_u=0.05)), height_of(inputs(rise * more, load_u=0.05))
    assert abs(high.sources["t"]) < abs(low.sources["t"])


def asked(**changes: str) -> LiftReadings:
    typed = {"front": "518.0 kg", "rear": "402.4 kg", "tilted": "539.6 kg", "height": "602 mm", **changes}
    lengths = ("height", "height_within")
    read = {
        n: (read_length(t) if n in lengths else read_mass(t)) for n, t in typed.items() if n not in ("raised", "scale")
    }
    return LiftReadings(**read, raised=typed.get("raised", "rear"), scale=typed.get("scale", "pads"))


def answer(car: dict[str, str] = CAR, **changes: str):
    return lift(read_garage({"cars": [car], "scales": SCALES}), asked(**changes))


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"height": "2420 mm"}, "lift_above_wheelbase"), ({"height": "3 m"}, "lift_above_wheelbase"),
        ({"height": "0 mm"}, "lift_missing"), ({"height": "40 mm", "tilted": "519.4 kg"}, "lift_too_small"),
        ({"tilted": "518.0 kg"}, "lift_too_small"), ({"tilted": "500 kg"}, "lift_wrong_way"),
        ({"scale": "nobody"}, "lift_missing"),
    ],
)  # fmt: skip
def test_a_lift_that_cannot_tell_is_refused_with_its_reason(changes, code):
    found = answer(**changes)
    assert found.height is None
    assert found.reason["code"] == code


@pytest.mark.parametrize(("gone", "code"), [("wheelbase", "wheelbase_unknown"), ("tyre_radius_rear", "radius_unknown")])
def test_a_car_without_its_lengths_is_told_which(gone, code):
    assert answer({name: value for name, value in CAR.items() if name != gone}).reason["code"] == code


def test_two_pads_are_four_looks_at_the_display():
    found = answer()
    per_axle = sqrt(2) * 0.2 / sqrt(12)
    looks = [part for source, part in found.moved.sources.items() if source.startswith("round:lift")]
    assert sorted(map(abs, looks)) == pytest.approx([per_axle, per_axle])


@pytest.mark.parametrize(("asked", "most"), [("least", WIDEST), ("enough", WIDE)])
def test_the_rise_an_outlook_names_tells_the_height_and_the_one_before_does_not(asked, most):
    long, radius_front, radius_rear, front, rear, tilted, _ = inputs(0.2, load_u=1.0)
    axles = Axles(long, radius_front, radius_rear)
    told = outlook_of(axles, front, rear, tilted)
    rise = getattr(told, asked)
    margins = dict(told.rises)
    assert margins[rise] <= most < margins[rise - 0.05]
    # Such a lift, once made, is as sure as foreseen: the reading's doubt grew with the load by a few hundredths.
    made = height_of(inputs(rise, 0.506, load_u=1.0))
    assert 2 * made.u == pytest.approx(margins[rise], rel=0.05)


def test_an_outlook_ends_at_half_the_wheelbase_and_is_the_surer_the_higher():
    long, radius_front, radius_rear, front, rear, tilted, _ = inputs(0.2, load_u=1.0)
    told = outlook_of(Axles(long, radius_front, radius_rear), front, rear, tilted, "front")
    assert told.rises[-1][0] == pytest.approx(1.2)
    margins = [margin for _, margin in told.rises]
    assert margins == sorted(margins, reverse=True)


def test_a_small_lift_is_refused_with_the_rise_that_would_do():
    told = answer(height="40 mm", tilted="519.4 kg")
    assert told.reason["code"] == "lift_too_small"
    assert (told.least, told.enough) == (0.1, 0.15)
    better = answer(height=f"{told.enough} m", tilted="523.1 kg")
    assert better.height is not None
    assert better.warnings == ()


CORNERS = {"lf": "262.8 kg", "rf": "255.2 kg", "lr": "204.6 kg", "rr": "197.8 kg"}
LEVEL = {"id": "w", "layout": "corners", "trim": "road", "scale": "pads", "fuel": "0 L", **CORNERS}
RECORD = {"id": "l", "weigh_in": "w", "raised": "rear", "tilted": "539.6 kg", "height": "602 mm"}


def recorded(weigh_in: dict[str, Any] = LEVEL, **changes: Any):
    given = {"cars": [CAR], "scales": SCALES, "weigh_ins": [weigh_in], "lifts": [{**RECORD, **changes}]}
    garage = read_garage(given)
    return lift_of(garage, garage.lifts["l"])


def test_a_recorded_lift_tells_what_its_readings_alone_would():
    ours, theirs = recorded().height, answer().height
    assert ours.value == pytest.approx(theirs.value, rel=1e-12)
    assert ours.u == pytest.approx(theirs.u, rel=1e-9)


def test_the_settling_of_the_corners_cancels_in_the_axles_and_the_gain_in_the_moved_load():
    sources = recorded().height.sources
    assert sources.get("settle:w", 0.0) == pytest.approx(0.0, abs=1e-15)
    assert sources.get("cal:pads", 0.0) == pytest.approx(0.0, abs=1e-15)


def test_four_looks_count_for_two_pads():
    rounding = [part for source, part in recorded().moved.sources.items() if source.startswith("round:")]
    assert sorted(map(abs, rounding)) == pytest.approx([0.2 / sqrt(12), 0.2 / sqrt(12), sqrt(2) * 0.2 / sqrt(12)])


def test_another_scale_s_gain_does_not_cancel():
    other = {"id": "more", "kind": "corner_pads", "division": "0.2 kg", "repeatability": "0.2 kg"}
    garage = read_garage(
        {"cars": [CAR], "scales": [*SCALES, other], "weigh_ins": [LEVEL], "lifts": [{**RECORD, "scale": "more"}]}
    )
    told = lift_of(garage, garage.lifts["l"])
    assert told.moved.u > 3 * recorded().moved.u


@pytest.mark.parametrize(
    ("weigh_in", "codes"),
    [
        ({**LEVEL, "driver_in": True}, {"lift_driver_in"}), ({**LEVEL, "fuel": "20 L"}, {"lift_fuel_moves"}),
        (LEVEL, set()), ({**LEVEL, "fuel": None}, {"lift_fuel_moves"}),
    ],
)  # fmt: skip
def test_a_load_that_can_move_or_be_hurt_is_warned_of(weigh_in, codes):
    assert {warning["code"] for warning in recorded(weigh_in).warnings} == codes
