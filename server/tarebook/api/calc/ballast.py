"""`calc ballast`: how many blocks at which places bring the car to its minimum, its guard and its shares."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from marshmallow import Schema, fields, validate

from tarebook.api.calc.garage_schema import Decimal, StrictSchema, Typed, garage_schema, one_of
from tarebook.api.calc.numbers import Json, Numbers, ToldSchema, all_told, numeric, told, typed_text, warned_of
from tarebook.core.ballast import Ballast, Carried, Place, Wanted, ballast
from tarebook.core.estimate import in_order
from tarebook.core.garage import read_garage
from tarebook.core.quantity import QuantityError, read, read_number
from tarebook.core.records import Garage, Warned, warned
from tarebook.core.standing import standing
from tarebook.core.uncertain import Uncertain, multiply
from tarebook.core.weigh_in import weigh_in

ABOUT = "Ballast: the least of it, and where, for total, front and left shares."


class BallastPlaceSchema(StrictSchema):
    """`most` blocks of mass `block` may go at x, y, z; without z it is taken to lie on the ground."""

    id = fields.String(required=True, validate=validate.Length(min=1, max=80))
    x = Typed()
    y = Typed()
    z = Typed()
    block = Typed()
    most = fields.Integer(strict=True, required=True, validate=validate.Range(min=0, max=10_000))


Given = garage_schema(
    "CalcBallastGiven",
    places=fields.List(fields.Nested(BallastPlaceSchema), validate=validate.Length(max=20)),
    total=Typed(), minimum=Typed(), guard=Typed(), total_most=Typed(), height=Typed(),
    front_share=Decimal(), left_share=Decimal(), roll_front=Decimal(),
    front_from=Decimal(), front_to=Decimal(), left_from=Decimal(), left_to=Decimal(),
    prefer=fields.String(allow_none=True, validate=one_of(("mass", "centre", "cross"))),
)  # fmt: skip


class BallastSchema(Schema):
    """`put`: blocks by place. `front`, `left`: shares with it. `missing`: what even this, the nearest, does not reach.

    `now` and `least`: what the car weighs without it, and what it must weigh. `cross_load`: what it moves RF + LR by.
    """

    now = numeric()
    least = numeric()
    put = fields.Dict(fields.String(), fields.Integer(), required=True, allow_none=True)
    added = numeric()
    total = numeric()
    front = numeric()
    left = numeric()
    height = numeric()
    cross_load = numeric()
    missing = warned_of()
    reason = fields.Nested(ToldSchema, required=True, allow_none=True)
    warnings = warned_of()


Answer = BallastSchema


def compute(given: Mapping[str, Any]) -> Json:
    garage, write = read_garage(given), Numbers(given)
    try:
        car, least = _carried(garage, given), _least(garage, given)
        found = _found(car, least, given)
    except QuantityError as problem:
        car, least, found = None, None, Warned(code=problem.code, data=problem.data)
    answer = found if isinstance(found, Ballast) else None
    return {
        "now": write.mass(car.total if car else None),
        "least": write.mass(least),
        "put": dict(answer.put) if answer else None,
        "added": write.mass(answer.added if answer else None),
        "total": write.mass(answer.total if answer else None),
        "front": write.share(answer.front if answer else None),
        "left": write.share(answer.left if answer else None),
        "height": write.length(Uncertain(answer.height) if answer and answer.height is not None else None),
        "cross_load": write.mass(answer.cross_load if answer else None),
        "missing": all_told(answer.missing if answer else ()),
        "reason": None if isinstance(found, Ballast) else told(found),
        "warnings": all_told([*garage.warnings, *(answer.warnings if answer else ())]),
    }


def _found(car: Carried | None, least: float | None, given: Mapping[str, Any]) -> Ballast | Warned:
    if car is None:
        return warned("ballast_unweighed")
    if least is None:
        return warned("ballast_no_minimum")
    wanted = Wanted(
        least=least,
        most=_mass(given, "total_most"),
        front=_range(given, "front"),
        left=_range(given, "left"),
        prefer=given.get("prefer") or "mass",
    )
    return ballast(car, [_place(place) for place in given.get("places", [])], wanted)


def _carried(garage: Garage, given: Mapping[str, Any]) -> Carried | None:
    """The car's total as given, else the standing's; shares as given, else those of the last weigh-in that has them."""
    typed = _mass(given, "total")
    total = Uncertain(typed) if typed is not None else standing(garage).weight
    if total is None:
        return None
    front, left = (_share(garage, given, side) for side in ("front", "left"))
    car = garage.car
    return Carried(
        total=total,
        front=multiply(total, front) if front else None,
        left=multiply(total, left) if left else None,
        height=_length(given, "height"),
        wheelbase=car.wheelbase.value if car and car.wheelbase else None,
        track_front=car.track_front.value if car and car.track_front else None,
        track_rear=car.track_rear.value if car and car.track_rear else None,
        roll_front=_decimal(given, "roll_front"),
    )


def _share(garage: Garage, given: Mapping[str, Any], side: str) -> Uncertain | None:
    typed = _decimal(given, f"{side}_share")
    if typed is not None:
        return Uncertain(typed)
    cars = [weigh_in(garage, record.id) for record in reversed(in_order(garage))]
    return next((car.loads.shares[side] for car in cars if car and side in car.loads.shares), None)


def _least(garage: Garage, given: Mapping[str, Any]) -> float | None:
    now = standing(garage)
    typed, guard = _mass(given, "minimum"), _mass(given, "guard")
    minimum = typed if typed is not None else now.minimum
    if minimum is None:
        return None
    in_hand = now.official.in_hand if guard is None and typed is None and now.official else guard
    return minimum + (in_hand or 0.0)


def _place(place: Mapping[str, Any]) -> Place:
    x, y, z = (_position(place, axis) for axis in "xyz")
    return Place(place["id"], x, y, z, _mass(place, "block") or 0.0, place["most"])


def _position(place: Mapping[str, Any], axis: str) -> float:
    return read("length", typed_text(place[axis]), signed=True).value if place.get(axis) else 0.0


def _mass(given: Mapping[str, Any], name: str) -> float | None:
    return read("mass", typed_text(given[name])).value if given.get(name) else None


def _length(given: Mapping[str, Any], name: str) -> float | None:
    return read("length", typed_text(given[name])).value if given.get(name) else None


def _decimal(given: Mapping[str, Any], name: str) -> float | None:
    return float(read_number(given[name])) if given.get(name) else None


def _range(given: Mapping[str, Any], side: str) -> tuple[float, float] | None:
    """From one end given to the other; an end left out is as far as it goes."""
    low, high = _decimal(given, f"{side}_from"), _decimal(given, f"{side}_to")
    return None if low is None and high is None else (low or 0.0, 1.0 if high is None else high)
