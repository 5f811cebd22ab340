"""Every sentence about trouble: one table, one base class for every refusal, and one shape for all of them.

The server raises `TarebookError(code, **data)` and one handler turns it into `{"error": {code, sentence, do,
data}}`; `calc` and the ledger put the same codes into `warnings`; a journal entry that was set aside bears one as
its reason. The rows stand in this room's files, one a subject; the phone's copies are written from them by
`python -m tarebook.contract`. No other place knows sentences about trouble.
"""

from collections.abc import Mapping
from typing import Any

from tarebook.errors import (
    backups,
    balance,
    ballast,
    commands,
    devices,
    doctor,
    fuel,
    garage,
    home_network,
    importing,
    phone,
    quantities,
    requests,
    sheet,
    sync,
    weighing,
    whole_car,
)
from tarebook.errors.row import ErrorRow

__all__ = ["ERRORS", "ErrorRow", "TarebookError", "describe", "fill"]

ERRORS: dict[str, ErrorRow] = {
    code: row
    for subject in (
        requests, devices, sync, quantities, garage, weighing, whole_car, balance, sheet, ballast, fuel, phone,
        commands, importing, backups, doctor, home_network,
    )
    for code, row in subject.ROWS.items()
}  # fmt: skip


class _Shown(dict[str, Any]):
    """Data for a template; a name nobody gave stays visible instead of raising inside an error."""

    def __missing__(self, key: str) -> str:
        return "{" + key + "}"


def fill(template: str, data: Mapping[str, Any]) -> str:
    return template.format_map(_Shown(data))


def describe(code: str, data: Mapping[str, Any]) -> dict[str, Any]:
    """The error as every answer carries it: `{code, sentence, do, data}`."""
    row = ERRORS[code]
    return {"code": code, "sentence": fill(row.sentence, data), "do": fill(row.do, data), "data": dict(data)}


class TarebookError(Exception):
    """A refusal with a code of the table. `data` fills the sentence and is sent along; it must be JSON-able."""

    def __init__(self, code: str, **data: Any) -> None:
        self.code = code
        self.data = data
        self.status = ERRORS[code].status
        super().__init__(code)

    def __str__(self) -> str:
        # Only when it is shown: who raises one may leave some of its data to who passes it on.
        return f"{self.code}: {self.sentence}"

    @property
    def sentence(self) -> str:
        return fill(ERRORS[self.code].sentence, self.data)

    @property
    def do(self) -> str:
        return fill(ERRORS[self.code].do, self.data)

    def body(self) -> dict[str, Any]:
        return {"error": describe(self.code, self.data)}
