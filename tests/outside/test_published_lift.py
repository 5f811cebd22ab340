"""Axle lift, static stability and load transfer against print and against cars built for the purpose.

Sources in `fixtures/outside/balance.json` and `whole_car.json`. A lift is checked by turning a rigid car, not by a
textbook's print, one of which is wrong by a factor of five.
"""

import operator
from math import asin, cos, sin, tan
from typing import Any

import pytest

from tarebook.core.balance.axle_lift import Axles, axle_lift
from tarebook.core.balance.body import Body
from tarebook.core.balance.height import ASSUMED_HEIGHT
from tarebook.core.balance.load_transfer import transfer
from tarebook.core.numbers.uncertain import Uncertain
from tests.outside.published import agrees, entries

PRINTED = entries("balance")
CARS = entries("whole_car")
MEASURED = [name for name, entry in CARS.items() if "ssf" in entry["expected"]]
ID: Any = operator.itemgetter("id")
EXACT = Uncertain(0.0)


def exact(value: float) -> Uncertain:
    return Uncertain(float(value))


def test_an_axle_lift_gives_the_height_it_was_built_from():
    entry = PRINTED["veh.cgh.axlelift.A"]
    given = entry["inputs"]
    axles = Axles(*(exact(given[name]) for name in ("wheelbase_m", "Rf_m", "Rr_m")))
    front, tilted = exact(given["F_level_kg"]), Uncertain(given["F_up_kg"], {"one kilogram": 1.0})
    rear = exact(given["m_kg"] - given["F_level_kg"])
    assert rear.value * given["wheelbase_m"] / given["m_kg"] == pytest.approx(given["a_m"], abs=1e-4)
    found = axle_lift(axles, front, rear, tilted, exact(given["lift_m"]))
    assert found.height is not None
    assert agrees(found.height.value, entry, "h_m")
    # A kilogram of error in one reading, in the same units as print.
    assert found.height.u == pytest.approx(entry["expected"]["dh_per_kg_m"], rel=1e-6)


@pytest.mark.parametrize("raised", ["rear", "front"])
@pytest.mark.parametrize("height", [0.35, 0.533, 0.71])
@pytest.mark.parametrize("lift", [0.15, 0.4, 0.9])
def test_an_axle_lift_built_by_turning_the_car_is_undone(raised, height, lift):
    """The rigid car is turned about the axle on the ground; moments about it give the load there. No print needed."""
    wheelbase, radius, mass, a = 2.42, 0.285, 920.0, 1.06
    arm = a if raised == "rear" else wheelbase - a  # from the axle on the ground to the centre, along the car
    angle = asin(lift / wheelbase)
    horizontal = arm * cos(angle) - (height - radius) * sin(angle)
    on_ground = mass * (1 - horizontal / (wheelbase * cos(angle)))
    axles = Axles(exact(wheelbase), exact(radius), exact(radius))
    front, rear = exact(mass * (1 - a / wheelbase)), exact(mass * a / wheelbase)
    found = axle_lift(axles, front, rear, exact(on_ground), exact(lift), raised)
    assert found.height is not None
    assert found.height.value == pytest.approx(height, abs=1e-12)
    assert found.tilt == pytest.approx(tan(angle), rel=1e-12)


def rated(entry: dict[str, Any]) -> tuple[Body, Uncertain, Uncertain | None]:
    """(body, track, wheelbase) of a measured vehicle, in its own units."""
    given = entry["inputs"]
    weight = given.get("weight_lb", given.get("mass_kg"))
    height, track = given.get("cg_h_in", given.get("cg_h_m")), given.get("avg_track_in", given.get("track_m"))
    wheelbase = given.get("wheelbase_in")
    found = Body(exact(weight), exact(given.get("cg_long_in", 0)), exact(given.get("cg_lat_in", 0)), exact(height))
    return found, exact(track), exact(wheelbase) if wheelbase else None


@pytest.mark.parametrize("entry", [e for e in (*CARS.values(), *PRINTED.values()) if "ssf" in e["expected"]], ids=ID)
def test_a_measured_vehicle_has_the_printed_static_stability_factor(entry):
    found = transfer(*rated(entry), 0.5, 0.0)
    assert found.stability is not None
    assert agrees(found.stability.value, entry, "ssf")


@pytest.mark.parametrize("name", [name for name in MEASURED if name.startswith("nhtsa.ncap2004")])
def test_the_assumed_height_of_a_road_car_holds_every_measured_one(name):
    given = CARS[name]["inputs"]
    middle, within = ASSUMED_HEIGHT
    assert abs(given["cg_h_in"] / given["avg_track_in"] - middle) <= within


def test_at_the_stability_factor_the_inner_wheels_carry_nothing():
    entry = PRINTED["dyn.latLT.identity"]
    given = entry["inputs"]
    car = Body(exact(given["W_lb"]), EXACT, EXACT, exact(given["h_in"]))
    factor = transfer(car, exact(given["t_in"]), None, 0.0, 0.0).stability
    assert factor is not None
    assert agrees(factor.value, entry, "ay_liftoff_g")
    moved = transfer(car, exact(given["t_in"]), None, factor.value, 0.0).lateral
    assert moved is not None
    assert agrees(moved.value, entry, "dW_lb")


@pytest.mark.parametrize("grip", [0.5, 1.0])
def test_a_front_wheel_drive_car_leaves_the_line_as_the_textbook_says(grip):
    """[dyn.longLT] a = g μ a2 / (l + μ h): then the front axle, relieved by the transfer, gives just the thrust."""
    wheelbase, rearward, height = 2.34, 1.1084, 0.5
    g = grip * (wheelbase - rearward) / (wheelbase + grip * height)
    car = Body(exact(1000), exact(rearward), EXACT, exact(height))
    moved = transfer(car, None, exact(wheelbase), 0.0, g).longitudinal
    assert moved is not None
    front = 1000 * (1 - rearward / wheelbase) - moved.value
    assert grip * front == pytest.approx(1000 * g, abs=1e-9)
