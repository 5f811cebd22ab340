"""What the weight of `calc standing` is made of: the weigh-ins, what does not fit, and what to weigh next."""

from __future__ import annotations

from marshmallow import Schema, fields

from tarebook.api.calc.numbers import Json, Numbers, ToldSchema, numeric, told
from tarebook.api.calc.said import SaidSchema, write_said
from tarebook.core.fusion.causes import Change
from tarebook.core.fusion.fusion_words import cause_sentence, change_sentence, next_sentence
from tarebook.core.fusion.weigh_next import Next
from tarebook.core.garage.records import Garage
from tarebook.core.numbers.uncertain import Uncertain
from tarebook.core.standing.estimate import Counted, Fused


class CountedSchema(Schema):
    """`alone`: the weight now by this weigh-in and the jobs since; `share` of it in the weight, below zero at times.

    `residual`: it less what the others say; null when they say nothing of it.
    """

    weigh_in = fields.String(required=True)
    alone = numeric()
    share = numeric()
    residual = numeric()


class ChangeSchema(Schema):
    """Something that does not fit: `size` kg more in the car than written down, between `first` and `second`.

    `kind`: "step", "outlier" (that one weigh-in is off), or "either" where the weights cannot tell. It lies at least
    between `earliest` and `latest` (95 %). `causes`: the likeliest first.
    """

    kind = fields.String(required=True)
    first = fields.String(required=True)
    second = fields.String(required=True)
    earliest = fields.String(required=True)
    latest = fields.String(required=True)
    size = numeric()
    sentence = fields.Nested(SaidSchema, required=True)
    causes = fields.List(fields.Nested(SaidSchema), required=True)


class NextSchema(Schema):
    """One more weigh-in on this scale (null: a platform nobody knows): what the weight's doubt (95 %) would be."""

    scale = fields.String(required=True, allow_none=True)
    within = numeric()
    sentence = fields.Nested(SaidSchema, required=True)


class FusedSchema(Schema):
    """`counted` in order of time. `left_out`: weigh-ins that cannot count, and why.

    `lower`: the last weigh-in differs, and whether it is off or the car changed cannot be told: the lower weight
    counts. `unweighed`: parts without a mass that moved between weigh-ins. `weigh_next`: the best first.
    """

    counted = fields.List(fields.Nested(CountedSchema), required=True)
    left_out = fields.Dict(fields.String(), fields.Nested(ToldSchema), required=True)
    changes = fields.List(fields.Nested(ChangeSchema), required=True)
    lower = fields.Boolean(required=True)
    unweighed = fields.List(fields.String(), required=True)
    weigh_next = fields.List(fields.Nested(NextSchema), required=True)


def write_fused(fused: Fused, garage: Garage, write: Numbers) -> Json:
    return {
        "counted": [_counted(each, write) for each in fused.counted],
        "left_out": {name: told(reason) for name, reason in fused.left_out.items()},
        "changes": [_change(each, write) for each in fused.changes],
        "lower": fused.lower,
        "unweighed": list(fused.unweighed),
        "weigh_next": [_next(each, garage, write) for each in fused.weigh_next],
    }


def _counted(counted: Counted, write: Numbers) -> Json:
    return {
        "weigh_in": counted.weigh_in,
        "alone": write.mass(counted.alone),
        "share": write.share(counted.share),
        "residual": write.mass(counted.residual),
    }


def _change(change: Change, write: Numbers) -> Json:
    return {
        "kind": change.kind,
        "first": change.first,
        "second": change.second,
        "earliest": change.earliest,
        "latest": change.latest,
        "size": write.mass(change.size),
        "sentence": write_said(change_sentence(change, write.mass_unit)),
        "causes": [write_said(cause_sentence(cause)) for cause in change.causes],
    }


def _next(following: Next, garage: Garage, write: Numbers) -> Json:
    scale = garage.scales.get(following.scale) if following.scale else None
    name = (scale.name or scale.id) if scale else None
    return {
        "scale": following.scale,
        "within": write.mass(Uncertain(2.0 * following.u_then)),
        "sentence": write_said(next_sentence(following, name, write.mass_unit)),
    }
