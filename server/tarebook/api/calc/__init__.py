"""`calc`: any computation of the core on JSON, without a database.

The command line (`tarebook calc NAME`) and the web (`POST /api/v1/calc/NAME`) run the same schemas and the same
functions, so that anyone can check any number of ours with a file and a pipe. To add a computation, add a module with
a `Calculation`, and name it here.
"""

from typing import Any

from marshmallow import ValidationError

from tarebook.api.calc.balance import BALANCE
from tarebook.api.calc.ballast import BALLAST
from tarebook.api.calc.calculation import Calculation
from tarebook.api.calc.fuel import FUEL
from tarebook.api.calc.ledger import LEDGER
from tarebook.api.calc.lift import LIFT
from tarebook.api.calc.load_transfer import LOAD_TRANSFER
from tarebook.api.calc.numbers import Json
from tarebook.api.calc.sheet import SHEET
from tarebook.api.calc.standing import STANDING
from tarebook.api.calc.weigh_in import WEIGH_IN
from tarebook.api.calc.weighing import WEIGHING
from tarebook.errors import TarebookError

_ALL = (WEIGHING, LEDGER, WEIGH_IN, STANDING, BALANCE, LIFT, LOAD_TRANSFER, SHEET, BALLAST, FUEL)
CALCULATIONS: dict[str, Calculation] = {each.name: each for each in _ALL}


def run(name: str, payload: Any) -> Json:
    """The answer of one computation. Raises TarebookError: `calc_unknown`, `bad_input` with the fields in its data."""
    if name not in CALCULATIONS:
        raise TarebookError("calc_unknown", name=name)
    calculation = CALCULATIONS[name]
    try:
        given = calculation.given().load(payload)
    except ValidationError as problem:
        raise TarebookError("bad_input", fields=problem.messages_dict) from problem
    return calculation.answer_to(given)
