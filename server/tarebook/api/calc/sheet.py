"""`calc sheet`: what pieces of sheet will weigh before they are cut, and what became of those of a garage."""

from collections.abc import Callable, Mapping
from typing import Any

from marshmallow import fields, validate

from tarebook.api.calc.answer import Answer, Told, Warnings
from tarebook.api.calc.asked import typed_text
from tarebook.api.calc.calculation import Calculation
from tarebook.api.calc.garage_schema import Decimal, Flag, StrictSchema, Typed, garage_schema, one_of
from tarebook.api.calc.numbers import Asking, Given, Json, Length, Mass
from tarebook.core.garage.records import Garage, Warned
from tarebook.core.numbers.typed import QuantityError
from tarebook.core.numbers.uncertain import scale, total
from tarebook.core.sheet.sheet import Piece, SheetMass, sheet
from tarebook.core.sheet.sheet_piece import piece_of, read_piece
from tarebook.core.sheet.sheet_stock import GAUGE_TABLES, MATERIALS
from tarebook.core.weighing.weighing import masses
from tarebook.core.weighing.worked_out import against, against_sentence

_FORMS = ("rectangle", "circle", "polygon")
_COUNT = validate.Range(min=1, max=1000, error="This is a whole number from {min} to {max}.")


class SheetShapeSchema(StrictSchema):
    """A rectangle (width, height), a circle (diameter) or a polygon (corners, each [x, y]).

    Records of a garage (`sheets`, `sheet_holes`) keep their corners as one text.
    """

    form = fields.String(allow_none=True, validate=one_of(_FORMS))
    width = Typed()
    height = Typed()
    diameter = Typed()
    corners = fields.List(
        fields.List(Typed(), validate=validate.Length(equal=2)), allow_none=True, validate=validate.Length(max=200)
    )
    count = fields.Integer(strict=True, allow_none=True, validate=_COUNT)


class SheetPieceSchema(SheetShapeSchema):
    id = fields.String(required=True, validate=validate.Length(min=1, max=80))
    material = fields.String(allow_none=True, validate=validate.Length(max=80))
    holes = fields.List(fields.Nested(SheetShapeSchema), allow_none=True, validate=validate.Length(max=100))
    thickness = Typed()
    measured = Flag(allow_none=True)
    gauge = fields.Integer(strict=True, allow_none=True, validate=validate.Range(min=1, max=50))
    gauge_table = fields.String(allow_none=True, validate=one_of(GAUGE_TABLES))
    density_low = Decimal()
    density_high = Decimal()
    within = Typed()


class SheetAnswerSchema(Answer):
    """`area` in m², of one piece like `mass`; `whole`: times `count`. `listed`: what a gauge table gives for one.

    All null when it cannot be told, and `reason` says why. `density` in kg/m³.
    """

    id = fields.String(required=True)
    count = fields.Integer(required=True)
    area = fields.Float(required=True, allow_none=True, attribute="found.area.value")
    density = fields.Float(required=True, allow_none=True, attribute="found.density.value")
    thickness = Length("found.thickness")
    mass = Mass("found.mass")
    whole = Mass()
    listed = Mass("found.listed")
    reason = Told()
    warnings = Warnings("found.warnings")


class SaidAgainst(fields.String):
    def _serialize(self, value: Any, attr: str | None, obj: Any, **kwargs: Any) -> str | None:
        return against_sentence(value, Asking.get().mass_unit) if value else None


class SheetOfPartSchema(SheetAnswerSchema):
    """A sheet of the garage and the part it is. `difference`: weighed less worked out; null until both are known."""

    part = fields.String(required=True)
    weighed = Mass("against.weighed")
    difference = Mass("against.difference")
    beyond = fields.Boolean(required=True, allow_none=True, attribute="against.beyond")
    said = SaidAgainst(required=True, allow_none=True, attribute="against")


class SheetMaterialSchema(Answer):
    """`low`, `high`: density in kg/m³."""

    material = fields.String(required=True)
    name = fields.String(required=True, attribute="of.name")
    low = fields.Float(required=True, attribute="of.density.low")
    high = fields.Float(required=True, attribute="of.density.high")
    source = fields.String(required=True, attribute="of.source")


class SheetsSchema(Answer):
    pieces = fields.List(fields.Nested(SheetAnswerSchema), required=True)
    total = Mass()
    sheets = fields.List(fields.Nested(SheetOfPartSchema), required=True)
    warnings = Warnings(of_garage=True)
    materials = fields.List(fields.Nested(SheetMaterialSchema), required=True)


def _sheets(garage: Garage, given: Given) -> Json:
    pieces = [_piece(each["id"], each.get("count"), read_piece, each) for each in as_typed(given.get("pieces", []))]
    return {
        "pieces": pieces,
        "total": total([each["whole"] for each in pieces if each["found"]]),
        "sheets": _sheets_of_parts(garage),
        "warnings": (),
        "materials": [{"material": name, "of": each} for name, each in MATERIALS.items()],
    }


def as_typed(value: Any) -> Any:
    """Every `{value, unit}` in it as the text a person would have typed."""
    if isinstance(value, Mapping):
        is_quantity = value.keys() == {"value", "unit"}
        return typed_text(value) if is_quantity else {name: as_typed(each) for name, each in value.items()}
    return [as_typed(each) for each in value] if isinstance(value, list) else value


def _sheets_of_parts(garage: Garage) -> list[Json]:
    known = masses(garage).of
    answers = []
    for record in garage.sheets.values():
        part, holes = garage.parts[record.part], garage.holes_of.get(record.id, [])
        answer = _piece(record.id, part.count, piece_of, record, holes)
        answers.append({**answer, "part": part.id, "against": against(part, known[part.id])})
    return answers


def _piece(identity: str, count: int | None, read: Callable[..., Piece], *record: Any) -> Json:
    """One piece worked out: `found`, or the `reason` why not."""
    found, several = _found(read, *record), count or 1
    if not isinstance(found, SheetMass):
        return {"id": identity, "count": several, "found": None, "whole": None, "reason": found}
    whole = scale(found.mass, float(several))
    return {"id": identity, "count": several, "found": found, "whole": whole, "reason": None}


def _found(read: Callable[..., Piece], *record: Any) -> SheetMass | Warned:
    try:
        return sheet(read(*record))
    except QuantityError as problem:
        return {"code": problem.code, "data": problem.data}


SHEET = Calculation(
    "sheet",
    "Sheet stock: area times thickness times density, before it is cut.",
    garage_schema(
        "CalcSheetGiven", pieces=fields.List(fields.Nested(SheetPieceSchema), validate=validate.Length(max=100))
    ),
    SheetsSchema(),
    _sheets,
)
