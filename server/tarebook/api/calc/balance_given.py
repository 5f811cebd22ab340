"""What `calc balance` and `calc load-transfer` are asked beside the garage."""

from typing import Any

from marshmallow import fields, validate

from tarebook.api.calc.asked import all_typed, typed
from tarebook.api.calc.garage_schema import StrictSchema, Typed
from tarebook.api.calc.numbers import Given
from tarebook.core.balance.balance import Question
from tarebook.core.numbers.uncertain import Uncertain, rectangular


class CalcSizeSchema(StrictSchema):
    """How large a part is, for its own inertia: along the car and across it."""

    part = fields.String(required=True)
    length = Typed()
    width = Typed()


OPTIONS: dict[str, fields.Field[Any]] = {
    "with_jobs": fields.List(
        fields.String(),
        allow_none=True,
        validate=validate.Length(max=1000),
        metadata={"description": "Ids of the jobs to add to those in the car; by default all that are chosen."},
    ),
    "weigh_in": fields.String(allow_none=True, metadata={"description": "The one to rest on; by default the last."}),
    "height": Typed(),
    "height_within": Typed(),
    "sizes": fields.List(
        fields.Nested(CalcSizeSchema),
        validate=validate.Length(max=1000),
        metadata={"description": "In place of the parts' own length and width."},
    ),
}


def question_of(given: Given) -> Question:
    """The question asked. Raises QuantityError."""
    jobs = given.get("with_jobs")
    return Question(
        jobs=None if jobs is None else tuple(jobs),
        weigh_in=given.get("weigh_in"),
        height=_height(given),
        sizes={size["part"]: _size(size) for size in given.get("sizes") or []},
    )


def _height(given: Given) -> Uncertain | None:
    """The height as known from elsewhere: within as said, else to its last digit."""
    height, within = typed(given, "height", "length"), typed(given, "height_within", "length")
    if height is None:
        return None
    half = within.value if within else 0.5 * height.last_digit
    return Uncertain(height.value, {"given:height": rectangular(half)})


def _size(size: Given) -> tuple[float, float]:
    length, width = all_typed(size, length="length width").values()
    return (length.value if length else 0.0, width.value if width else 0.0)
