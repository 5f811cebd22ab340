"""`calc load-transfer`: load moved in a turn and under power, static stability, weight per power, before and after."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from marshmallow import Schema, fields, validate

from tarebook.api.calc.balance_given import OPTIONS, question_of
from tarebook.api.calc.garage_schema import StrictSchema, garage_schema, one_of
from tarebook.api.calc.numbers import Json, Numbers, ToldSchema, all_told, numeric, told, warned_of
from tarebook.core.balance.balance import State, balance, track_of, wheelbase_of
from tarebook.core.balance.load_transfer import POWER_UNITS, Transfer, power_of, transfer
from tarebook.core.garage.garage import read_garage
from tarebook.core.garage.records import Garage, Warned, warned
from tarebook.core.numbers.uncertain import scale

ABOUT = "Lateral and longitudinal load transfer, static stability factor, weight per power."
LATERAL, LONGITUDINAL = 1.0, 0.5  # g, when none is asked for
_WITHIN = validate.Range(min=-5, max=5, error="This is an acceleration in g, from {min} to {max}.")


class CalcPowerSchema(StrictSchema):
    value = fields.Float(required=True, validate=validate.Range(min=0, min_inclusive=False, max=10_000))
    unit = fields.String(required=True, validate=one_of(tuple(POWER_UNITS)))


Given = garage_schema(
    "CalcLoadTransferGiven",
    **OPTIONS,
    lateral_g=fields.Float(validate=_WITHIN, metadata={"description": "In a turn, in g; 1 by default."}),
    longitudinal_g=fields.Float(validate=_WITHIN, metadata={"description": "Forward, in g; 0.5 by default."}),
    power=fields.Nested(CalcPowerSchema, allow_none=True),
)


class TransferSchema(Schema):
    """Of one state of the car. `stability`: track over twice the height. `per_power`: in kg per unit of power."""

    mass = numeric()
    height = numeric()
    lateral = numeric()
    longitudinal = numeric()
    stability = numeric()
    per_power = numeric()
    reasons = fields.Dict(fields.String(), fields.Nested(ToldSchema), required=True)
    warnings = warned_of()


class TransfersSchema(Schema):
    """`states`: start, weighed, now, after."""

    lateral_g = fields.Float(required=True)
    longitudinal_g = fields.Float(required=True)
    states = fields.Dict(fields.String(), fields.Nested(TransferSchema), required=True)
    reasons = fields.Dict(fields.String(), fields.Nested(ToldSchema), required=True)
    warnings = warned_of()


Answer = TransfersSchema


def compute(given: Mapping[str, Any]) -> Json:
    garage = read_garage(given)
    found = balance(garage, question_of(given))
    power = _power(garage, given)
    return {
        "lateral_g": given.get("lateral_g", LATERAL),
        "longitudinal_g": given.get("longitudinal_g", LONGITUDINAL),
        "states": {name: _state(garage, state, given, power) for name, state in found.states.items()},
        "reasons": {name: told(reason) for name, reason in found.reasons.items()},
        "warnings": all_told([*garage.warnings, *found.warnings]),
    }


def _power(garage: Garage, given: Mapping[str, Any]) -> tuple[float, str] | None:
    """The power asked about, else the car's own."""
    asked = given.get("power")
    return (asked["value"], asked["unit"]) if asked else power_of(garage.car)


def _state(garage: Garage, state: State, given: Mapping[str, Any], power: tuple[float, str] | None) -> Json:
    write, watts = Numbers(given), power[0] * POWER_UNITS[power[1]] if power else None
    g = given.get("lateral_g", LATERAL), given.get("longitudinal_g", LONGITUDINAL)
    moved = transfer(state.body, track_of(garage.car), wheelbase_of(garage.car), *g, watts)
    per_power = scale(moved.per_power, POWER_UNITS[power[1]]) if power and moved.per_power else None
    return {
        "mass": write.mass(state.body.mass),
        "height": write.length(state.body.z),
        "lateral": write.mass(moved.lateral),
        "longitudinal": write.mass(moved.longitudinal),
        "stability": write.plain(moved.stability, ""),
        "per_power": write.plain(per_power, f"kg/{power[1]}") if power else None,
        "reasons": {name: told(reason) for name, reason in _reasons(moved).items()},
        "warnings": all_told(warned("wheels_lift", which=which) for which in moved.wheels_lift),
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
