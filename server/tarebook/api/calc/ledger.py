"""`calc ledger`: what every job comes to, and the sums of them cut every way."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from marshmallow import Schema, fields

from tarebook.api.calc.garage_schema import garage_schema
from tarebook.api.calc.numbers import Json, Numbers, NumberSchema, all_told, numeric, warned_of
from tarebook.core.garage.garage import read_garage
from tarebook.core.ledger.ledger import Ledger, ledger
from tarebook.core.ledger.net import Effort, JobNet, Line, MassTotal, Total
from tarebook.core.numbers.uncertain import Uncertain

ABOUT = "The net of every job, and totals by stage, zone, state and trim."
Given = garage_schema("CalcLedgerGiven")


class MassTotalSchema(Schema):
    """`net` = on − off; `off` and `on` both counted positive. `lines`: ids of the job_parts they are made of."""

    net = numeric()
    off = numeric()
    on = numeric()
    lines = fields.List(fields.String(), required=True)


class EffortSchema(Schema):
    hours = numeric()
    money = numeric()
    jobs = fields.List(fields.String(), required=True)


class TotalSchema(Schema):
    mass = fields.Nested(MassTotalSchema, required=True)
    effort = fields.Nested(EffortSchema, required=True)


class LineSchema(Schema):
    """One part going on or off. `mass`: signed, of all its pieces; null when the part has none, and counts zero."""

    id = fields.String(required=True)
    part = fields.String(required=True)
    way = fields.String(required=True)
    count = fields.Integer(required=True)
    mass = numeric()
    basis = fields.String(required=True, allow_none=True)
    weighings = fields.List(fields.String(), required=True)


class JobAnswerSchema(Schema):
    job = fields.String(required=True)
    state = fields.String(required=True)
    trim = fields.String(required=True)
    stage = fields.String(required=True, allow_none=True)
    in_car = fields.Boolean(required=True)
    total = fields.Nested(TotalSchema, required=True)
    lines = fields.List(fields.Nested(LineSchema), required=True)
    unweighed = fields.List(fields.String(), required=True)


class StageAnswerSchema(Schema):
    stage = fields.String(required=True, allow_none=True)
    states = fields.Dict(fields.String(), fields.Nested(TotalSchema), required=True)


class ZoneAnswerSchema(Schema):
    zone = fields.String(required=True, allow_none=True)
    mass = fields.Nested(MassTotalSchema, required=True)


class StepSchema(Schema):
    """The net of the car after this job was fitted."""

    job = fields.String(required=True)
    fitted_on = fields.String(required=True, allow_none=True)
    net = numeric()


class BroughtSchema(Schema):
    money = numeric()
    parts = fields.List(fields.String(), required=True)


class LedgerSchema(Schema):
    """`now`: the jobs in the car, in this trim. `shares`: by basis, of the kilograms they moved."""

    trim = fields.String(required=True)
    now = fields.Nested(TotalSchema, required=True)
    jobs = fields.List(fields.Nested(JobAnswerSchema), required=True)
    in_car = fields.List(fields.String(), required=True)
    by_stage = fields.List(fields.Nested(StageAnswerSchema), required=True)
    by_state = fields.Dict(fields.String(), fields.Nested(TotalSchema), required=True)
    by_trim = fields.Dict(fields.String(), fields.Nested(TotalSchema), required=True)
    by_zone = fields.List(fields.Nested(ZoneAnswerSchema), required=True)
    unsprung = fields.Nested(MassTotalSchema, required=True)
    rotating = fields.Nested(MassTotalSchema, required=True)
    cumulative = fields.List(fields.Nested(StepSchema), required=True)
    shares = fields.Dict(fields.String(), fields.Nested(NumberSchema), required=True)
    unweighed = fields.List(fields.String(), required=True)
    spent = fields.Nested(EffortSchema, required=True)
    brought = fields.Nested(BroughtSchema, required=True)
    warnings = warned_of()


Answer = LedgerSchema


def compute(given: Mapping[str, Any]) -> Json:
    found = ledger(read_garage(given))
    write = Numbers(given)
    return {
        "trim": found.trim,
        "now": _total(found.now, write),
        "jobs": [_job(net, write) for net in found.jobs.values()],
        "in_car": list(found.in_car),
        **_cuts(found, write),
        "shares": {basis: write.share(share) for basis, share in found.shares.items()},
        "unweighed": list(found.unweighed),
        "spent": _effort(found.spent, write),
        "brought": {"money": write.money(found.brought.money), "parts": list(found.brought.parts)},
        "warnings": all_told(found.warnings),
    }


def _cuts(found: Ledger, write: Numbers) -> Json:
    steps = [(step, Uncertain(step.value, {"net": step.u})) for step in found.cumulative]
    return {
        "by_stage": [{"stage": each.stage, "states": _totals(each.states, write)} for each in found.by_stage],
        "by_state": _totals(found.by_state, write),
        "by_trim": _totals(found.by_trim, write),
        "by_zone": [{"zone": each.zone, "mass": _mass(each.mass, write)} for each in found.by_zone],
        "unsprung": _mass(found.unsprung, write),
        "rotating": _mass(found.rotating, write),
        "cumulative": [{"job": step.job, "fitted_on": step.fitted_on, "net": write.mass(net)} for step, net in steps],
    }


def _totals(totals: Mapping[str, Total], write: Numbers) -> Json:
    return {name: _total(total, write) for name, total in totals.items()}


def _total(total: Total, write: Numbers) -> Json:
    return {"mass": _mass(total.mass, write), "effort": _effort(total.effort, write)}


def _mass(mass: MassTotal, write: Numbers) -> Json:
    ways = {"net": mass.net, "off": mass.off, "on": mass.on}
    return {**write.masses(ways), "lines": list(mass.lines)}


def _effort(effort: Effort, write: Numbers) -> Json:
    return {"hours": write.hours(effort.hours), "money": write.money(effort.money), "jobs": list(effort.jobs)}


def _job(net: JobNet, write: Numbers) -> Json:
    return {
        "job": net.job,
        "state": net.state,
        "trim": net.trim,
        "stage": net.stage,
        "in_car": net.in_car,
        "total": _total(net.total, write),
        "lines": [_line(line, write) for line in net.lines],
        "unweighed": list(net.unweighed),
    }


def _line(line: Line, write: Numbers) -> Json:
    return {
        "id": line.id,
        "part": line.part,
        "way": line.way,
        "count": line.count,
        "mass": write.mass(line.mass),
        "basis": line.basis,
        "weighings": list(line.weighings),
    }
