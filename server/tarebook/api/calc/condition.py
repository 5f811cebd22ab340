"""The class's condition as `calc` writes it, for weigh-in and standing alike."""

from __future__ import annotations

from marshmallow import Schema, fields

from tarebook.api.calc.numbers import Json, Numbers, numeric
from tarebook.core.whole_car.condition import Condition


class ConditionSchema(Schema):
    """How the class weighs. `lightest`: the driver who decides. Null, like the masses, where none is asked or known."""

    class_sheet = fields.String(required=True, allow_none=True)
    driver = fields.String(required=True)
    fuel = fields.String(required=True)
    lightest = fields.String(required=True, allow_none=True)
    driver_mass = numeric()
    fuel_mass = numeric()


def write_condition(condition: Condition, write: Numbers) -> Json:
    return {
        "class_sheet": condition.class_sheet,
        "driver": condition.driver,
        "fuel": condition.fuel,
        "lightest": condition.lightest,
        "driver_mass": write.mass(condition.driver_mass),
        "fuel_mass": write.mass(condition.fuel_mass),
    }
