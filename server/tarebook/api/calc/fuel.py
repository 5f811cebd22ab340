"""`calc fuel`: what the car weighs and how it balances lap by lap, and what to start with.

The trim is the event's unless another is asked for: that is when somebody else weighs the car.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from marshmallow import Schema, fields, validate

from tarebook.api.calc.balance_given import typed
from tarebook.api.calc.condition import ConditionSchema, write_condition
from tarebook.api.calc.garage_schema import StrictSchema, Typed, garage_schema, one_of
from tarebook.api.calc.numbers import Json, Numbers, ToldSchema, all_told, numeric, told, warned_of
from tarebook.api.calc.said import SaidSchema, write_said
from tarebook.core.fuel_run.fuel_given import MOST_LAPS, RunQuestion
from tarebook.core.fuel_run.fuel_run import FuelRun, Least, Moment, fuel_run
from tarebook.core.fuel_run.fuel_words import lightest_sentence, start_sentence
from tarebook.core.garage.garage import read_garage
from tarebook.core.numbers.uncertain import Uncertain

ABOUT = "Fuel over a run: weight and balance lap by lap, the worst lap, the least start."
VOLUME_UNITS = ("L", "gal_us", "gal_imp")


class CalcRunSchema(StrictSchema):
    """`start`: by default a full tank; `per_lap`: by default the car's own; each may be off by its `…_within`."""

    start = Typed()
    start_within = Typed()
    per_lap = Typed()
    per_lap_within = Typed()
    laps = fields.Integer(strict=True, allow_none=True, validate=validate.Range(min=0, max=MOST_LAPS))


Given = garage_schema(
    "CalcFuelGiven",
    run=fields.Nested(CalcRunSchema, allow_none=True),
    class_sheet=fields.String(allow_none=True),
    volume_unit=fields.String(validate=one_of(VOLUME_UNITS)),
)


class FuelMomentSchema(Schema):
    """After `lap` laps, null for a tank just full or empty. `weight`: with the driver as the class weighs.

    `burnt`: since the start. `margin`, `chance_under`, `in_hand`: against the minimum, null where the class does not
    count this fuel. `x`, `y`, `z`: the centre of gravity; `front`, `left`: shares.
    """

    lap = fields.Integer(required=True, allow_none=True)
    fuel = numeric()
    fuel_mass = numeric()
    burnt = numeric()
    weight = numeric()
    margin = numeric()
    chance_under = numeric()
    in_hand = numeric()
    x = numeric()
    y = numeric()
    z = numeric()
    front = numeric()
    left = numeric()


class LeastFuelSchema(Schema):
    """The least `fuel` to start with, as the "minimum" or the "distance" asks.

    `lacking`: what even a full tank leaves too little in hand at the flag, null when it is enough.
    """

    fuel = numeric()
    decided_by = fields.String(required=True)
    lacking = numeric()


class FuelRunSchema(Schema):
    """`laps`: from the start to the flag, or to the lap in which the tank `runs_dry`. `worst`: the lap, of the minimum.

    `reasons`: why something is missing, by name: start, per_lap, weight, margin, least, full, x, y, z, front, left.
    """

    car = fields.String(required=True, allow_none=True)
    trim = fields.String(required=True)
    condition = fields.Nested(ConditionSchema, required=True)
    lightest = fields.Nested(SaidSchema, required=True)
    start = fields.Nested(SaidSchema, required=True)
    minimum = numeric()
    risk = numeric()
    per_lap = numeric()
    laps = fields.List(fields.Nested(FuelMomentSchema), required=True)
    full = fields.Nested(FuelMomentSchema, required=True, allow_none=True)
    empty = fields.Nested(FuelMomentSchema, required=True)
    worst = fields.Integer(required=True, allow_none=True)
    runs_dry = fields.Integer(required=True, allow_none=True)
    least = fields.Nested(LeastFuelSchema, required=True, allow_none=True)
    reasons = fields.Dict(fields.String(), fields.Nested(ToldSchema), required=True)
    warnings = warned_of()


Answer = FuelRunSchema


def compute(given: Mapping[str, Any]) -> Json:
    garage, write = read_garage({**given, "trim": given.get("trim") or "event"}), Numbers(given)
    found = fuel_run(garage, _question(given))
    return {
        "car": found.car,
        "trim": found.trim,
        "condition": write_condition(found.condition, write),
        "lightest": write_said(lightest_sentence(found, write.mass_unit)),
        "start": write_said(start_sentence(found, write.mass_unit, write.volume_unit)),
        "minimum": write.mass(found.minimum),
        "risk": write.share(found.risk),
        "per_lap": write.volume(found.per_lap),
        **_moments(found, write),
        "worst": found.worst,
        "runs_dry": found.runs_dry,
        "least": _least(found.least, write) if found.least else None,
        "reasons": {name: told(reason) for name, reason in found.reasons.items()},
        "warnings": all_told([*garage.warnings, *found.warnings]),
    }


def _question(given: Mapping[str, Any]) -> RunQuestion:
    """The question asked. Raises QuantityError."""
    run = given.get("run") or {}
    return RunQuestion(
        start=typed(run, "start", "volume"),
        start_within=typed(run, "start_within", "volume"),
        per_lap=typed(run, "per_lap", "volume"),
        per_lap_within=typed(run, "per_lap_within", "volume"),
        laps=run.get("laps") or 0,
        class_sheet=given.get("class_sheet"),
    )


def _moments(found: FuelRun, write: Numbers) -> Json:
    return {
        "laps": [_moment(moment, write) for moment in found.laps],
        "full": _moment(found.full, write) if found.full else None,
        "empty": _moment(found.empty, write),
    }


def _moment(moment: Moment, write: Numbers) -> Json:
    judged, balance = moment.judged, moment.balance
    return {
        "lap": moment.lap,
        "fuel": write.volume(moment.fuel),
        "fuel_mass": write.mass(moment.fuel_mass),
        "burnt": write.mass(moment.burnt),
        "weight": write.mass(moment.weight),
        "margin": write.mass(judged.margin) if judged else None,
        "chance_under": write.chance(judged.chance_under) if judged else None,
        "in_hand": write.guard(judged.in_hand) if judged else None,
        **{axis: write.length(getattr(balance, axis)) for axis in ("x", "y", "z")},
        **{side: write.share(getattr(balance, side)) for side in ("front", "left")},
    }


def _least(least: Least, write: Numbers) -> Json:
    return {
        "fuel": write.volume(Uncertain(least.fuel)),
        "decided_by": least.decided_by,
        "lacking": write.mass(least.lacking),
    }
