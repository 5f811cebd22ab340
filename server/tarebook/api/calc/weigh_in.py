"""`calc weigh-in`: loads, shares and centre of gravity of every weigh-in, and its weight as the class weighs."""

from marshmallow import fields

from tarebook.api.calc.answer import Answer, Told, Warnings, written
from tarebook.api.calc.calculation import Calculation
from tarebook.api.calc.garage_schema import garage_schema
from tarebook.api.calc.numbers import Given, Json, Length, Mass, Share
from tarebook.core.garage.records import Garage
from tarebook.core.weighing.weighing import masses
from tarebook.core.whole_car.condition import Condition
from tarebook.core.whole_car.weigh_in import weigh_in
from tarebook.core.whole_car.weighed import in_order

ConditionSchema = written(Condition, but="no_fuel warnings", mass="driver_mass fuel_mass")


class WeighInAnswerSchema(Answer):
    """`loads`: by corner, axle, side, and total, as far as known. `weight`: at the class's condition, or `reason`."""

    id = fields.String(required=True, attribute="record.id")
    at = fields.String(required=True, allow_none=True, attribute="record.at")
    layout = fields.String(required=True, attribute="record.layout")
    trim = fields.String(required=True, attribute="record.trim")
    official = fields.Boolean(required=True)
    # A schema's own method of that name stays: fields are taken out of its class.
    loads = fields.Dict(fields.String(), Mass(optional=False), required=True, attribute="car.loads.loads")  # type: ignore[assignment]
    shares = fields.Dict(fields.String(), Share(optional=False), required=True, attribute="car.loads.shares")
    x_cg = Length("car.loads.x_cg")
    y_cg = Length("car.loads.y_cg")
    fuel = Mass("car.fuel")
    driver = Mass("car.driver")
    ballast = Mass("car.ballast")
    weight = Mass("car.weight")
    reason = Told("car.reason")
    warnings = Warnings("car.warnings")


class WeighInsSchema(Answer):
    condition = fields.Nested(ConditionSchema, required=True, allow_none=True)
    weigh_ins = fields.List(fields.Nested(WeighInAnswerSchema), required=True)
    warnings = Warnings(of_garage=True)


def _weigh_ins(garage: Garage, given: Given) -> Json:
    known = masses(garage)
    cars = [(each, weigh_in(garage, each.id, known, given.get("class_sheet"))) for each in in_order(garage)]
    whole: list[Json] = [
        {"record": record, "official": bool(record.official), "car": car} for record, car in cars if car is not None
    ]
    return {"condition": whole[0]["car"].condition if whole else None, "weigh_ins": whole, "warnings": ()}


WEIGH_IN = Calculation(
    "weigh-in",
    "A car on scales: total, axle and side shares, cross weight, centre of gravity.",
    garage_schema("CalcWeighInGiven", class_sheet=fields.String(allow_none=True)),
    WeighInsSchema(),
    _weigh_ins,
)
