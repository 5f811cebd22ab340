"""`calc fuel`: what the car weighs and how it balances lap by lap, and what to start with.

The trim is the event's unless another is asked for: that is when somebody else weighs the car.
"""

from marshmallow import fields, validate

from tarebook.api.calc.answer import Answer, Said, Warnings, writes, written
from tarebook.api.calc.asked import all_typed
from tarebook.api.calc.calculation import Calculation
from tarebook.api.calc.garage_schema import StrictSchema, Typed, garage_schema, one_of
from tarebook.api.calc.numbers import Chance, Given, Guard, Length, Mass, Share
from tarebook.api.calc.weigh_in import ConditionSchema
from tarebook.core.fuel_run.fuel_given import MOST_LAPS, RunQuestion
from tarebook.core.fuel_run.fuel_run import FuelRun, Least, Moment, fuel_run
from tarebook.core.fuel_run.fuel_words import lightest_sentence, start_sentence

VOLUME_UNITS = ("L", "gal_us", "gal_imp")


class CalcRunSchema(StrictSchema):
    """`start`: by default a full tank; `per_lap`: by default the car's own; each may be off by its `…_within`."""

    start = Typed()
    start_within = Typed()
    per_lap = Typed()
    per_lap_within = Typed()
    laps = fields.Integer(strict=True, allow_none=True, validate=validate.Range(min=0, max=MOST_LAPS))


@writes(Moment, but="judged balance", volume="fuel", mass="fuel_mass burnt weight")
class FuelMomentSchema(Answer):
    """`margin`, `chance_under`, `in_hand`: against the minimum, null where the class does not count this fuel.

    `x`, `y`, `z`: the centre of gravity; `front`, `left`: shares.
    """

    margin = Mass("judged.margin")
    chance_under = Chance("judged.chance_under")
    in_hand = Guard("judged.in_hand")
    x = Length("balance.x")
    y = Length("balance.y")
    z = Length("balance.z")
    front = Share("balance.front")
    left = Share("balance.left")


written(Least, volume="fuel", mass="lacking")


@writes(FuelRun, but="since", share="risk", volume="per_lap")
class FuelRunSchema(Answer):
    condition = fields.Nested(ConditionSchema, required=True)
    lightest = Said(lambda run, asked: lightest_sentence(run, asked.mass_unit))
    start = Said(lambda run, asked: start_sentence(run, asked.mass_unit, asked.volume_unit))
    minimum = Mass()
    warnings = Warnings(of_garage=True)


def _question(given: Given) -> RunQuestion:
    """The question asked. Raises QuantityError."""
    run = given.get("run") or {}
    litres = all_typed(run, volume="start start_within per_lap per_lap_within")
    return RunQuestion(**litres, laps=run.get("laps") or 0, class_sheet=given.get("class_sheet"))


FUEL = Calculation(
    "fuel",
    "Fuel over a run: weight and balance lap by lap, the worst lap, the least start.",
    garage_schema(
        "CalcFuelGiven",
        run=fields.Nested(CalcRunSchema, allow_none=True),
        class_sheet=fields.String(allow_none=True),
        volume_unit=fields.String(validate=one_of(VOLUME_UNITS)),
    ),
    FuelRunSchema(),
    lambda garage, given: fuel_run(garage, _question(given)),
    trim="event",
)
