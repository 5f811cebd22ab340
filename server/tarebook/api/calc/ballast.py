"""`calc ballast`: how many blocks at which places bring the car to its minimum, its guard and its shares."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from marshmallow import Schema, fields, validate

from tarebook.api.calc.garage_schema import Decimal, StrictSchema, Typed, garage_schema, one_of
from tarebook.api.calc.numbers import Json, Numbers, ToldSchema, all_told, numeric, told, typed_text, warned_of
from tarebook.core.ballast.ballast import Place
from tarebook.core.ballast.ballast_records import BallastChoice, BallastQuestion, ballast_choice
from tarebook.core.garage.garage import read_garage
from tarebook.core.garage.records import Warned
from tarebook.core.numbers.quantity import QuantityError, read, read_number
from tarebook.core.numbers.uncertain import Uncertain

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
    total=Typed(), minimum=Typed(), guard=Typed(), total_most=Typed(), more=Typed(), height=Typed(),
    front_share=Decimal(), left_share=Decimal(), roll_front=Decimal(),
    front_from=Decimal(), front_to=Decimal(), left_from=Decimal(), left_to=Decimal(),
    prefer=fields.String(allow_none=True, validate=one_of(("mass", "centre", "cross"))),
)  # fmt: skip


class BallastSchema(Schema):
    """`put`: blocks by place. `front`, `left`: shares with it. `missing`: what even this, the nearest, does not reach.

    `now` and `least`: what the car weighs without it, and what it must weigh. `cross_load`: what it moves RF + LR by.
    `aboard`: ballast the car's weight has in it now; `fitted`: blocks by place; `moves`: from there to `put`.
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
    aboard = numeric()
    fitted = fields.Dict(fields.String(), fields.Integer(), required=True)
    moves = fields.Dict(fields.String(), fields.Integer(), required=True)
    missing = warned_of()
    reason = fields.Nested(ToldSchema, required=True, allow_none=True)
    warnings = warned_of()


Answer = BallastSchema


def compute(given: Mapping[str, Any]) -> Json:
    garage = read_garage(given)
    try:
        choice = ballast_choice(garage, _question(given))
    except QuantityError as problem:
        choice = BallastChoice(None, None, 0.0, {}, None, {}, Warned(code=problem.code, data=problem.data), ())
    return {**_written(choice, Numbers(given)), "warnings": all_told([*garage.warnings, *_warnings(choice)])}


def _written(choice: BallastChoice, write: Numbers) -> Json:
    answer = choice.found
    return {
        "now": write.mass(choice.car.total if choice.car else None),
        "least": write.mass(choice.wanted.least if choice.wanted else None),
        "put": dict(answer.put) if answer else None,
        "added": write.mass(answer.added if answer else None),
        "total": write.mass(answer.total if answer else None),
        "front": write.share(answer.front if answer else None),
        "left": write.share(answer.left if answer else None),
        "height": write.length(Uncertain(answer.height) if answer and answer.height is not None else None),
        "cross_load": write.mass(answer.cross_load if answer else None),
        "aboard": write.mass(choice.aboard),
        "fitted": choice.fitted,
        "moves": choice.moves,
        "missing": all_told(answer.missing if answer else ()),
        "reason": told(choice.reason) if choice.reason else None,
    }


def _warnings(choice: BallastChoice) -> list[Warned]:
    return [*choice.warnings, *(choice.found.warnings if choice.found else ())]


def _question(given: Mapping[str, Any]) -> BallastQuestion:
    places = given.get("places")
    return BallastQuestion(
        places=None if places is None else tuple(_place(place) for place in places),
        total=_mass(given, "total"),
        minimum=_mass(given, "minimum"),
        guard=_mass(given, "guard"),
        most=_mass(given, "total_most"),
        more=_mass(given, "more"),
        height=_length(given, "height"),
        front_share=_decimal(given, "front_share"),
        left_share=_decimal(given, "left_share"),
        roll_front=_decimal(given, "roll_front"),
        front=_range(given, "front"),
        left=_range(given, "left"),
        prefer=given.get("prefer"),
    )


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
