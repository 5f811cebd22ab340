"""`calc ledger`: what every job comes to, and the sums of them cut every way."""

from marshmallow import fields

from tarebook.api.calc.answer import Answer, Values, writes, written
from tarebook.api.calc.calculation import Calculation
from tarebook.api.calc.garage_schema import garage_schema
from tarebook.api.calc.numbers import Mass
from tarebook.core.ledger.ledger import Brought, Ledger, Step, ledger
from tarebook.core.ledger.net import Effort, JobNet, Line, MassTotal
from tarebook.core.numbers.uncertain import Uncertain

written(MassTotal, mass="net off on")
written(Effort, hours="hours", money="money")
written(Line, but="job", mass="mass")
written(Brought, money="money")


@writes(Step, but="value u")
class StepSchema(Answer):
    net = Mass(lambda step: Uncertain(step.value, {"net": step.u}))


@writes(Ledger, share="shares")
class LedgerSchema(Answer):
    jobs = Values(fields.Nested(written(JobNet)), required=True)


LEDGER = Calculation(
    "ledger",
    "The net of every job, and totals by stage, zone, state and trim.",
    garage_schema("CalcLedgerGiven"),
    LedgerSchema(),
    lambda garage, _given: ledger(garage),
)
