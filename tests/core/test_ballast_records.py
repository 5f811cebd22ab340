"""Ballast from records: what is on board comes off first, and the moves lead from there to the choice."""

from typing import Any

import pytest

from tarebook.core.ballast.ballast_records import BallastQuestion, ballast_choice
from tarebook.core.garage.garage import read_garage

BASE, FRONT, REAR = 2400.0, 1400.0, 1400.0
CORNERS = {"lf": 236.0, "rf": 244.0, "lr": 196.0, "rr": 204.0}
PLACES: tuple[dict[str, Any], ...] = (
    {
        "id": "a floor",
        "name": "left floor",
        "x": "1100 mm",
        "y": "-400 mm",
        "z": "150 mm",
        "block": "2.5 kg",
        "most": 8,
    },
    {"id": "b boot", "name": "boot floor", "x": "2700 mm", "y": "0 mm", "z": "300 mm", "block": "1 kg", "most": 10},
    {"id": "c nose", "name": "nose", "x": "-400 mm", "y": "100 mm", "z": "350 mm", "block": "1 kg", "most": 5},
)
AIMS = {"front_from": "0.535", "front_to": "0.545", "left_from": "0.49", "left_to": "0.5"}


def garage(fitted: dict[str, int] | None = None, ballast: str | None = None, **car: Any) -> dict[str, Any]:
    """A car weighed on its corners with the blocks fitted that are given, on wheels of one track."""
    corners = {name: f"{kg:.6f} kg" for name, kg in standing_on(fitted or {}).items()}
    sizes = {"wheelbase": f"{BASE} mm", "track_front": f"{FRONT} mm", "track_rear": f"{REAR} mm"}
    weigh_in = {"id": "k", "layout": "corners", "trim": "event", "fuel": "10 L", "jobs": [], "scale": "pads", **corners}
    return {
        "cars": [{"id": "car", **sizes, **AIMS, **car}],
        "scales": [{"id": "pads", "kind": "corner_pads", "division": "0.000001 kg"}],
        "weigh_ins": [{**weigh_in, **({"ballast": ballast} if ballast else {})}],
        "class_sheets": [{"id": "class", "minimum": "900 kg", "driver": "out", "fuel": "as_it_is"}],
        "ballast_places": [{**place, **({"fitted": fitted[place["id"]]} if fitted and place["id"] in fitted else {})}
                           for place in PLACES],
    }  # fmt: skip


def standing_on(fitted: dict[str, int]) -> dict[str, float]:
    """The corners with blocks put in: each block's weight by the lever's rule along, and by the same across."""
    corners = dict(CORNERS)
    for place in PLACES:
        x, y, block = (float(place[name].split()[0]) for name in ("x", "y", "block"))
        kg, left, front = fitted.get(place["id"], 0) * block, 0.5 - y / FRONT, 1 - x / BASE
        for name, share in (("lf", left * front), ("rf", (1 - left) * front), ("lr", left * (1 - front)),
                            ("rr", (1 - left) * (1 - front))):  # fmt: skip
            corners[name] += kg * share
    return corners


def choice(given: dict[str, Any], **question: Any) -> Any:
    # A guard of its own: the standing's is a little wider with blocks on board, whose weight is known to a digit.
    return ballast_choice(read_garage(given), BallastQuestion(guard=2.0, **question))


def test_what_was_on_board_when_weighed_comes_out_where_it_stood():
    empty, laden = choice(garage()), choice(garage({"a floor": 2, "c nose": 3}, "8 kg"))
    assert laden.aboard == pytest.approx(8.0)
    assert laden.car.total.value == pytest.approx(empty.car.total.value)
    assert laden.car.front.value == pytest.approx(empty.car.front.value)
    assert laden.car.left.value == pytest.approx(empty.car.left.value)
    assert laden.found.put == empty.found.put
    assert laden.found.front.value == pytest.approx(empty.found.front.value)
    assert empty.found.missing == ()


def test_the_moves_lead_from_the_blocks_fitted_to_the_choice():
    fitted = {"a floor": 2, "c nose": 3}
    found = choice(garage(fitted, "8 kg"))
    moved = {place: fitted.get(place, 0) + found.moves.get(place, 0) for place in {*fitted, *found.moves}}
    assert {place: count for place, count in moved.items() if count} == found.found.put
    assert choice(garage(found.found.put, f"{found.found.added} kg")).moves == {}


def test_ballast_of_another_weight_stood_nobody_knows_where():
    found = choice(garage({"a floor": 2}, "7 kg"))
    assert "ballast_then_anywhere" in {warning["code"] for warning in found.warnings}


def test_it_comes_to_minimum_and_guard_and_inside_the_ranges_of_the_car():
    found = choice(garage())
    assert found.wanted.least == 902.0
    assert found.found.total.value >= 902.0
    assert 0.535 <= found.found.front.value <= 0.545
    assert 0.49 <= found.found.left.value <= 0.5


def test_what_is_asked_goes_before_what_the_car_says():
    found = choice(garage(), minimum=890.0, front=(0.546, 0.56))
    assert found.wanted.least == 892.0
    assert 0.546 <= found.found.front.value <= 0.56


def test_a_range_of_the_car_that_cannot_be_told_is_left_out_and_said_so():
    given = garage()
    given["cars"][0] |= {"track_rear": None}
    found = choice(given)
    assert found.found is not None
    assert "ballast_no_left" in {warning["code"] for warning in found.warnings}


def test_a_place_that_lacks_something_is_left_out_and_named():
    given = garage()
    given["ballast_places"][0] |= {"block": None}
    found = choice(given)
    assert found.warnings[0] == {"code": "ballast_place_open", "data": {"name": "left floor"}}
    assert "a floor" not in found.found.put


def test_without_a_weigh_in_or_a_minimum_it_says_which_is_lacking():
    unweighed, boundless = garage(), garage()
    unweighed["weigh_ins"] = []
    boundless["class_sheets"] = []
    assert choice(unweighed).reason["code"] == "ballast_unweighed"
    assert choice(boundless).reason["code"] == "no_minimum"


def test_a_little_more_for_a_lower_centre_never_raises_it():
    least, lower = choice(garage(ballast_for="mass")), choice(garage(ballast_for="centre", ballast_more="5 kg"))
    assert lower.found.height <= least.found.height + 1e-9
    assert lower.found.added <= least.found.added + 5.0 + 1e-9
