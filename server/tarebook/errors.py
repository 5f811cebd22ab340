"""One base class for every refusal, and one shape for all of them.

The server raises `TarebookError(code, **data)` and one handler turns it into `{"error": {code, sentence, do,
data}}`; `calc` and the ledger put the same codes into `warnings`; a journal entry that was set aside bears one as
its reason. The codes and their sentences are in `error_table`; the phone's copy, `webapp/src/generated/errors.ts`,
is written by `python -m tarebook.contract`.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from tarebook.error_row import ErrorRow
from tarebook.error_table import ERRORS

__all__ = ["ERRORS", "ErrorRow", "TarebookError", "describe"]


class _Shown(dict[str, Any]):
    """Data for a template; a name nobody gave stays visible instead of raising inside an error."""

    def __missing__(self, key: str) -> str:
        return "{" + key + "}"


def describe(code: str, data: Mapping[str, Any]) -> dict[str, Any]:
    """The error as every answer carries it: `{code, sentence, do, data}`."""
    row = ERRORS[code]
    shown = _Shown(data)
    sentence, remedy = row.sentence.format_map(shown), row.do.format_map(shown)
    return {"code": code, "sentence": sentence, "do": remedy, "data": dict(data)}


class TarebookError(Exception):
    """A refusal with a code of the table. `data` fills the sentence and is sent along; it must be JSON-able."""

    def __init__(self, code: str, **data: Any) -> None:
        self.code = code
        self.data = data
        self.status = ERRORS[code].status
        super().__init__(f"{code}: {describe(code, data)['sentence']}")

    @property
    def sentence(self) -> str:
        return str(describe(self.code, self.data)["sentence"])

    @property
    def do(self) -> str:
        return str(describe(self.code, self.data)["do"])

    def body(self) -> dict[str, Any]:
        return {"error": describe(self.code, self.data)}
