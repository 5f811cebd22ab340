"""`calc ballast`: how many blocks at which places bring the car to its minimum, its guard and its shares."""

from dataclasses import replace

from marshmallow import fields, validate

from tarebook.api.calc.answer import Answer, Told, Warnings, writes
from tarebook.api.calc.asked import typed_text
from tarebook.api.calc.calculation import Calculation
from tarebook.api.calc.garage_schema import Decimal, StrictSchema, Typed, garage_schema, one_of
from tarebook.api.calc.numbers import Given, Length, Mass, Share
from tarebook.core.ballast.ballast import Place
from tarebook.core.ballast.ballast_answer import share_between
from tarebook.core.ballast.ballast_records import BallastChoice, BallastQuestion, ballast_choice
from tarebook.core.garage.records import Garage, Warned
from tarebook.core.numbers.quantity import read, read_number
from tarebook.core.numbers.typed import QuantityError
from tarebook.core.numbers.units import Kind


class BallastPlaceSchema(StrictSchema):
    """`most` blocks of mass `block` may go at x, y, z; without z it is taken to lie on the ground."""

    id = fields.String(required=True, validate=validate.Length(min=1, max=80))
    x = Typed()
    y = Typed()
    z = Typed()
    block = Typed()
    most = fields.Integer(strict=True, required=True, validate=validate.Range(min=0, max=10_000))


@writes(BallastChoice, but="car wanted found")
class BallastSchema(Answer):
    """`put`: blocks by place. `front`, `left`: shares with it. `missing`: what even this, the nearest, does not reach.

    `now` and `least`: what the car weighs without it, and what it must weigh. `cross_load`: what it moves RF + LR by.
    """

    now = Mass("car.total")
    least = Mass("wanted.least")
    put = fields.Dict(fields.String(), fields.Integer(), required=True, allow_none=True, attribute="found.put")
    added = Mass("found.added")
    total = Mass("found.total")
    front = Share("found.front")
    left = Share("found.left")
    height = Length("found.height")
    cross_load = Mass("found.cross_load")
    aboard = Mass()
    missing = Warnings("found.missing")
    reason = Told()
    warnings = Warnings(of_garage=True)


def _choice(garage: Garage, given: Given) -> BallastChoice:
    try:
        choice = ballast_choice(garage, _question(given))
    except QuantityError as problem:
        return BallastChoice(None, None, 0.0, {}, None, {}, Warned(code=problem.code, data=problem.data), ())
    return replace(choice, warnings=(*choice.warnings, *(choice.found.warnings if choice.found else ())))


def _question(given: Given) -> BallastQuestion:
    places = given.get("places")
    return BallastQuestion(
        places=None if places is None else tuple(_place(place) for place in places),
        **{name: _value(given, name) for name in ("total", "minimum", "guard")},
        most=_value(given, "total_most"),
        more=_value(given, "more"),
        height=_value(given, "height", "length"),
        **{name: _decimal(given, name) for name in ("front_share", "left_share", "roll_front")},
        front=share_between(_decimal(given, "front_from"), _decimal(given, "front_to")),
        left=share_between(_decimal(given, "left_from"), _decimal(given, "left_to")),
        prefer=given.get("prefer"),
    )


def _place(place: Given) -> Place:
    x, y, z = (_value(place, axis, "length", signed=True) or 0.0 for axis in "xyz")
    return Place(place["id"], x, y, z, _value(place, "block") or 0.0, place["most"])


def _value(given: Given, name: str, kind: Kind = "mass", signed: bool = False) -> float | None:
    return read(kind, typed_text(given[name]), signed=signed).value if given.get(name) else None


def _decimal(given: Given, name: str) -> float | None:
    return float(read_number(given[name])) if given.get(name) else None


BALLAST = Calculation(
    "ballast",
    "Ballast: the least of it, and where, for total, front and left shares.",
    garage_schema(
        "CalcBallastGiven",
        places=fields.List(fields.Nested(BallastPlaceSchema), validate=validate.Length(max=20)),
        total=Typed(), minimum=Typed(), guard=Typed(), total_most=Typed(), more=Typed(), height=Typed(),
        front_share=Decimal(), left_share=Decimal(), roll_front=Decimal(),
        front_from=Decimal(), front_to=Decimal(), left_from=Decimal(), left_to=Decimal(),
        prefer=fields.String(allow_none=True, validate=one_of(("mass", "centre", "cross"))),
    ),
    BallastSchema(),
    _choice,
)  # fmt: skip
