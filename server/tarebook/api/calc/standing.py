"""`calc standing`: what the car weighs now, how sure that is, and how far it is from the minimum.

The trim is the event's unless another is asked for: that is when somebody else weighs the car.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from marshmallow import Schema, fields

from tarebook.api.calc.condition import ConditionSchema, write_condition
from tarebook.api.calc.garage_schema import garage_schema
from tarebook.api.calc.numbers import Json, Numbers, NumberSchema, ToldSchema, all_told, numeric, told, warned_of
from tarebook.api.calc.said import SaidSchema, write_said
from tarebook.api.calc.standing_fused import FusedSchema, write_fused
from tarebook.core.garage.garage import read_garage
from tarebook.core.standing.gap import Gap
from tarebook.core.standing.history import Past, Start
from tarebook.core.standing.official import OfficialReading
from tarebook.core.standing.sentences import gap_line, in_hand_sentence, margin_sentence
from tarebook.core.standing.since import Since
from tarebook.core.standing.standing import standing

ABOUT = "Weight now, margin to the class minimum, and what to keep in hand."
Given = garage_schema(
    "CalcStandingGiven",
    class_sheet=fields.String(allow_none=True),
    weigh_in=fields.String(allow_none=True, metadata={"description": "To rest on alone; by default all count."}),
)


class OfficialSchema(Schema):
    """What the official scale should show. `scale`: null when it is assumed. `in_hand`: to keep for the risk."""

    scale = fields.String(required=True, allow_none=True)
    division = numeric()
    rounding = fields.String(required=True)
    expected = numeric()
    chance_under = numeric()
    in_hand = numeric()
    sentence = fields.Nested(SaidSchema, required=True)


class SinceSchema(Schema):
    """The weigh-in the weight rests on, and what was done since: job → what it changed.

    `unweighed_out`, `unweighed_in`: parts without a weight of which the car has fewer, or more, than at the weigh-in.
    """

    weigh_in = fields.String(required=True)
    put_in = fields.List(fields.String(), required=True)
    taken_out = fields.List(fields.String(), required=True)
    changes = fields.Dict(fields.String(), fields.Nested(NumberSchema), required=True)
    net = numeric()
    unweighed = fields.List(fields.String(), required=True)
    unweighed_out = fields.List(fields.String(), required=True)
    unweighed_in = fields.List(fields.String(), required=True)


class PastSchema(Schema):
    """A weigh-in: `total` as weighed, `weight` as the class weighs, or the `reason` there is none."""

    weigh_in = fields.String(required=True)
    at = fields.String(required=True, allow_none=True)
    trim = fields.String(required=True)
    official = fields.Boolean(required=True)
    total = numeric()
    weight = numeric()
    reason = fields.Nested(ToldSchema, required=True, allow_none=True)


class StartSchema(Schema):
    """The car before any job: from its first weigh-in ("weighed"), else by the book ("quoted")."""

    weight = numeric()
    basis = fields.String(required=True)
    weigh_in = fields.String(required=True, allow_none=True)


class GapSchema(Schema):
    """What two weigh-ins found beside the jobs written down; more in the car is positive.

    `unweighed`: parts without a mass that moved between the two; they count zero.
    """

    first = fields.String(required=True)
    second = fields.String(required=True)
    difference = numeric()
    significant = fields.Boolean(required=True)
    unweighed = fields.List(fields.String(), required=True)
    sentence = fields.Nested(SaidSchema, required=True)


class StandingSchema(Schema):
    """`fused`: what the weight is made of. `gaps`: between every two weigh-ins in order, `gap` between the last two.

    `reasons`: why weight, margin, start or gap is null.
    """

    car = fields.String(required=True, allow_none=True)
    trim = fields.String(required=True)
    condition = fields.Nested(ConditionSchema, required=True)
    sentence = fields.Nested(SaidSchema, required=True)
    verdict = fields.String(required=True, allow_none=True)
    weight = numeric()
    minimum = numeric()
    margin = numeric()
    risk = numeric()
    official = fields.Nested(OfficialSchema, required=True, allow_none=True)
    fused = fields.Nested(FusedSchema, required=True, allow_none=True)
    since = fields.Nested(SinceSchema, required=True, allow_none=True)
    ballast = numeric()
    removed = numeric()
    history = fields.List(fields.Nested(PastSchema), required=True)
    start = fields.Nested(StartSchema, required=True, allow_none=True)
    gap = fields.Nested(GapSchema, required=True, allow_none=True)
    gaps = fields.List(fields.Nested(GapSchema), required=True)
    reasons = fields.Dict(fields.String(), fields.Nested(ToldSchema), required=True)
    warnings = warned_of()


Answer = StandingSchema


def compute(given: Mapping[str, Any]) -> Json:
    garage = read_garage({**given, "trim": given.get("trim") or "event"})
    write = Numbers(given)
    found = standing(garage, class_sheet=given.get("class_sheet"), weigh_in=given.get("weigh_in"))
    return {
        "car": found.car,
        "trim": found.trim,
        "condition": write_condition(found.condition, write),
        "sentence": write_said(margin_sentence(found, write.mass_unit)),
        "verdict": found.verdict,
        "weight": write.mass(found.weight),
        "minimum": write.mass(found.minimum),
        "margin": write.mass(found.margin),
        "risk": write.share(found.risk),
        "official": _official(found.official, write) if found.official else None,
        "fused": write_fused(found.fused, garage, write) if found.fused else None,
        "since": _since(found.since, write) if found.since else None,
        "ballast": write.mass(found.ballast),
        "removed": write.mass(found.removed),
        "history": [_past(past, write) for past in found.history],
        "start": _start(found.start, write) if found.start else None,
        "gap": _gap(found.gap, write) if found.gap else None,
        "gaps": [_gap(gap, write) for gap in found.gaps],
        "reasons": {name: told(reason) for name, reason in found.reasons.items()},
        "warnings": all_told([*garage.warnings, *found.warnings]),
    }


def _official(reading: OfficialReading, write: Numbers) -> Json:
    return {
        "scale": reading.scale.scale,
        "division": write.mass(reading.scale.division),
        "rounding": reading.scale.rounding,
        "expected": write.mass(reading.expected),
        "chance_under": write.chance(reading.chance_under),
        "in_hand": write.guard(reading.in_hand),
        "sentence": write_said(in_hand_sentence(reading, write.mass_unit)),
    }


def _since(since: Since, write: Numbers) -> Json:
    return {
        "weigh_in": since.weigh_in,
        "put_in": list(since.put_in),
        "taken_out": list(since.taken_out),
        "changes": write.masses(since.changes),
        "net": write.mass(since.net),
        "unweighed": list(since.unweighed),
        "unweighed_out": list(since.unweighed_out),
        "unweighed_in": list(since.unweighed_in),
    }


def _past(past: Past, write: Numbers) -> Json:
    return {
        "weigh_in": past.weigh_in,
        "at": past.at,
        "trim": past.trim,
        "official": past.official,
        "total": write.mass(past.total),
        "weight": write.mass(past.weight),
        "reason": told(past.reason),
    }


def _start(start: Start, write: Numbers) -> Json:
    return {"weight": write.mass(start.weight), "basis": start.basis, "weigh_in": start.weigh_in}


def _gap(gap: Gap, write: Numbers) -> Json:
    return {
        "first": gap.first,
        "second": gap.second,
        "difference": write.mass(gap.difference),
        "significant": gap.significant,
        "unweighed": list(gap.unweighed),
        "sentence": write_said(gap_line(gap, write.mass_unit)),
    }
