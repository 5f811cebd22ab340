"""What the height of a weighed car rests on; a lift carried over is the same physics as the states themselves."""

from typing import Any

import pytest

from tarebook.core.balance.balance import Balance, Question, balance
from tarebook.core.garage.garage import read_garage

LENGTHS = {"wheelbase": "2420 mm", "tyre_radius_front": "285 mm", "tyre_radius_rear": "287 mm"}
CAR = {"id": "c", **LENGTHS, "track_front": "1430 mm", "track_rear": "1430 mm"}
GARAGE: dict[str, Any] = {
    "cars": [CAR],
    "scales": [{"id": "pads", "kind": "corner_pads", "division": "0.2 kg", "repeatability": "0.2 kg"}],
    "parts": [
        {"id": "pane", "x": "1.4 m", "y": "0 mm", "z": "1.2 m", "claim": "9 kg", "claim_basis": "guessed"},
        {"id": "spare", "x": "2.71 m", "y": "0.1 m", "z": "430 mm", "claim": "13.4 kg", "claim_basis": "worked_out"},
    ],
    "jobs": [{"id": "j1", "state": "fitted"}, {"id": "j2", "state": "fitted"}],
    "job_parts": [
        {"id": "a", "job": "j1", "part": "spare", "way": "off"}, {"id": "b", "job": "j2", "part": "pane", "way": "off"},
    ],
    "weigh_ins": [
        {"id": "old", "layout": "axles", "front": "518.0 kg", "rear": "402.4 kg", "trim": "road", "scale": "pads",
         "jobs": ["j1"], "fuel": "0 L", "at": "2026-03-01"},
        {"id": "new", "layout": "axles", "front": "513.2 kg", "rear": "398.2 kg", "trim": "road", "scale": "pads",
         "jobs": ["j1", "j2"], "fuel": "0 L", "at": "2026-04-01"},
    ],
    "lifts": [{"id": "l", "weigh_in": "old", "raised": "rear", "tilted": "539.6 kg", "height": "602 mm"}],
}  # fmt: skip


def told(weigh_in: str | None = None, **lists: Any) -> Balance:
    return balance(read_garage({**GARAGE, **lists}), Question(weigh_in=weigh_in))


def codes(found: Balance) -> set[str]:
    return {warning["code"] for warning in found.warnings} & {"height_by_lift", "height_carried", "height_assumed"}


def test_a_lift_carried_to_a_newer_weigh_in_is_the_state_its_own_weigh_in_tells():
    """The car of the old weigh-in with the jobs since is one body; told from either weigh-in its height is the same."""
    carried, own = told("new"), told("old")
    assert (codes(carried), codes(own)) == ({"height_carried"}, {"height_by_lift"})
    ours, theirs = carried.states["weighed"].body.z, own.states["now"].body.z
    assert ours.value == pytest.approx(theirs.value, rel=1e-12)
    # But for what little may have been left in the tank, each time.
    assert ours.u == pytest.approx(theirs.u, rel=2e-3)


def test_taking_weight_off_high_up_lowers_the_carried_centre_and_adds_that_part_s_doubt():
    lifted, carried = told("old").states["weighed"].body.z, told("new").states["weighed"].body.z
    # Plain arithmetic: nine kilograms at 1.2 m off 920.4 kg at the height that was lifted.
    assert carried.value == pytest.approx((920.4 * lifted.value - 9 * 1.2) / (920.4 - 9), rel=1e-12)
    assert any(source.startswith("place:pane") for source in carried.sources)


def test_fuel_driver_and_ballast_that_differ_are_carried_over_too():
    places = {"tank_z": "310 mm", "driver_z": "420 mm", "fuel_kind": "petrol"}
    new = {**GARAGE["weigh_ins"][1], "fuel": "30 L", "driver_in": True, "driver": "d", "ballast": "8 kg"}
    drivers = [{"id": "d", "claim": "76 kg", "claim_basis": "quoted"}]
    old = {**GARAGE["weigh_ins"][0], "driver_in": False}
    found = told("new", cars=[{**CAR, **places}], drivers=drivers, weigh_ins=[old, new])
    lifted, carried = told("old").states["weighed"].body.z, found.states["weighed"].body.z
    # Plain arithmetic: a pane of 9 kg off; petrol of 747.5 kg/m³, the driver, and ballast low down on.
    loads = [(920.4, lifted.value), (-9, 1.2), (0.030 * 747.5, 0.31), (76, 0.42), (8, 0.35)]
    assert carried.value == pytest.approx(sum(m * z for m, z in loads) / sum(m for m, _ in loads), rel=1e-12)
    assert carried.u > lifted.u


@pytest.mark.parametrize("unsaid", [{"fuel": None}, {"driver_in": True}])
def test_what_nobody_noted_counts_as_the_same(unsaid):
    changed = [GARAGE["weigh_ins"][0], {**GARAGE["weigh_ins"][1], **unsaid}]
    ours, theirs = told("new", weigh_ins=changed), told("new")
    assert ours.states["weighed"].body.z.value == pytest.approx(theirs.states["weighed"].body.z.value, rel=1e-12)


def test_the_newest_lift_of_the_weigh_in_itself_counts_before_any_other():
    own = {"id": "m", "weigh_in": "new", "raised": "rear", "tilted": "534.0 kg", "height": "602 mm"}
    found = told("new", lifts=[{**GARAGE["lifts"][0], "at": "2026-06-01"}, own, {**own, "id": "n", "height": "600 mm"}])
    notes = [warning["data"] for warning in found.warnings if warning["code"] == "height_by_lift"]
    assert notes == [{"lift": "n", "weigh_in": "new"}]


@pytest.mark.parametrize("weigh_in", ["old", "new"])
def test_a_list_of_jobs_nobody_confirmed_carries_no_lift_over(weigh_in):
    changed = [{**one, "jobs": None} if one["id"] == weigh_in else one for one in GARAGE["weigh_ins"]]
    assert codes(told("new", weigh_ins=changed)) == {"height_assumed"}


def test_a_lift_that_tells_nothing_is_passed_over():
    flat = {**GARAGE["lifts"][0], "id": "z", "height": "20 mm", "tilted": "518.2 kg", "at": "2026-07-01"}
    found = told("old", lifts=[GARAGE["lifts"][0], flat])
    assert [warning["data"]["lift"] for warning in found.warnings if warning["code"] == "height_by_lift"] == ["l"]


def test_correcting_a_weigh_in_keeps_its_lift():
    corrected = {**GARAGE["weigh_ins"][0], "id": "old2", "front": "517.8 kg", "replaces": "old"}
    found = told("old2", weigh_ins=[*GARAGE["weigh_ins"], corrected])
    assert codes(found) == {"height_by_lift"}
