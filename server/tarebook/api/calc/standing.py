"""`calc standing`: what the car weighs now, how sure that is, and how far it is from the minimum.

The trim is the event's unless another is asked for: that is when somebody else weighs the car.
"""

from marshmallow import fields

from tarebook.api.calc.answer import Answer, Said, Warnings, writes, written
from tarebook.api.calc.calculation import Calculation
from tarebook.api.calc.garage_schema import garage_schema
from tarebook.api.calc.numbers import Asked, Mass
from tarebook.api.calc.weigh_in import ConditionSchema
from tarebook.core.causes.cause_words import Names, cause_sentence, change_sentence, likely_sentence
from tarebook.core.causes.changes import Change
from tarebook.core.causes.search import Cause, Likely
from tarebook.core.causes.slip import Slip
from tarebook.core.fusion.fusion_words import lowering_sentence, next_sentence
from tarebook.core.fusion.lowering import Lowering
from tarebook.core.fusion.possible import Possible
from tarebook.core.fusion.scatter import Scatter
from tarebook.core.fusion.weigh_next import Next
from tarebook.core.ledger.since import Since
from tarebook.core.numbers.uncertain import Uncertain
from tarebook.core.standing.estimate import Counted, Fused
from tarebook.core.standing.foretold import Foretold
from tarebook.core.standing.gap import Gap
from tarebook.core.standing.history import Past, Start
from tarebook.core.standing.official import OfficialReading
from tarebook.core.standing.sentences import foretold_sentence, gap_line, in_hand_sentence, margin_sentence
from tarebook.core.standing.standing import Standing, standing
from tarebook.core.words.said import Said as SaidOf

written(Counted, mass="alone residual", share="share")
written(Since, mass="changes net")
written(Start, mass="weight")


@writes(Foretold, mass="expected read")
class ForetoldSchema(Answer):
    sentence = Said(lambda foretold, asked: foretold_sentence(foretold, asked.mass_unit))


written(Past, mass="total weight")


@writes(OfficialReading, but="scale spread", chance="chance_under", guard="in_hand")
class OfficialSchema(Answer):
    """What the official scale should show. `scale`: null when it is assumed. `in_hand`: to keep for the risk."""

    scale = fields.String(required=True, allow_none=True, attribute="scale.scale")
    division = Mass("scale.division")
    rounding = fields.String(required=True, attribute="scale.rounding")
    expected = Mass()
    sentence = Said(lambda reading, asked: in_hand_sentence(reading, asked.mass_unit))


def _names(asked: Asked) -> Names:
    """A weigh-in by its day, everything else by its name; by its id where it has none."""

    def named(kind: str, id_: str) -> str:
        record = getattr(asked.garage, f"{kind}s").get(id_)
        return getattr(record, "at" if kind == "weigh_in" else "name", None) or id_

    return named


written(Slip, mass="kg")


@writes(Likely, share="odds")
class LikelySchema(Answer):
    sentence = Said(lambda likely, asked: likely_sentence(likely, _names(asked)))


@writes(Cause, share="odds")
class CauseSchema(Answer):
    """A kind of slip that may explain it; `likely`: its likeliest instances, each with the ids of its records."""

    sentence = Said(lambda cause, asked: cause_sentence(cause, _names(asked)))


@writes(Change, mass="size")
class ChangeSchema(Answer):
    """`explained`: the likeliest cause is one that a record tells of."""

    sentence = Said(lambda change, asked: change_sentence(change, asked.mass_unit))
    explained = fields.Boolean(required=True)


def _next_sentence(following: Next, asked: Asked) -> SaidOf:
    scale = asked.garage.scales.get(following.scale) if following.scale else None
    return next_sentence(following, (scale.name or scale.id) if scale else None, asked.mass_unit)


@writes(Next, but="u_now u_then")
class NextSchema(Answer):
    """One more weigh-in on this scale (null: a platform nobody knows): what the weight's doubt (95 %) would be."""

    within = Mass(lambda following: Uncertain(2.0 * following.u_then))
    sentence = Said(_next_sentence)


def _lowering_sentence(lowering: Lowering, asked: Asked) -> SaidOf:
    kinds = (asked.garage.scales, asked.garage.parts, asked.garage.drivers)

    def named(id_: str | None) -> str | None:
        return next((kind[id_].name or id_ for kind in kinds if id_ in kind), None) if id_ else None

    return lowering_sentence(lowering, named(lowering.of), named(lowering.on), asked.mass_unit)


@writes(Lowering, but="u_now u_then", mass="against")
class LoweringSchema(Answer):
    """Something to do, and what the weight's doubt (95 %) would be."""

    within = Mass(lambda lowering: Uncertain(2.0 * lowering.u_then))
    sentence = Said(_lowering_sentence)


written(Possible, mass="weight", share="odds")
written(Scatter, but="wider", mass="repeats")
written(Fused, but="warnings")


@writes(Gap)
class GapSchema(Answer):
    difference = Mass()
    significant = fields.Boolean(required=True)
    unweighed = fields.List(fields.String(), required=True)
    sentence = Said(lambda gap, asked: gap_line(gap, asked.mass_unit))


@writes(Standing, but="unweighed_off unweighed_on", mass="weight minimum margin ballast removed", share="risk")
class StandingSchema(Answer):
    condition = fields.Nested(ConditionSchema, required=True)
    sentence = Said(lambda standing, asked: margin_sentence(standing, asked.mass_unit))
    verdict = fields.String(required=True, allow_none=True)
    warnings = Warnings(of_garage=True)


STANDING = Calculation(
    "standing",
    "Weight now, margin to the class minimum, and what to keep in hand.",
    garage_schema(
        "CalcStandingGiven",
        class_sheet=fields.String(allow_none=True),
        day=fields.Date(
            allow_none=True, metadata={"description": "To be told also what would lower the doubt if done on it."}
        ),
        weigh_in=fields.String(allow_none=True, metadata={"description": "To rest on alone; by default all count."}),
    ),
    StandingSchema(),
    lambda garage, given: standing(
        garage,
        class_sheet=given.get("class_sheet"),
        weigh_in=given.get("weigh_in"),
        day=given["day"].isoformat() if given.get("day") else None,
    ),
    trim="event",
)
