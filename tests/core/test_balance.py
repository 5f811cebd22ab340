"""The balance of a garage: states by independent arithmetic, what is told and what is not, in any records."""

from copy import deepcopy
from random import Random
from typing import Any

import pytest
from hypothesis import given, settings

from tarebook.core.balance.balance import Balance, Question, State, balance
from tarebook.core.balance.place import ZONE_PLACES
from tarebook.core.garage.garage import read_garage
from tarebook.core.numbers.uncertain import Uncertain
from tarebook.journal.kinds import ZONES
from tests.core import garages, whole_cars
from tests.core.bodies import Point, summed

CORNERS = {"lf": 262.8, "rf": 255.2, "lr": 204.6, "rr": 197.8}
LONG, WIDE = 2.42, 1.43
GARAGE: dict[str, Any] = {
    "cars": [
        {"id": "c", "wheelbase": "2420 mm", "track_front": "1430 mm", "track_rear": "1430 mm", "beltline": "880 mm"}
    ],
    "scales": [{"id": "pads", "kind": "corner_pads", "division": "0.2 kg", "repeatability": "0.2 kg"}],
    "parts": [
        {"id": "spare", "x": "2.71 m", "y": "0.1 m", "z": "430 mm", "claim": "13.4 kg", "claim_basis": "worked_out"},
        {"id": "lead", "x": "-120 mm", "y": "-410 mm", "z": "700 mm", "claim": "12.9 kg", "claim_basis": "quoted"},
        {"id": "light", "x": "2.5 m", "y": "300 mm", "z": "0.5 m", "claim": "4 kg", "claim_basis": "quoted"},
        {"id": "pane", "x": "1.4 m", "y": "0 mm", "z": "1.2 m", "claim": "9 kg", "claim_basis": "guessed"},
    ],
    "jobs": [
        {"id": "j1", "state": "fitted"}, {"id": "j2", "state": "fitted"}, {"id": "j3", "state": "chosen"},
        {"id": "j4", "state": "idea"},
    ],
    "job_parts": [
        {"id": "a", "job": "j1", "part": "spare", "way": "off"}, {"id": "b", "job": "j2", "part": "lead", "way": "off"},
        {"id": "d", "job": "j2", "part": "light", "way": "on"}, {"id": "e", "job": "j3", "part": "pane", "way": "off"},
        {"id": "f", "job": "j4", "part": "light", "way": "off"},
    ],
    "weigh_ins": [
        {"id": "w", "layout": "corners", "trim": "road", "scale": "pads", "jobs": ["j1"],
         **{name: f"{load} kg" for name, load in CORNERS.items()}},
    ],
}  # fmt: skip
SPARE, LEAD, LIGHT = Point(13.4, 2.71, 0.1), Point(12.9, -0.12, -0.41), Point(4.0, 2.5, 0.3)


def found(given_: dict[str, Any] = GARAGE, **asked: Any) -> Balance:
    return balance(read_garage(given_), Question(**asked))


def varied(**changes: Any) -> dict[str, Any]:
    """The garage with fields of its first record of each list changed; None takes one out."""
    copy = deepcopy(GARAGE)
    for name, fields in changes.items():
        copy[name][0] = {k: v for k, v in {**copy[name][0], **fields}.items() if v is not None}
    return copy


def codes(told: Balance) -> set[str]:
    return {warning["code"] for warning in told.warnings}


def minus(points: list[tuple[float, Point]]) -> tuple[float, float, float]:
    """(mass, x, y) of the car as weighed with points on it (+1) or off it (−1), in plain arithmetic."""
    mass = sum(CORNERS.values())
    x = (CORNERS["lr"] + CORNERS["rr"]) / mass * LONG
    y = 0.5 * WIDE * (CORNERS["rf"] + CORNERS["rr"] - CORNERS["lf"] - CORNERS["lr"]) / mass
    signed = [Point(mass, x, y), *(Point(sign * p.mass, p.x, p.y) for sign, p in points)]
    return summed(signed)[:3]


@pytest.mark.parametrize(
    ("name", "moved"),
    [("weighed", []), ("start", [(1, SPARE)]), ("now", [(-1, LEAD), (1, LIGHT)])],
)
def test_a_state_is_the_weighed_car_with_its_jobs_put_on_or_taken_back(name, moved):
    body, wanted = found().states[name].body, minus(moved)
    assert (body.mass.value, body.x.value, body.y.value) == pytest.approx(wanted, rel=1e-12)


def test_loads_and_shares_agree_with_the_centre_by_the_lever_s_rule():
    for state in found().states.values():
        mass, x, y = state.body.mass.value, state.body.x.value, state.body.y.value
        assert state.loads["rear"].value == pytest.approx(mass * x / LONG)
        assert state.loads["right"].value == pytest.approx(mass * (0.5 + y / WIDE))
        assert state.shares["front"].value + state.shares["rear"].value == pytest.approx(1)
        assert state.shares["left"].value == pytest.approx(0.5 - y / WIDE)


def test_corners_are_told_as_weighed_and_never_invented():
    states = found().states
    for name, load in CORNERS.items():
        assert states["weighed"].loads[name].value == pytest.approx(load)
    for name in ("start", "now", "after"):
        assert not set(CORNERS) & states[name].loads.keys()
        assert states[name].reasons["corners"]["code"] == "cross_unknown"


def test_nothing_moved_since_the_weigh_in_leaves_its_corners_as_they_were():
    told = found(varied(weigh_ins={"jobs": ["j1", "j2"]}))
    assert told.states["now"].loads["lf"].value == pytest.approx(CORNERS["lf"])
    assert told.states["now"].body == told.states["weighed"].body


def test_yaw_inertia_goes_down_by_what_direct_summation_finds():
    """The car as two heavy points that have its mass, centre and some inertia; only the change counts."""
    mass, x, y = minus([(1, SPARE)])
    car = [Point(mass / 2, x - 1.1, y - 0.2), Point(mass / 2, x + 1.1, y + 0.2)]
    after = [*car, Point(-SPARE.mass, SPARE.x, SPARE.y), Point(-LEAD.mass, LEAD.x, LEAD.y), LIGHT]
    change = found().changes["done"].yaw
    assert change.value == pytest.approx(summed(after)[3] - summed(car)[3], rel=1e-9)


def test_weights_above_and_below_the_beltline_make_the_net():
    told = found()
    for change in told.changes.values():
        assert change.above.value + change.below.value == pytest.approx(change.net.value)
    assert told.changes["planned"].above.value == pytest.approx(-9.0)
    assert found(varied(cars={"beltline": None})).changes["done"].reasons["beltline"]["code"] == "beltline_unknown"


def test_unsprung_and_rotating_stand_apart():
    given_ = varied(parts={"unsprung": True, "rotating": True})
    done = found(given_).changes["done"]
    assert (done.unsprung.value, done.rotating.value) == pytest.approx((-13.4, -13.4))
    assert found().changes["done"].unsprung.value == 0.0


def test_any_set_of_jobs_can_be_asked_for():
    told = found(jobs=("j4", "j1", "nothing"))
    assert told.jobs == ("j4",)
    assert told.changes["planned"].net.value == pytest.approx(-4.0)
    assert "balance_job_unknown" in codes(told)


def test_a_part_put_in_and_taken_out_again_leaves_no_doubt():
    told = found(jobs=("j4",))
    after = told.states["after"].body
    light = [name for name in after.x.sources if name.startswith(("claim:light", "place:light"))]
    assert all(abs(after.x.sources[name]) < 1e-12 for name in light)


@pytest.mark.parametrize(
    ("changes", "state", "reasons"),
    [
        ({"cars": {"wheelbase": "0 mm"}}, "now", {"x": "wheelbase_unknown", "corners": "cross_unknown"}),
        ({"cars": {"wheelbase": None}}, "now", {"x": "wheelbase_unknown", "corners": "cross_unknown"}),
        ({"cars": {"track_front": None, "track_rear": None}}, "now",
         {"y": "tracks_unknown", "z": "height_unknown", "corners": "cross_unknown"}),
        ({"weigh_ins": {"layout": "axles", "front": "518 kg", "rear": "402.4 kg"}}, "now",
         {"y": "sides_unknown", "corners": "corners_unweighed"}),
        ({"weigh_ins": {"layout": "total", "total": "920.4 kg"}}, "weighed",
         {"x": "axles_unknown", "y": "sides_unknown", "corners": "corners_unweighed"}),
    ],
)  # fmt: skip
def test_what_cannot_be_told_has_its_reason(changes, state, reasons):
    if "layout" in changes.get("weigh_ins", {}):
        changes = {"weigh_ins": {**changes["weigh_ins"], **dict.fromkeys(CORNERS)}}
    told = found(varied(**changes))
    assert {name: reason["code"] for name, reason in told.states[state].reasons.items()} == reasons


def test_without_a_weigh_in_weights_are_told_and_no_centre():
    told = found({**GARAGE, "weigh_ins": []})
    assert told.states == {}
    assert told.reasons["now"]["code"] == "no_weigh_in"
    assert told.changes["done"].net.value == pytest.approx(-22.3)
    assert told.changes["done"].reasons["yaw"]["code"] == "yaw_unknown"


def test_a_weigh_in_without_confirmed_jobs_tells_only_the_car_as_weighed():
    told = found(varied(weigh_ins={"jobs": None}))
    assert set(told.states) == {"weighed"}
    assert told.reasons["now"]["code"] == "jobs_not_confirmed"


def test_jobs_that_would_leave_nothing_of_the_car_are_told_so():
    told = found({**GARAGE, "parts": [*GARAGE["parts"][:3], {**GARAGE["parts"][3], "claim": "6000 kg"}]})
    assert "after" not in told.states
    assert told.reasons["after"]["code"] == "nothing_left"


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"parts": {"x": "27.1 m"}}, "place_outside"), ({"parts": {"y": "-1.5 m"}}, "place_outside"),
        ({"parts": {"x": None, "zone": "boot"}}, "place_by_zone"), ({"parts": {"x": None}}, "place_anywhere"),
        ({"parts": {"z": "890 mm"}}, "level_unsure"), ({"cars": {"track_rear": "1390 mm"}}, "tracks_unequal"),
        ({"parts": {"claim": None}}, "unweighed"),
    ],
)  # fmt: skip
def test_what_was_taken_on_trust_or_looks_wrong_is_said(changes, code):
    assert code in codes(found(varied(**changes)))
    assert code not in codes(found())


def test_the_height_is_assumed_until_somebody_measures_it():
    assumed, measured = found(), found(height=Uncertain(0.5, {"given:height": 0.005}))
    assert "height_assumed" in codes(assumed)
    assert "height_assumed" not in codes(measured)
    assert measured.states["weighed"].body.z.value == 0.5
    assert measured.states["weighed"].body.z.u < assumed.states["weighed"].body.z.u


def test_every_zone_has_a_place_of_its_own_inside_the_car():
    assert set(ZONE_PLACES) == set(ZONES)
    parts = [{"id": zone, "zone": zone} for zone in ZONES]
    job_parts = [{"id": zone, "job": "j3", "part": zone, "way": "off"} for zone in ZONES]
    told = found({**GARAGE, "parts": [*GARAGE["parts"], *parts], "job_parts": [*GARAGE["job_parts"], *job_parts]})
    places = {place.part: place for place in told.places}
    assert all(places[zone].by == dict.fromkeys("xyz", "zone") for zone in ZONES)
    assert all(places[zone].x.u > 0.02 and places[zone].z.u > 0.02 for zone in ZONES)
    assert "place_outside" not in codes(told)
    assert places["nose"].x.value < places["boot"].x.value < places["tail"].x.value
    assert places["left door"].y.value == -places["right door"].y.value < 0
    assert places["floor"].z.value < places["roof"].z.value


def test_a_part_s_own_length_and_width_count_in_the_yaw_inertia_unless_a_size_is_asked_for():
    """The change by direct summation over the part cut into many points."""
    large = varied(parts={"length": "1.4 m", "width": "0.9 m"})
    told = found(large).changes["done"].yaw.value - found().changes["done"].yaw.value
    cuts, mass = 100, SPARE.mass
    spread = [((n + 0.5) / cuts - 0.5, (k + 0.5) / cuts - 0.5) for n in range(cuts) for k in range(cuts)]
    own = sum(mass / cuts**2 * ((1.4 * along) ** 2 + (0.9 * across) ** 2) for along, across in spread)
    assert told == pytest.approx(-own, rel=1e-3)
    assert found(large, sizes={"spare": (0.0, 0.0)}).changes["done"].yaw == found().changes["done"].yaw


@pytest.mark.parametrize(
    ("typed", "axes"),
    [
        ({"x": "-0.80 m"}, ("x",)), ({"x": "-0.70 m"}, ()), ({"x": "3.2 m"}, ("x",)), ({"y": "-850 mm"}, ("y",)),
        ({"y": "-850 mm", "place_within": "60 mm"}, ()), ({"z": "1.40 m"}, ("z",)), ({"z": "1.25 m"}, ()),
    ],
)  # fmt: skip
def test_a_part_is_outside_when_it_lies_beyond_the_car_s_own_dimensions(typed, axes):
    car = {"length": "3720 mm", "front_overhang": "690 mm", "width": "1600 mm", "height": "1290 mm"}
    told = found(varied(cars=car, parts=typed))
    assert {place.part: place.outside for place in told.places}["spare"] == axes
    assert ("place_outside" in codes(told)) is bool(axes)


def test_a_pair_of_wheels_lies_on_both_sides():
    wheels = {"id": "wheels", "zone": "rear wheels", "count": 2, "claim": "8 kg", "claim_basis": "quoted"}
    pair = {"id": "p", "job": "j3", "part": "wheels", "way": "off"}
    given_ = {**GARAGE, "parts": [*GARAGE["parts"], wheels], "job_parts": [*GARAGE["job_parts"][:3], pair]}
    change = found(given_).changes["planned"].yaw
    body = found(given_).states["now"].body
    mass, x, y = body.mass.value, body.x.value, body.y.value
    car = [Point(mass / 2, x - 1.0, y), Point(mass / 2, x + 1.0, y)]
    sides = [Point(-8.0, LONG, -WIDE / 2), Point(-8.0, LONG, WIDE / 2)]
    assert change.value == pytest.approx(summed([*car, *sides])[3] - summed(car)[3], rel=1e-9)


def balanced(state: State) -> bool:
    sides = (("front", "rear"), ("left", "right"))
    pairs = [(state.loads[a].value + state.loads[b].value) for a, b in sides if a in state.loads]
    return all(pair == pytest.approx(state.body.mass.value, rel=1e-9) for pair in pairs)


@settings(max_examples=150)
@given(garages.RANDOMS)
def test_front_and_rear_and_left_and_right_make_the_whole_in_any_garage(random: Random):
    told = balance(read_garage(whole_cars.garage(random)))
    assert all(balanced(state) for state in told.states.values())
    assert set(told.states) | set(told.reasons) == {"start", "weighed", "now", "after"}


@settings(max_examples=100)
@given(garages.RANDOMS)
def test_nothing_in_the_records_can_raise(random: Random):
    given_ = whole_cars.garage(random)
    spoiled = garages.spoiled(
        random, {name: items for name, items in given_.items() if isinstance(items, list) and items}
    )
    assert isinstance(balance(read_garage({**given_, **spoiled})), Balance)


@settings(max_examples=60)
@given(garages.RANDOMS)
def test_the_order_of_the_records_never_changes_a_digit(random: Random):
    given_ = whole_cars.garage(random)
    assert balance(read_garage(garages.shuffled(random, given_))) == balance(read_garage(given_))
