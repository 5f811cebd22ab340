"""`calc lift`: the height of the centre of gravity from weighing one axle with the other raised.

From readings as they are (`lift`), or from a lift of the garage and its weigh-in: the one named, else the newest.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from marshmallow import Schema, fields

from tarebook.api.calc.balance_given import typed
from tarebook.api.calc.garage_schema import StrictSchema, Typed, garage_schema, one_of
from tarebook.api.calc.numbers import Json, Numbers, ToldSchema, all_told, numeric, told, warned_of
from tarebook.core.balance.axle_lift import Axles
from tarebook.core.balance.lift import RAISED, LiftReadings, axles_of, lift, lift_of, lifts_in_order
from tarebook.core.garage.garage import read_garage
from tarebook.core.garage.records import Garage, Lift
from tarebook.core.numbers.uncertain import Uncertain

ABOUT = "Height of the centre of gravity from an axle lift, with its uncertainty."


class CalcLiftReadingsSchema(StrictSchema):
    """Whole-axle loads: both level, and the one on the ground with the other raised by `height`."""

    front = Typed()
    rear = Typed()
    tilted = Typed()
    height = Typed()
    height_within = Typed()
    raised = fields.String(validate=one_of(RAISED))
    scale = fields.String(allow_none=True)


Given = garage_schema(
    "CalcLiftGiven",
    lift=fields.Nested(CalcLiftReadingsSchema),
    lift_record=fields.String(
        allow_none=True, metadata={"description": "Id of a lift of the garage, when no readings are given."}
    ),
)


class LiftSchema(Schema):
    """`height` above the ground, null for the `reason`. `tilt`: tan θ. `moved`: load that moved.

    `lift`: id of the one it is of. `least`, `enough`: rises that would tell the height at all, and well.
    """

    lift = fields.String(required=True, allow_none=True)
    car = fields.String(required=True, allow_none=True)
    wheelbase = numeric()
    height = numeric()
    moved = numeric()
    tilt = fields.Float(required=True, allow_none=True)
    least = numeric()
    enough = numeric()
    reason = fields.Nested(ToldSchema, required=True, allow_none=True)
    warnings = warned_of()


Answer = LiftSchema


def compute(given: Mapping[str, Any]) -> Json:
    garage, write = read_garage(given), Numbers(given)
    axles = axles_of(garage.car)
    record = None if given.get("lift") else _record(garage, given.get("lift_record"))
    found = lift_of(garage, record) if record else lift(garage, _readings(given.get("lift") or {}))
    return {
        "lift": record.id if record else None,
        "car": garage.car.id if garage.car else None,
        "wheelbase": write.length(axles.wheelbase) if isinstance(axles, Axles) else None,
        "height": write.length(found.height),
        "moved": write.mass(found.moved),
        "tilt": found.tilt,
        "least": write.length(None if found.least is None else Uncertain(found.least)),
        "enough": write.length(None if found.enough is None else Uncertain(found.enough)),
        "reason": told(found.reason),
        "warnings": all_told([*garage.warnings, *found.warnings]),
    }


def _record(garage: Garage, asked: str | None) -> Lift | None:
    records = lifts_in_order(garage)
    return garage.lifts.get(asked) if asked is not None else records[-1] if records else None


def _readings(given: Mapping[str, Any]) -> LiftReadings:
    return LiftReadings(
        front=typed(given, "front", "mass"),
        rear=typed(given, "rear", "mass"),
        tilted=typed(given, "tilted", "mass"),
        height=typed(given, "height", "length"),
        height_within=typed(given, "height_within", "length"),
        raised=given.get("raised", "rear"),
        scale=given.get("scale"),
    )
