"""`calc`: any computation of the core on JSON, without a database.

The command line (`tarebook calc NAME`) and the web (`POST /api/v1/calc/NAME`) run the same schemas and the same
functions, so that anyone can check any number of ours with a file and a pipe. To add a computation, add a module with
`ABOUT`, `Given`, `Answer` and `compute`, and a row here.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from marshmallow import Schema, ValidationError

from tarebook.api.calc import balance, ballast, fuel, ledger, lift, load_transfer, sheet, standing, weigh_in, weighing
from tarebook.errors import TarebookError


@dataclass(frozen=True)
class Calculation:
    """`given`, `answer`: the schemas of what goes in and what comes out. `compute` takes what `given` has read."""

    name: str
    about: str
    given: type[Schema]
    answer: type[Schema]
    compute: Callable[[Mapping[str, Any]], dict[str, Any]]


_MODULES = {
    "weighing": weighing,
    "ledger": ledger,
    "weigh-in": weigh_in,
    "standing": standing,
    "balance": balance,
    "lift": lift,
    "load-transfer": load_transfer,
    "sheet": sheet,
    "ballast": ballast,
    "fuel": fuel,
}
CALCULATIONS = {
    name: Calculation(name, module.ABOUT, module.Given, module.Answer, module.compute)
    for name, module in _MODULES.items()
}
NAMES = tuple(CALCULATIONS)


def run(name: str, payload: Any) -> dict[str, Any]:
    """The answer of one computation. Raises TarebookError: `calc_unknown`, `bad_input` with the fields in its data."""
    if name not in CALCULATIONS:
        raise TarebookError("calc_unknown", name=name)
    calculation = CALCULATIONS[name]
    try:
        given = calculation.given().load(payload)
    except ValidationError as problem:
        raise TarebookError("bad_input", fields=problem.messages_dict) from problem
    return calculation.compute(given)
