"""Fuel burnt between start and flag against print, through the run itself (sources in `fixtures/outside/`).

The handbooks count pounds, inches and gallons. A car is made of their numbers: its wheelbase reaches over their datum,
so that the two axles carry what their items weigh where those sit, and litres are typed so that they weigh the pounds
printed at the density the core takes in the middle.
"""

from typing import Any

import pytest

from tarebook.core.balance.body import Body, Load
from tarebook.core.balance.laden import Laden, with_fuel
from tarebook.core.fuel_run.fuel_given import RunQuestion
from tarebook.core.fuel_run.fuel_run import FuelRun, fuel_run
from tarebook.core.garage.garage import read_garage
from tarebook.core.numbers.quantity import Quantity, read
from tarebook.core.numbers.uncertain import Uncertain
from tarebook.core.whole_car.fuel import density_of, fuel_mass
from tests.outside.published import agrees, entries

PRINTED = entries("balance")
FUELS = entries("fuel")
BURN = PRINTED["wb.phak.10-11.fuelburn"]
POUND, INCH, GALLON = 0.45359237, 0.0254, 231 * 0.0254**3  # exact by definition
WHEELBASE = 200.0  # in
UNKNOWN = {"front": None, "left": None}


def pounds_of_fuel(pounds: float) -> Quantity:
    """So much fuel as a volume."""
    return read("volume", f"{1000 * pounds * POUND / density_of('petrol').middle:.12f} L")


def printed_car() -> dict[str, Any]:
    """The printed items on two axles, weighed without fuel."""
    items, given = BURN["inputs"]["items_lb_in"], BURN["inputs"]
    weight, moment = sum(pounds for pounds, _ in items), sum(pounds * arm for pounds, arm in items)
    rear = moment / WHEELBASE
    car = {"id": "car", "wheelbase": f"{WHEELBASE} in", "tank_x": f"{given['fuel_arm_in']} in", "fuel_kind": "petrol",
           "tank_size": "600 L"}  # fmt: skip
    weigh_in = {"id": "w", "layout": "axles", "front": f"{weight - rear:.9f} lb", "rear": f"{rear:.9f} lb",
                "fuel": "0 L", "fuel_within": "0 L", "trim": "road", "jobs": []}  # fmt: skip
    return {"cars": [car], "weigh_ins": [weigh_in]}


def burnt(pounds: float) -> FuelRun:
    given = BURN["inputs"]
    question = RunQuestion(start=pounds_of_fuel(given["fuel_lb"]), per_lap=pounds_of_fuel(pounds), laps=1)
    return fuel_run(read_garage(printed_car()), question)


@pytest.mark.parametrize(
    ("name", "lap", "burn"),
    [("ramp", 0, "taxi_burn_lb"), ("takeoff", 1, "taxi_burn_lb"), ("landing", 1, "both")],
)
def test_a_run_on_fuel_has_the_printed_weight_and_centre_before_and_after(name, lap, burn):
    given = BURN["inputs"]
    run = burnt(given["taxi_burn_lb"] + given["trip_burn_lb"] if burn == "both" else given[burn])
    found, (weight, centre) = run.laps[lap], BURN["expected"][name]
    assert found.weight is not None
    assert found.balance.x is not None
    assert found.weight.value / POUND == pytest.approx(weight, abs=1e-4)
    assert found.balance.x.value / INCH == pytest.approx(centre, abs=BURN["tolerance"])


def test_with_an_empty_tank_it_has_the_printed_weight_and_centre_without_fuel():
    found, (weight, centre) = burnt(BURN["inputs"]["taxi_burn_lb"]).empty, BURN["expected"]["zf"]
    assert found.weight is not None
    assert found.balance.x is not None
    assert found.weight.value / POUND == pytest.approx(weight, abs=1e-4)
    assert found.balance.x.value / INCH == pytest.approx(centre, abs=BURN["tolerance"])


def test_fuel_shifted_to_another_tank_moves_the_centre_as_printed():
    """Weight moved from one arm to another: out at the one, in at the other."""
    entry = PRINTED["wb.shift.cg"]
    given, expected = entry["inputs"], entry["expected"]

    def balanced(arm: float) -> float:
        rest = Body(Uncertain(given["W"] - given["w"]), Uncertain(_without(given)), None, None)
        at = Load(Uncertain(0.0), Uncertain(arm), None, None)
        found = with_fuel(Laden(rest, UNKNOWN, at, UNKNOWN, {}), Uncertain(given["w"]))
        assert found.x is not None
        return found.x.value

    assert agrees(balanced(given["from"]), entry, "old_cg")
    assert agrees(balanced(given["to"]), entry, "new_cg")
    assert balanced(given["to"]) - balanced(given["from"]) == pytest.approx(expected["dcg"], abs=1e-9)


def _without(given: dict[str, Any]) -> float:
    """Where the centre is of all but the weight that is shifted."""
    return float((given["moment"] - given["w"] * given["from"]) / (given["W"] - given["w"]))


def test_how_much_fuel_must_be_shifted_to_the_limit_is_as_printed():
    entry = PRINTED["wb.shift.weight"]
    given, pounds = entry["inputs"], entry["expected"]["w_lb"]
    moments = given["W"] * given["cg"] - pounds * 150
    rest = Body(Uncertain(given["W"] - pounds), Uncertain(moments / (given["W"] - pounds)), None, None)
    at = Load(Uncertain(0.0), Uncertain(150.0 - given["distance"]), None, None)
    found = with_fuel(Laden(rest, UNKNOWN, at, UNKNOWN, {}), Uncertain(pounds))
    assert found.x is not None
    assert found.x.value == pytest.approx(given["limit"], abs=1e-9)


def test_the_round_six_pounds_a_gallon_is_petrols_light_end():
    """The handbook's standard weight is of aviation petrol: a pump's may be that light, and is not lighter."""
    entry = FUELS["fluid.std.amt"]
    gallon = fuel_mass(GALLON, "petrol")
    low = gallon.value - gallon.u * 3**0.5
    assert low / POUND == pytest.approx(entry["expected"]["avgas"], abs=0.05)  # printed to one decimal
    assert gallon.value / POUND > entry["expected"]["avgas"]


def test_diesel_is_as_heavy_as_the_handbooks_turbine_fuel_or_heavier():
    gallon = fuel_mass(GALLON, "diesel")
    low = gallon.value - gallon.u * 3**0.5
    assert low / POUND == pytest.approx(FUELS["fluid.std.amt"]["expected"]["turbine"], abs=0.05)
