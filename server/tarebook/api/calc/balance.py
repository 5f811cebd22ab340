"""`calc balance`: centre of gravity, axle and side shares and yaw inertia, before and after any set of jobs."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from marshmallow import Schema, fields

from tarebook.api.calc.balance_given import OPTIONS, question_of
from tarebook.api.calc.garage_schema import garage_schema
from tarebook.api.calc.numbers import Json, Numbers, NumberSchema, ToldSchema, all_told, numeric, told, warned_of
from tarebook.core.balance.balance import State, balance
from tarebook.core.balance.moved import Change
from tarebook.core.balance.place import Place
from tarebook.core.garage.garage import read_garage

ABOUT = "Where the weight is: centre of gravity, shares, yaw inertia before and after jobs."
Given = garage_schema("CalcBalanceGiven", **OPTIONS)


class CarStateSchema(Schema):
    """`x`, `y`, `z`: the centre of gravity, rearward of the front axle, right of the middle, above the ground.

    `loads` and `shares` by name as far as they can be known; `reasons`: why x, y, z or the corners are not.
    """

    mass = numeric()
    x = numeric()
    y = numeric()
    z = numeric()
    # Named otherwise here because every schema has a method `loads`.
    by_name = fields.Dict(
        fields.String(), fields.Nested(NumberSchema), required=True, attribute="loads", data_key="loads"
    )
    shares = fields.Dict(fields.String(), fields.Nested(NumberSchema), required=True)
    reasons = fields.Dict(fields.String(), fields.Nested(ToldSchema), required=True)


class BalanceChangeSchema(Schema):
    """`net`, and of it what is above and below the beltline, unsprung, rotating; `yaw`: inertia, in kg m²."""

    net = numeric()
    above = numeric()
    below = numeric()
    unsprung = numeric()
    rotating = numeric()
    yaw = numeric()
    reasons = fields.Dict(fields.String(), fields.Nested(ToldSchema), required=True)


class PlaceSchema(Schema):
    """`by`: for each axis known, "measured", "zone" or "anywhere"."""

    part = fields.String(required=True)
    x = numeric()
    y = numeric()
    z = numeric()
    by = fields.Dict(fields.String(), fields.String(), required=True)
    outside = fields.List(fields.String(), required=True)


class BalanceSchema(Schema):
    """`states`: start, weighed, now, after. `changes`: done (start to now), planned (now to after)."""

    car = fields.String(required=True, allow_none=True)
    trim = fields.String(required=True)
    weigh_in = fields.String(required=True, allow_none=True)
    jobs = fields.List(fields.String(), required=True)
    states = fields.Dict(fields.String(), fields.Nested(CarStateSchema), required=True)
    changes = fields.Dict(fields.String(), fields.Nested(BalanceChangeSchema), required=True)
    places = fields.List(fields.Nested(PlaceSchema), required=True)
    reasons = fields.Dict(fields.String(), fields.Nested(ToldSchema), required=True)
    warnings = warned_of()


Answer = BalanceSchema


def compute(given: Mapping[str, Any]) -> Json:
    garage, write = read_garage(given), Numbers(given)
    found = balance(garage, question_of(given))
    return {
        "car": found.car,
        "trim": found.trim,
        "weigh_in": found.weigh_in,
        "jobs": list(found.jobs),
        "states": {name: _state(state, write) for name, state in found.states.items()},
        "changes": {name: _change(change, write) for name, change in found.changes.items()},
        "places": [_place(place, write) for place in found.places],
        "reasons": {name: told(reason) for name, reason in found.reasons.items()},
        "warnings": all_told([*garage.warnings, *found.warnings]),
    }


def _state(state: State, write: Numbers) -> Json:
    body = state.body
    return {
        "mass": write.mass(body.mass),
        "x": write.length(body.x),
        "y": write.length(body.y),
        "z": write.length(body.z),
        "loads": write.masses(state.loads),
        "shares": {name: write.share(share) for name, share in state.shares.items()},
        "reasons": {name: told(reason) for name, reason in state.reasons.items()},
    }


def _change(change: Change, write: Numbers) -> Json:
    return {
        "net": write.mass(change.net),
        "above": write.mass(change.above),
        "below": write.mass(change.below),
        "unsprung": write.mass(change.unsprung),
        "rotating": write.mass(change.rotating),
        "yaw": write.plain(change.yaw, "kg m²"),
        "reasons": {name: told(reason) for name, reason in change.reasons.items()},
    }


def _place(place: Place, write: Numbers) -> Json:
    return {
        "part": place.part,
        "x": write.length(place.x),
        "y": write.length(place.y),
        "z": write.length(place.z),
        "by": place.by,
        "outside": list(place.outside),
    }
