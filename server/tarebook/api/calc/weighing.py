"""`calc weighing`: what every weighing tells, and what every part, driver and scale comes to.

A part with `instead_of` is also compared with the part it would replace.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from marshmallow import Schema, fields

from tarebook.api.calc.garage_schema import garage_schema
from tarebook.api.calc.numbers import Json, Numbers, ToldSchema, all_told, numeric, told, warned_of
from tarebook.core.garage.garage import read_garage
from tarebook.core.garage.records import Garage, Warned, Weighing, warned
from tarebook.core.ledger.compare import Comparison, compare
from tarebook.core.weighing.scale import UNNAMED, ScaleModel
from tarebook.core.weighing.weighing import Mass, Masses, Reading, masses, read_weighing

_READINGS = ("method", "shown", "shown_empty", "shown_far", "pieces")
ABOUT = "Masses from weighings and claims, with their uncertainty."
Given = garage_schema("CalcWeighingGiven")


class WeighingAnswerSchema(Schema):
    """`mass`: of one piece; when null, `reason` says why. `division_assumed`: taken from the last digit typed."""

    id = fields.String(required=True)
    of = fields.String(required=True, allow_none=True)
    mass = numeric()
    division_assumed = fields.Boolean(required=True, allow_none=True)
    reason = fields.Nested(ToldSchema, required=True, allow_none=True)


class MassAnswerSchema(Schema):
    """One part or driver. `mass`: of one piece; when null, `reason` says why. `spread`: of its weighings."""

    of = fields.String(required=True)
    mass = numeric()
    basis = fields.String(required=True, allow_none=True)
    weighings = fields.List(fields.String(), required=True)
    spread = numeric()
    reason = fields.Nested(ToldSchema, required=True, allow_none=True)
    widened = fields.Float(required=True, metadata={"description": "Birge ratio; 1 when the weighings agree."})


class ScaleAnswerSchema(Schema):
    """`gain`: how much too high the scale shows, as a fraction. Scale "" is that of weighings that name none."""

    id = fields.String(required=True)
    gain = numeric()
    assumed = fields.Boolean(required=True)
    checks = fields.List(fields.String(), required=True)


class ComparisonAnswerSchema(Schema):
    """`difference`: this one less that one, of one piece; `whole`: times `count`. Negative saves weight."""

    part = fields.String(required=True)
    instead_of = fields.String(required=True, allow_none=True)
    count = fields.Integer(required=True)
    difference = numeric()
    whole = numeric()


class WeighingsSchema(Schema):
    weighings = fields.List(fields.Nested(WeighingAnswerSchema), required=True)
    masses = fields.List(fields.Nested(MassAnswerSchema), required=True)
    scales = fields.List(fields.Nested(ScaleAnswerSchema), required=True)
    comparisons = fields.List(fields.Nested(ComparisonAnswerSchema), required=True)
    warnings = warned_of()


Answer = WeighingsSchema


def compute(given: Mapping[str, Any]) -> Json:
    garage = read_garage(given)
    known, write = masses(garage), Numbers(given)
    compared = [compare(garage, part.id, known=known) for part in garage.parts.values() if part.instead_of]
    warnings = [warning for mass in known.of.values() for warning in mass.warnings]
    used = _scales_used(garage, known)
    return {
        "weighings": [_weighing(each, known, write) for each in garage.weighings.values()],
        "masses": [_mass(mass, _unread_of(garage, given, mass.of), write) for mass in known.of.values()],
        "scales": [_scale(model, write) for model in used],
        "comparisons": [_comparison(each, write) for each in compared],
        "warnings": all_told(
            [
                *garage.warnings,
                *warnings,
                *(warning for model in used for warning in (*model.warnings, *_assumed(model))),
                *(warning for each in compared for warning in each.warnings),
            ]
        ),
    }


def _assumed(model: ScaleModel) -> list[Warned]:
    return [warned("gain_assumed", scale=model.id)] if model.assumed else []


def _scales_used(garage: Garage, known: Masses) -> list[ScaleModel]:
    """Every scale with a name, and the nameless one when a weighing stands on it."""
    nameless = any(weighing.scale is None for weighing in garage.weighings.values())
    return [model for id_, model in known.scales.items() if id_ != UNNAMED or nameless]


def _weighing(weighing: Weighing, known: Masses, write: Numbers) -> Json:
    read = read_weighing(weighing, known.scales[weighing.scale or UNNAMED])
    is_read = isinstance(read, Reading)
    return {
        "id": weighing.id,
        "of": weighing.of,
        "mass": write.mass(read.mass) if isinstance(read, Reading) else None,
        "division_assumed": read.division_assumed if isinstance(read, Reading) else None,
        "reason": None if is_read else told(read),  # type: ignore[arg-type]
    }


def _unread_of(garage: Garage, given: Mapping[str, Any], of: str) -> list[Warned]:
    """What could not be read of the claim of a part or driver, and of its weighings."""
    weighings = {each.get("id") for each in given.get("weighings") or [] if each.get("of") == of}
    places = {(of, "claim"), *((weighing, field) for weighing in weighings for field in _READINGS)}
    return [each for each in garage.warnings if (each["data"].get("id"), each["data"].get("field")) in places]


def _mass(mass: Mass, unread: list[Warned], write: Numbers) -> Json:
    """With the reason there is none: what could not be read, else that nobody has weighed or claimed it."""
    reasons = [*mass.warnings, *unread, warned("no_mass", of=mass.of)]
    return {
        "of": mass.of,
        "mass": write.mass(mass.mass),
        "basis": mass.basis,
        "weighings": list(mass.weighings),
        "reason": told(reasons[0]) if mass.mass is None else None,
        "spread": write.mass(mass.spread) if mass.weighings else None,
        "widened": mass.ratio,
    }


def _scale(model: ScaleModel, write: Numbers) -> Json:
    gain = write.share(model.gain)
    return {"id": model.id, "gain": gain, "assumed": model.assumed, "checks": list(model.checks)}


def _comparison(each: Comparison, write: Numbers) -> Json:
    return {
        "part": each.part,
        "instead_of": each.instead_of,
        "count": each.count,
        "difference": write.mass(each.difference),
        "whole": write.mass(each.whole),
    }
