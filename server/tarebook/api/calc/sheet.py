"""`calc sheet`: what pieces of sheet will weigh before they are cut, and what became of those of a garage."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from marshmallow import Schema, fields, validate

from tarebook.api.calc.garage_schema import Decimal, Flag, StrictSchema, Typed, garage_schema, one_of
from tarebook.api.calc.numbers import Json, Numbers, ToldSchema, numeric, told, typed_text, warned_of
from tarebook.core.garage.garage import read_garage
from tarebook.core.garage.records import Garage, Warned
from tarebook.core.numbers.quantity import QuantityError
from tarebook.core.numbers.uncertain import scale, total
from tarebook.core.sheet.sheet import SheetMass, sheet
from tarebook.core.sheet.sheet_piece import piece_of, read_piece
from tarebook.core.sheet.sheet_records import Sheet
from tarebook.core.sheet.sheet_stock import GAUGE_TABLES, MATERIALS
from tarebook.core.weighing.weighing import masses
from tarebook.core.weighing.worked_out import Against, against, against_sentence

ABOUT = "Sheet stock: area times thickness times density, before it is cut."
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


Given = garage_schema(
    "CalcSheetGiven", pieces=fields.List(fields.Nested(SheetPieceSchema), validate=validate.Length(max=100))
)


class SheetAnswerSchema(Schema):
    """`area` in m², of one piece like `mass`; `whole`: times `count`. `listed`: what a gauge table gives for one.

    All null when it cannot be told, and `reason` says why. `density` in kg/m³.
    """

    id = fields.String(required=True)
    count = fields.Integer(required=True)
    area = fields.Float(required=True, allow_none=True)
    density = fields.Float(required=True, allow_none=True)
    thickness = numeric()
    mass = numeric()
    whole = numeric()
    listed = numeric()
    reason = fields.Nested(ToldSchema, required=True, allow_none=True)
    warnings = warned_of()


class SheetOfPartSchema(SheetAnswerSchema):
    """A sheet of the garage and the part it is. `difference`: weighed less worked out; null until both are known.

    `beyond`: the difference is more than both doubts allow.
    """

    part = fields.String(required=True)
    weighed = numeric()
    difference = numeric()
    beyond = fields.Boolean(required=True, allow_none=True)
    said = fields.String(required=True, allow_none=True)


class SheetMaterialSchema(Schema):
    """`low`, `high`: density in kg/m³."""

    material = fields.String(required=True)
    name = fields.String(required=True)
    low = fields.Float(required=True)
    high = fields.Float(required=True)
    source = fields.String(required=True)


class SheetsSchema(Schema):
    pieces = fields.List(fields.Nested(SheetAnswerSchema), required=True)
    total = numeric()
    sheets = fields.List(fields.Nested(SheetOfPartSchema), required=True)
    warnings = warned_of()
    materials = fields.List(fields.Nested(SheetMaterialSchema), required=True)


Answer = SheetsSchema


def compute(given: Mapping[str, Any]) -> Json:
    write = Numbers(given)
    records: list[Json] = [as_typed(piece) for piece in given.get("pieces", [])]
    found = [(record, _sheet(record)) for record in records]
    wholes = [scale(each.mass, float(_count(record))) for record, each in found if isinstance(each, SheetMass)]
    garage = read_garage(given)
    return {
        "pieces": [_piece(record["id"], _count(record), each, write) for record, each in found],
        "total": write.mass(total(wholes)),
        "sheets": _sheets(garage, write),
        "warnings": [told(each) for each in garage.warnings],
        "materials": [
            {
                "material": name,
                "name": each.name,
                "low": each.density.low,
                "high": each.density.high,
                "source": each.source,
            }
            for name, each in MATERIALS.items()
        ],
    }


def as_typed(value: Any) -> Any:
    """Every `{value, unit}` in it as the text a person would have typed."""
    if isinstance(value, Mapping):
        is_quantity = value.keys() == {"value", "unit"}
        return typed_text(value) if is_quantity else {name: as_typed(each) for name, each in value.items()}
    return [as_typed(each) for each in value] if isinstance(value, list) else value


def _sheets(garage: Garage, write: Numbers) -> list[Json]:
    known = masses(garage).of
    answers = []
    for record in garage.sheets.values():
        part = garage.parts[record.part]
        answer = _piece(record.id, part.count or 1, _sheet_of(garage, record), write)
        answers.append({**answer, "part": part.id, **_weighed(against(part, known[part.id]), write)})
    return answers


def _weighed(found: Against | None, write: Numbers) -> Json:
    return {
        "weighed": write.mass(found.weighed) if found else None,
        "difference": write.mass(found.difference) if found else None,
        "beyond": found.beyond if found else None,
        "said": against_sentence(found, write.mass_unit) if found else None,
    }


def _sheet_of(garage: Garage, record: Sheet) -> SheetMass | Warned:
    try:
        return sheet(piece_of(record, garage.holes_of.get(record.id, [])))
    except QuantityError as problem:
        return {"code": problem.code, "data": problem.data}


def _sheet(record: Json) -> SheetMass | Warned:
    try:
        return sheet(read_piece(record))
    except QuantityError as problem:
        return {"code": problem.code, "data": problem.data}


def _count(record: Json) -> int:
    return int(record.get("count") or 1)


def _piece(identity: str, count: int, found: SheetMass | Warned, write: Numbers) -> Json:
    told_of = found if isinstance(found, SheetMass) else None
    return {
        "id": identity,
        "count": count,
        "area": told_of.area.value if told_of else None,
        "density": told_of.density.value if told_of else None,
        "thickness": write.length(told_of.thickness) if told_of else None,
        "mass": write.mass(told_of.mass) if told_of else None,
        "whole": write.mass(scale(told_of.mass, float(count))) if told_of else None,
        "listed": write.mass(told_of.listed) if told_of else None,
        "reason": None if isinstance(found, SheetMass) else told(found),
        "warnings": [told(each) for each in found.warnings] if isinstance(found, SheetMass) else [],
    }
