"""The height by axle lift: its doubt against numerical derivatives and draws, and what is refused."""

from math import asin, sqrt, tan
from random import Random
from statistics import fmean, stdev

import pytest
from hypothesis import given
from hypothesis import strategies as st
from uncertainties import ufloat, umath

from tarebook.core.garage import read_garage
from tarebook.core.lift import WIDE, Axles, LiftReadings, axle_lift, lift
from tarebook.core.quantity import read_length, read_mass
from tarebook.core.uncertain import Uncertain, subtract
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


def test_the_rise_said_to_be_enough_is_enough_for_the_loads():
    given = inputs(0.2, load_u=1.0)
    long, radius_front, radius_rear, front, rear, tilted, rise = given
    loads_only = [Uncertain(item.value, {n: p for n, p in item.sources.items() if n in "frt"}) for item in given]
    told = axle_lift(Axles(long, radius_front, radius_rear), front, rear, tilted, rise)
    assert told.reason["code"] == "lift_too_small"
    better = [Uncertain(new.value, old.sources) for new, old in zip(inputs(told.enough), loads_only, strict=True)]
    moved = subtract(better[5], better[3])
    mass = better[3].value + better[4].value
    margin = 2 * moved.u * sqrt(long.value**2 - told.enough**2) / told.enough * long.value / mass
    assert margin == pytest.approx(WIDE * moved.u / told.moved.u, rel=1e-9)
