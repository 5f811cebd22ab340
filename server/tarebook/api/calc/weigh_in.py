"""`calc weigh-in`: loads, shares and centre of gravity of every weigh-in, and its weight as the class weighs."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from marshmallow import Schema, fields

from tarebook.api.calc.condition import ConditionSchema, write_condition
from tarebook.api.calc.garage_schema import garage_schema
from tarebook.api.calc.numbers import Json, Numbers, NumberSchema, ToldSchema, all_told, numeric, told, warned_of
from tarebook.core.garage.garage import read_garage
from tarebook.core.garage.records import WeighIn
from tarebook.core.standing.weighed import in_order
from tarebook.core.weighing.weighing import masses
from tarebook.core.whole_car.weigh_in import WholeCar, weigh_in

ABOUT = "A car on scales: total, axle and side shares, cross weight, centre of gravity."
Given = garage_schema("CalcWeighInGiven", class_sheet=fields.String(allow_none=True))


class WeighInAnswerSchema(Schema):
    """`loads`: by corner, axle, side, and total, as far as known. `weight`: at the class's condition, or `reason`."""

    id = fields.String(required=True)
    at = fields.String(required=True, allow_none=True)
    layout = fields.String(required=True)
    trim = fields.String(required=True)
    official = fields.Boolean(required=True)
    # Named otherwise here because every schema has a method `loads`.
    by_name = fields.Dict(
        fields.String(), fields.Nested(NumberSchema), required=True, attribute="loads", data_key="loads"
    )
    shares = fields.Dict(fields.String(), fields.Nested(NumberSchema), required=True)
    x_cg = numeric()
    y_cg = numeric()
    fuel = numeric()
    driver = numeric()
    ballast = numeric()
    weight = numeric()
    reason = fields.Nested(ToldSchema, required=True, allow_none=True)
    warnings = warned_of()


class WeighInsSchema(Schema):
    condition = fields.Nested(ConditionSchema, required=True, allow_none=True)
    weigh_ins = fields.List(fields.Nested(WeighInAnswerSchema), required=True)
    warnings = warned_of()


Answer = WeighInsSchema


def compute(given: Mapping[str, Any]) -> Json:
    garage = read_garage(given)
    known, write = masses(garage), Numbers(given)
    answers = [(each, weigh_in(garage, each.id, known, given.get("class_sheet"))) for each in in_order(garage)]
    whole = [(record, car) for record, car in answers if car is not None]
    return {
        "condition": write_condition(whole[0][1].condition, write) if whole else None,
        "weigh_ins": [_whole_car(record, car, write) for record, car in whole],
        "warnings": all_told(garage.warnings),
    }


def _whole_car(record: WeighIn, car: WholeCar, write: Numbers) -> Json:
    return {
        "id": record.id,
        "at": record.at,
        "layout": record.layout,
        "trim": record.trim,
        "official": bool(record.official),
        "loads": write.masses(car.loads.loads),
        "shares": {name: write.share(share) for name, share in car.loads.shares.items()},
        "x_cg": write.length(car.loads.x_cg),
        "y_cg": write.length(car.loads.y_cg),
        "fuel": write.mass(car.fuel),
        "driver": write.mass(car.driver),
        "ballast": write.mass(car.ballast),
        "weight": write.mass(car.weight),
        "reason": told(car.reason),
        "warnings": all_told(car.warnings),
    }
