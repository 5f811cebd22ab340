"""What `calc balance` and `calc load-transfer` are asked beside the garage, and typed options read."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Literal

from marshmallow import fields, validate

from tarebook.api.calc.garage_schema import StrictSchema, Typed
from tarebook.core.balance.balance import Question
from tarebook.core.garage.field_values import read_field
from tarebook.core.numbers.quantity import Quantity
from tarebook.core.numbers.uncertain import Uncertain, rectangular
from tarebook.journal.kinds import Field


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


def typed(given: Mapping[str, Any], name: str, kind: Literal["mass", "length", "volume"]) -> Quantity | None:
    """An option as a quantity. Raises QuantityError."""
    found: Quantity | None = read_field(name, Field(kind), given[name], None) if given.get(name) is not None else None
    return found


def question_of(given: Mapping[str, Any]) -> Question:
    """The question asked. Raises QuantityError."""
    jobs = given.get("with_jobs")
    return Question(
        jobs=None if jobs is None else tuple(jobs),
        weigh_in=given.get("weigh_in"),
        height=_height(given),
        sizes={size["part"]: _size(size) for size in given.get("sizes") or []},
    )


def _height(given: Mapping[str, Any]) -> Uncertain | None:
    """The height as known from elsewhere: within as said, else to its last digit."""
    height, within = typed(given, "height", "length"), typed(given, "height_within", "length")
    if height is None:
        return None
    half = within.value if within else 0.5 * height.last_digit
    return Uncertain(height.value, {"given:height": rectangular(half)})


def _size(size: Mapping[str, Any]) -> tuple[float, float]:
    length, width = typed(size, "length", "length"), typed(size, "width", "length")
    return (length.value if length else 0.0, width.value if width else 0.0)
