"""`calc lift`: the height of the centre of gravity from weighing one axle with the other raised.

From readings as they are (`lift`), or from a lift of the garage and its weigh-in: the one named, else the newest.
"""

from marshmallow import fields

from tarebook.api.calc.answer import Answer, Told, Warnings
from tarebook.api.calc.asked import all_typed
from tarebook.api.calc.calculation import Calculation
from tarebook.api.calc.garage_schema import StrictSchema, Typed, garage_schema, one_of
from tarebook.api.calc.numbers import Given, Json, Length, Mass
from tarebook.core.balance.axle_lift import Axles
from tarebook.core.balance.lift import RAISED, LiftReadings, axles_of, lift, lift_of, lifts_in_order
from tarebook.core.garage.records import Garage, Lift


class CalcLiftReadingsSchema(StrictSchema):
    """Whole-axle loads: both level, and the one on the ground with the other raised by `height`."""

    front = Typed()
    rear = Typed()
    tilted = Typed()
    height = Typed()
    height_within = Typed()
    raised = fields.String(validate=one_of(RAISED))
    scale = fields.String(allow_none=True)


class LiftSchema(Answer):
    """`height` above the ground, null for the `reason`. `tilt`: tan θ. `moved`: load that moved.

    `lift`: id of the one it is of. `least`, `enough`: rises that would tell the height at all, and well.
    """

    lift = fields.String(required=True, allow_none=True, attribute="record.id")
    car = fields.String(required=True, allow_none=True, attribute="car.id")
    wheelbase = Length("axles.wheelbase")
    height = Length("found.height")
    moved = Mass("found.moved")
    tilt = fields.Float(required=True, allow_none=True, attribute="found.tilt")
    least = Length("found.least")
    enough = Length("found.enough")
    reason = Told("found.reason")
    warnings = Warnings("found.warnings", of_garage=True)


def _lift(garage: Garage, given: Given) -> Json:
    axles = axles_of(garage.car)
    record = None if given.get("lift") else _record(garage, given.get("lift_record"))
    found = lift_of(garage, record) if record else lift(garage, _readings(given.get("lift") or {}))
    return {"record": record, "car": garage.car, "axles": axles if isinstance(axles, Axles) else None, "found": found}


def _record(garage: Garage, asked: str | None) -> Lift | None:
    records = lifts_in_order(garage)
    return garage.lifts.get(asked) if asked is not None else records[-1] if records else None


def _readings(given: Given) -> LiftReadings:
    read = all_typed(given, mass="front rear tilted", length="height height_within")
    return LiftReadings(**read, raised=given.get("raised", "rear"), scale=given.get("scale"))


LIFT = Calculation(
    "lift",
    "Height of the centre of gravity from an axle lift, with its uncertainty.",
    garage_schema(
        "CalcLiftGiven",
        lift=fields.Nested(CalcLiftReadingsSchema),
        lift_record=fields.String(
            allow_none=True, metadata={"description": "Id of a lift of the garage, when no readings are given."}
        ),
    ),
    LiftSchema(),
    _lift,
)
