"""`calc balance`: centre of gravity, axle and side shares and yaw inertia, before and after any set of jobs."""

from marshmallow import fields

from tarebook.api.calc.answer import Answer, Warnings, writes, written
from tarebook.api.calc.balance_given import OPTIONS, question_of
from tarebook.api.calc.calculation import Calculation
from tarebook.api.calc.garage_schema import garage_schema
from tarebook.api.calc.numbers import Length, Mass, Number
from tarebook.core.balance.balance import Balance, State, balance
from tarebook.core.balance.moved import Change
from tarebook.core.balance.place import Place


@writes(State, but="body", share="shares")
class CarStateSchema(Answer):
    """`x`, `y`, `z`: the centre of gravity, rearward of the front axle, right of the middle, above the ground."""

    mass = Mass("body.mass")
    x = Length("body.x")
    y = Length("body.y")
    z = Length("body.z")
    # A schema's own method of that name stays: fields are taken out of its class.
    loads = fields.Dict(fields.String(), Mass(optional=False), required=True)  # type: ignore[assignment]


@writes(Change, but="unsure", mass="net above below unsprung rotating")
class BalanceChangeSchema(Answer):
    yaw = Number(unit="kg m²")


written(Place, but="apart", length="x y z")


@writes(Balance)
class BalanceSchema(Answer):
    warnings = Warnings(of_garage=True)


BALANCE = Calculation(
    "balance",
    "Where the weight is: centre of gravity, shares, yaw inertia before and after jobs.",
    garage_schema("CalcBalanceGiven", **OPTIONS),
    BalanceSchema(),
    lambda garage, given: balance(garage, question_of(given)),
)
