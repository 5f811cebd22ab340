"""`calc weighing`: what every weighing tells, and what every part, driver and scale comes to.

A part with `instead_of` is also compared with the part it would replace.
"""

from marshmallow import fields

from tarebook.api.calc.answer import Answer, Told, Warnings, written
from tarebook.api.calc.calculation import Calculation
from tarebook.api.calc.garage_schema import garage_schema
from tarebook.api.calc.numbers import Given, Json, Mass
from tarebook.core.garage.records import Garage, Warned, Weighing, warned
from tarebook.core.ledger.compare import Comparison, compare
from tarebook.core.weighing import weighing as core
from tarebook.core.weighing.claims import Lesson
from tarebook.core.weighing.scale import UNNAMED, ScaleModel
from tarebook.core.weighing.weighing import Masses, Reading, masses, read_weighing

_READINGS = ("method", "shown", "shown_empty", "shown_far", "pieces")


class WeighingAnswerSchema(Answer):
    """`mass`: of one piece; when null, `reason` says why. `division_assumed`: taken from the last digit typed."""

    id = fields.String(required=True, attribute="weighing.id")
    of = fields.String(required=True, allow_none=True, attribute="weighing.of")
    mass = Mass("read.mass")
    division_assumed = fields.Boolean(required=True, allow_none=True, attribute="read.division_assumed")
    reason = Told()


class MassAnswerSchema(Answer):
    """One part or driver. `mass`: of one piece; when null, `reason` says why. `spread`: of its weighings."""

    of = fields.String(required=True, attribute="found.of")
    mass = Mass("found.mass")
    basis = fields.String(required=True, allow_none=True, attribute="found.basis")
    weighings = fields.List(fields.String(), required=True, attribute="found.weighings")
    reason = Told()
    spread = Mass(lambda each: each["found"].spread if each["found"].weighings else None)
    widened = fields.Float(
        required=True, attribute="found.ratio", metadata={"description": "Birge ratio; 1 when the weighings agree."}
    )


# Scale "" is that of weighings that name none. Negative differences save weight.
ScaleAnswerSchema = written(ScaleModel, but="division repeatability capacity warnings of_parts of_car", share="gain")
# What guesses and quotes have run off by, and is taken out. Bias and spread are of ln(claim ÷ mass).
LessonAnswerSchema = written(Lesson, share="bias bias_u spread factor")
ComparisonAnswerSchema = written(Comparison, but="this that warnings", mass="difference whole")


class WeighingsSchema(Answer):
    weighings = fields.List(fields.Nested(WeighingAnswerSchema), required=True)
    masses = fields.List(fields.Nested(MassAnswerSchema), required=True)
    scales = fields.List(fields.Nested(ScaleAnswerSchema), required=True)
    lessons = fields.List(fields.Nested(LessonAnswerSchema), required=True)
    comparisons = fields.List(fields.Nested(ComparisonAnswerSchema), required=True)
    warnings = Warnings(of_garage=True)


def _weighings(garage: Garage, given: Given) -> Json:
    known = masses(garage)
    compared = [compare(garage, part.id, known=known) for part in garage.parts.values() if part.instead_of]
    used = _scales_used(garage, known)
    warnings = [warning for mass in known.of.values() for warning in mass.warnings]
    warnings += [warning for model in used for warning in (*model.warnings, *_assumed(model))]
    warnings += [warning for each in compared for warning in each.warnings]
    return {
        "weighings": [_weighing(garage, each, known) for each in garage.weighings.values()],
        "masses": [_mass(mass, _unread_of(garage, given, mass.of)) for mass in known.of.values()],
        "scales": used,
        "lessons": list(known.lessons.values()),
        "comparisons": compared,
        "warnings": warnings,
    }


def _assumed(model: ScaleModel) -> list[Warned]:
    return [warned("gain_assumed", scale=model.id)] if model.assumed else []


def _scales_used(garage: Garage, known: Masses) -> list[ScaleModel]:
    """Every scale with a name, and the nameless one when a weighing stands on it."""
    nameless = any(weighing.scale is None for weighing in garage.weighings.values())
    return [model for id_, model in known.scales.items() if id_ != UNNAMED or nameless]


def _weighing(garage: Garage, weighing: Weighing, known: Masses) -> Json:
    read = read_weighing(weighing, known.scales[weighing.scale or UNNAMED], garage)
    was_read = isinstance(read, Reading)
    return {"weighing": weighing, "read": read if was_read else None, "reason": None if was_read else read}


def _unread_of(garage: Garage, given: Given, of: str) -> list[Warned]:
    """What could not be read of the claim of a part or driver, and of its weighings."""
    weighings = {each.get("id") for each in given.get("weighings") or [] if each.get("of") == of}
    places = {(of, "claim"), *((weighing, field) for weighing in weighings for field in _READINGS)}
    return [each for each in garage.warnings if (each["data"].get("id"), each["data"].get("field")) in places]


def _mass(mass: core.Mass, unread: list[Warned]) -> Json:
    """With the reason there is none: what could not be read, else that nobody has weighed or claimed it."""
    reasons = [*mass.warnings, *unread, warned("no_mass", of=mass.of)]
    return {"found": mass, "reason": reasons[0] if mass.mass is None else None}


WEIGHING = Calculation(
    "weighing",
    "Masses from weighings and claims, with their uncertainty.",
    garage_schema("CalcWeighingGiven"),
    WeighingsSchema(),
    _weighings,
)
