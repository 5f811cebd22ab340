"""`calc load-transfer`: load moved in a turn and under power, static stability, weight per power, before and after."""

from marshmallow import fields, validate

from tarebook.api.calc.answer import Answer, Told, Warnings
from tarebook.api.calc.balance_given import OPTIONS, question_of
from tarebook.api.calc.calculation import Calculation
from tarebook.api.calc.garage_schema import StrictSchema, garage_schema, one_of
from tarebook.api.calc.numbers import Asked, Given, Json, Length, Mass, Number
from tarebook.core.balance.balance import State, balance, track_of
from tarebook.core.balance.load_transfer import POWER_UNITS, Transfer, power_of, transfer
from tarebook.core.garage.records import Garage, Warned, warned
from tarebook.core.numbers.uncertain import Uncertain, scale
from tarebook.core.whole_car.weigh_in import length_of

_WITHIN = validate.Range(min=-5, max=5, error="This is an acceleration in g, from {min} to {max}.")


class CalcPowerSchema(StrictSchema):
    value = fields.Float(required=True, validate=validate.Range(min=0, min_inclusive=False, max=10_000))
    unit = fields.String(required=True, validate=one_of(tuple(POWER_UNITS)))


class PerPower(Number):
    """Kilograms for each of a unit of power: the number, and the unit."""

    def write(self, item: tuple[Uncertain, str], asked: Asked) -> Json:
        return Number(unit=f"kg/{item[1]}").write(item[0], asked)


class TransferSchema(Answer):
    """Of one state of the car. `stability`: track over twice the height. `per_power`: in kg per unit of power."""

    mass = Mass("body.mass")
    height = Length("body.z")
    lateral = Mass("moved.lateral")
    longitudinal = Mass("moved.longitudinal")
    stability = Number("moved.stability")
    per_power = PerPower()
    reasons = fields.Dict(fields.String(), Told(optional=False), required=True)
    warnings = Warnings()


class TransfersSchema(Answer):
    """`states`: start, weighed, now, after."""

    lateral_g = fields.Float(required=True)
    longitudinal_g = fields.Float(required=True)
    states = fields.Dict(fields.String(), fields.Nested(TransferSchema), required=True)
    reasons = fields.Dict(fields.String(), Told(optional=False), required=True, attribute="found.reasons")
    warnings = Warnings("found.warnings", of_garage=True)


def _transfers(garage: Garage, given: Given) -> Json:
    found = balance(garage, question_of(given))
    g = {"lateral_g": given.get("lateral_g", 1.0), "longitudinal_g": given.get("longitudinal_g", 0.5)}
    power = _power(garage, given)
    return {
        **g,
        "states": {name: _state(garage, each, g, power) for name, each in found.states.items()},
        "found": found,
    }


def _power(garage: Garage, given: Given) -> tuple[float, str] | None:
    """The power asked about, else the car's own."""
    asked = given.get("power")
    return (asked["value"], asked["unit"]) if asked else power_of(garage.car)


def _state(garage: Garage, state: State, g: dict[str, float], power: tuple[float, str] | None) -> Json:
    watts = power[0] * POWER_UNITS[power[1]] if power else None
    moved = transfer(state.body, track_of(garage.car), length_of(garage.car, "wheelbase"), **g, power=watts)
    return {
        "body": state.body,
        "moved": moved,
        "per_power": (scale(moved.per_power, POWER_UNITS[power[1]]), power[1]) if power and moved.per_power else None,
        "reasons": _reasons(moved),
        "warnings": [warned("wheels_lift", which=which) for which in moved.wheels_lift],
    }


def _reasons(moved: Transfer) -> dict[str, Warned]:
    """Why a figure is missing: the height is known wherever a track is."""
    missing = {
        "lateral": warned("tracks_unknown"),
        "longitudinal": warned("wheelbase_unknown"),
        "stability": warned("tracks_unknown"),
        "per_power": warned("power_unknown"),
    }
    return {name: reason for name, reason in missing.items() if getattr(moved, name) is None}


LOAD_TRANSFER = Calculation(
    "load-transfer",
    "Lateral and longitudinal load transfer, static stability factor, weight per power.",
    garage_schema(
        "CalcLoadTransferGiven",
        **OPTIONS,
        lateral_g=fields.Float(validate=_WITHIN, metadata={"description": "In a turn, in g; 1 by default."}),
        longitudinal_g=fields.Float(validate=_WITHIN, metadata={"description": "Forward, in g; 0.5 by default."}),
        power=fields.Nested(CalcPowerSchema, allow_none=True),
    ),
    TransfersSchema(),
    _transfers,
)
