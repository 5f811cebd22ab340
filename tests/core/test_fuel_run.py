"""A run on fuel: what cancels, what adds up, what decides, and what is said where something is missing."""

import json
from dataclasses import replace
from math import sqrt
from pathlib import Path
from random import Random
from typing import Any

import pytest

from tarebook.core.fuel_run.fuel_given import MOST_LAPS, RunQuestion
from tarebook.core.fuel_run.fuel_run import FuelRun, fuel_run
from tarebook.core.garage.garage import read_garage
from tarebook.core.numbers.quantity import Quantity, read
from tarebook.core.numbers.uncertain import Uncertain
from tarebook.core.standing.standing import standing
from tarebook.core.whole_car.fuel import DENSITIES, density_of
from tarebook.demo import scenario

EXAMPLE = Path(__file__).resolve().parents[2] / "fixtures" / "demo" / "calc" / "fuel.json"
LITRE = 0.001
RHO = DENSITIES["petrol"]


def litres(amount: float | str) -> Quantity:
    return read("volume", f"{amount} L")


def given(car: dict[str, Any] | None = None, sheet: dict[str, Any] | None = None, **weigh_in: Any) -> dict[str, Any]:
    """The example's garage, with some fields of its car, class sheet or weigh-in changed."""
    loaded: dict[str, Any] = json.loads(EXAMPLE.read_text(encoding="utf-8"))
    loaded["cars"][0] |= car or {}
    loaded["class_sheets"][0] |= sheet or {}
    loaded["weigh_ins"][0] |= {"id": "w", **weigh_in}
    return {name: records for name, records in loaded.items() if name not in ("run", "volume_unit")}


def run(
    garage: dict[str, Any], start: float | str = 30, per_lap: float | str = 1.8, laps: int = 12, **more: Any
) -> FuelRun:
    within = {"start_within": litres("0.3"), "per_lap_within": litres("0.1")}
    question = RunQuestion(start=litres(start), per_lap=litres(per_lap), laps=laps, **{**within, **more})
    return fuel_run(read_garage(garage), question)


def weights(found: FuelRun) -> list[Uncertain]:
    assert all(moment.weight for moment in found.laps)
    return [moment.weight for moment in found.laps if moment.weight]


def test_with_the_fuel_it_was_weighed_with_the_car_weighs_what_the_standing_says():
    garage = given(fuel_within="0 L")
    exact: dict[str, Any] = {"start_within": litres(0), "per_lap_within": litres(0)}
    found, then = run(garage, start=10, laps=1, **exact), standing(read_garage(garage))
    assert then.weight
    assert then.official
    assert found.laps[0].judged
    assert weights(found)[0].value == pytest.approx(then.weight.value, abs=1e-9)
    assert weights(found)[0].u == pytest.approx(then.weight.u, rel=1e-12)  # the density of the fuel cancels
    assert found.laps[0].judged.chance_under == pytest.approx(then.official.chance_under, rel=1e-9)
    assert found.laps[0].judged.in_hand == pytest.approx(then.official.in_hand, rel=1e-9)


def test_a_change_nobody_wrote_down_counts_against_the_minimum_as_in_the_standing():
    """The demo's weigh-ins do not fit each other: that the car may be heavier must not ask for more in hand."""
    garage = read_garage({**scenario.records(), "trim": "event"})
    then = standing(garage).official
    assert then is not None
    weighed = RunQuestion(start=litres(10), start_within=litres("0.1"))
    found = fuel_run(garage, weighed).laps[0].judged
    assert found is not None
    assert found.in_hand == pytest.approx(then.in_hand, abs=0.02)
    assert found.in_hand < 2 * found.margin.u


def test_the_density_counts_for_the_difference_to_the_fuel_at_the_weigh_in_only():
    exact: dict[str, Any] = {"start_within": litres(0), "per_lap_within": litres(0)}
    found = weights(run(given(fuel_within="0 L"), start=30, per_lap=1, laps=29, **exact))
    least = min(found, key=lambda weight: weight.u)
    assert found.index(least) == 20  # where ten litres are left, as on the scale
    for lap in (0, 10, 29):
        beyond = sqrt(found[lap].u ** 2 - least.u**2)
        assert beyond == pytest.approx(abs(20 - lap) * LITRE * RHO.u, rel=1e-6)


def test_what_was_burnt_is_known_by_density_and_laps_and_not_by_the_scale():
    found = run(given(), laps=6).laps[6]
    assert found.burnt is not None
    assert found.burnt.value == pytest.approx(6 * 1.8 * LITRE * RHO.middle)
    by_density, by_laps = 6 * 1.8 * LITRE * RHO.u, 6 * 0.1 * LITRE / sqrt(3) * RHO.middle
    assert found.burnt.u == pytest.approx(sqrt(by_density**2 + by_laps**2))


def test_a_heavy_foot_is_heavy_on_every_lap():
    doubts = [moment.fuel.u for moment in run(given(), start_within=litres(0)).laps]
    assert doubts == pytest.approx([lap * 0.1 * LITRE / sqrt(3) for lap in range(13)])


def test_the_flag_is_the_worst_moment_where_the_class_weighs_as_the_car_comes():
    found = run(given())
    chances = [moment.judged.chance_under for moment in found.laps if moment.judged]
    assert found.worst == 12
    assert chances == sorted(chances)
    assert len(chances) == 13


def test_started_with_the_least_the_flag_is_reached_at_the_risk_itself():
    garage = given(sheet={"minimum": "968 kg"})
    least = run(garage).least
    assert least is not None
    assert least.decided_by == "minimum"
    again = run(garage, start=f"{least.fuel / LITRE:.9f}").laps[-1].judged
    assert again is not None
    assert again.chance_under == pytest.approx(0.05, rel=1e-4)
    assert again.margin.value == pytest.approx(again.in_hand, abs=1e-5)


def test_where_weight_is_no_trouble_the_least_start_reaches_the_flag_for_sure():
    least = run(given(sheet={"minimum": "700 kg"})).least
    assert least is not None
    assert (least.decided_by, least.lacking) == ("distance", None)
    assert least.fuel == pytest.approx((12 * (1.8 + 0.1) + 0.3) * LITRE)


def test_what_a_full_tank_lacks_at_the_flag_is_what_is_lacking_when_started_so():
    garage = given(sheet={"minimum": "1000 kg"})
    least, flag = run(garage).least, run(garage, start=45).laps[-1].judged
    assert least is not None
    assert flag is not None
    assert least.lacking == pytest.approx(flag.in_hand - flag.margin.value, rel=1e-9)


@pytest.mark.parametrize(
    ("start", "laps", "dry", "last"),
    [("5.4", 3, None, 3), ("5.4", 4, 4, 4), ("5.3", 3, 3, 3), ("0.1", 9, 1, 1), ("0", 2, 1, 1)],
)
def test_the_lap_in_which_the_tank_runs_dry_is_exact(start, laps, dry, last):
    found = run(given(), start=start, laps=laps)
    assert found.runs_dry == dry
    assert [moment.lap for moment in found.laps] == list(range(last + 1))
    assert (found.laps[-1].fuel.value == 0.0) == (dry is not None or start == "5.4")
    assert ("fuel_runs_dry" in codes(found)) == (dry is not None)


def test_every_figure_has_the_doubt_that_drawing_its_sources_gives():
    """Seeded Monte Carlo over litres, density and the car: an independent propagation."""
    random, found = Random(20_261_125), run(given())
    flag, empty = found.laps[12], found.empty.weight
    assert flag.weight is not None
    assert empty is not None
    rest = sqrt(sum(part**2 for name, part in empty.sources.items() if name != "fuel-density"))
    drawn = []
    for _ in range(20_000):
        density = random.gauss(0, 1)
        tank = 30 + random.uniform(-0.3, 0.3) - 12 * (1.8 + random.uniform(-0.1, 0.1))
        fuel = tank * LITRE * (RHO.middle + density * RHO.u)
        drawn.append(empty.value + density * empty.sources["fuel-density"] + random.gauss(0, rest) + fuel)
    mean = sum(drawn) / len(drawn)
    spread = sqrt(sum((weight - mean) ** 2 for weight in drawn) / len(drawn))
    assert flag.weight.value == pytest.approx(mean, abs=0.1)
    assert flag.weight.u == pytest.approx(spread, rel=0.02)


def test_fuel_weighs_on_axle_and_side_by_the_levers_of_its_tank():
    garage = given(car={"tank_y": "200 mm"}, driver="the lightest")
    found = run(garage, laps=0)
    full, empty = found.full, found.empty
    assert full is not None
    masses = [moment.weight.value for moment in (full, empty) if moment.weight]
    fronts = [moment.balance.front.value for moment in (full, empty) if moment.balance.front]
    lefts = [moment.balance.left.value for moment in (full, empty) if moment.balance.left]
    fuel = full.fuel_mass.value
    assert fronts[0] * masses[0] - fronts[1] * masses[1] == pytest.approx(fuel * (1 - 2.010 / 2.420))
    assert lefts[0] * masses[0] - lefts[1] * masses[1] == pytest.approx(fuel * (0.5 - 0.200 / 1.4275))
    assert full.balance.x
    assert empty.balance.x
    moment = full.balance.x.value * masses[0] - empty.balance.x.value * masses[1]
    assert moment == pytest.approx(fuel * 2.010)


def test_with_the_fuel_and_driver_it_was_weighed_with_the_car_balances_as_weighed():
    garage = given(driver="the lightest", fuel_within="0 L")
    found = run(garage, start=10, laps=0, start_within=litres(0)).laps[0].balance
    assert found.front
    assert found.left
    assert found.front.value == pytest.approx((262.4 + 268.6) / 977.2, abs=1e-12)
    assert found.left.value == pytest.approx((262.4 + 221.0) / 977.2, abs=1e-12)
    assert not {name for name in found.front.sources if name.startswith(("place:", "fuel"))}


def test_the_lightest_driver_takes_the_seat_of_the_one_who_was_weighed():
    ours, theirs = (run(given(driver=who), laps=0).empty.balance for who in ("the lightest", "the one who weighed"))
    assert ours.y
    assert theirs.y
    # The seat is on the right: with five kilograms less in it than was weighed, the centre moves to the left.
    assert ours.y.value - theirs.y.value == pytest.approx(5.5 * 0.34 / 970, rel=0.05)


def codes(found: FuelRun) -> set[str]:
    return {warning["code"] for warning in found.warnings}


@pytest.mark.parametrize("rule", ["empty", "full", "stated"])
def test_a_class_that_sets_the_fuel_itself_has_no_worst_lap_and_says_why(rule):
    found = run(given(sheet={"fuel": rule, "fuel_stated": "10 L"}))
    assert found.reasons["margin"]["code"] == f"fuel_class_{rule}"
    assert found.worst is None
    assert {moment.judged for moment in found.laps} == {None}
    assert weights(found)[12].value == pytest.approx(weights(run(given()))[12].value)
    assert found.least is not None
    assert found.least.decided_by == "distance"


def test_more_fuel_than_the_tank_holds_starts_a_full_tank():
    found = run(given(), start=60)
    assert found.laps[0].fuel.value == pytest.approx(45 * LITRE)
    assert "fuel_start_above_tank" in codes(found)


def test_a_lap_of_more_than_the_tank_is_a_slip_that_is_named():
    found = run(given(), per_lap=46, laps=2)
    assert {"fuel_lap_above_tank", "fuel_runs_dry", "fuel_least_above_tank"} <= codes(found)


def test_without_laps_the_start_alone_is_told():
    found = run(given(), laps=0)
    assert [moment.lap for moment in found.laps] == [0]
    assert found.reasons["least"]["code"] == "fuel_no_laps"
    assert "fuel_no_laps" in codes(found)


def test_no_more_laps_are_told_than_can_be_and_that_is_said():
    found = run(given(), per_lap="0.01", laps=MOST_LAPS + 1)
    assert found.laps[-1].lap == MOST_LAPS
    assert "fuel_many_laps" in codes(found)


def test_a_lap_that_takes_nothing_is_not_known():
    found = run(given(), per_lap=0)
    assert found.reasons["per_lap"]["code"] == "fuel_lap_unknown"
    assert len(found.laps) == 1


def test_without_a_fuel_kind_the_density_of_any_is_allowed_for():
    found = run(given(car={"fuel_kind": None}))
    assert "fuel_kind_unknown" in codes(found)
    assert found.laps[0].fuel_mass.u > 2.9 * run(given()).laps[0].fuel_mass.u
    assert found.laps[0].fuel_mass.value == pytest.approx(30 * LITRE * density_of(None).middle)


@pytest.mark.parametrize("axis", ["x", "y", "z"])
def test_an_axis_of_the_tank_that_nobody_measured_is_missing_alone(axis):
    found = run(given(car={f"tank_{axis}": None}, driver="the lightest"), laps=0)
    gone = {"x": {"x", "front"}, "y": {"y", "left"}, "z": {"z"}}[axis]
    assert {name: reason["code"] for name, reason in found.reasons.items() if name != "least"} == dict.fromkeys(
        gone, "tank_place_unknown"
    )
    assert {name for name in ("x", "y", "z", "front", "left") if getattr(found.full.balance, name) is None} == gone


def test_another_driver_needs_a_seat_to_balance_but_not_to_weigh():
    found = run(given(car={"driver_x": None}))
    assert found.reasons["front"]["code"] == found.reasons["x"]["code"] == "driver_place_unknown"
    assert found.laps[0].weight is not None
    assert found.laps[0].balance.left is not None


def test_fuel_that_was_not_noted_makes_the_car_unsure_by_the_whole_tank():
    found, noted = run(given(fuel=None)), run(given())
    assert found.laps[3].weight is not None
    assert noted.laps[3].weight is not None
    more = (found.laps[3].weight.u ** 2 - noted.laps[3].weight.u ** 2) ** 0.5
    assert more == pytest.approx(45 * 0.7475 / 12**0.5, rel=0.01)  # 45 L of petrol, evenly spread
    assert found.laps[3].burnt is not None


def test_an_empty_garage_says_what_is_missing():
    found = fuel_run(read_garage({}))
    assert found.laps == ()
    assert {name: found.reasons[name]["code"] for name in ("weight", "start", "per_lap", "full")} == {
        "weight": "no_weigh_in",
        "start": "fuel_start_unknown",
        "per_lap": "fuel_lap_unknown",
        "full": "tank_size_unknown",
    }


def test_the_class_sheet_of_the_garage_is_left_as_it_is():
    garage = read_garage(given())
    before = replace(garage)
    fuel_run(garage, RunQuestion(laps=1))
    assert garage == before
    assert garage.class_sheets["class"].fuel == "as_it_is"
