"""One row of the sheet read as what a person did, or the reason why it cannot be.

The masses stay as typed, with the unit of their own cell or else of the unit column; they are of one piece. A cell
with nothing, a dash or a plain zero says that there was no such part.
"""

import hashlib
import re
import unicodedata
from dataclasses import dataclass
from typing import Any

from tarebook.core.numbers.quantity import read_mass
from tarebook.core.numbers.typed import QuantityError
from tarebook.importing.sheet import COLUMNS, Row, with_unit
from tarebook.journal.kinds import KINDS, ZONES

_NOTHING = re.compile(r"[-–—]*|(0+(?:[.,]0*)?|[.,]0+)\s*([^\W\d_]+\.?)?")  # no digit but zero: 0.823 kg is something
_NUMBER = re.compile(r"[£$€]?\s*(\d{1,9}(?:\.\d{1,4})?)")
_TOTALS = {"total", "totals", "sum", "subtotal", "sub total", "sub-total", "grand total"}
_LONGEST_NAME = KINDS["part"].fields["name"].most
_LONGEST_NOTE = KINDS["job"].fields["note"].most - _LONGEST_NAME  # room for a zone nobody knows
_MOST_PIECES = KINDS["part"].fields["count"].most


@dataclass(frozen=True)
class Line:
    """What a row says. `off` and `on` are typed masses with a unit, or None; `key` is the hash of the row's text."""

    number: int
    key: str
    part: str
    off: str | None
    on: str | None
    count: int
    stage: str | None
    zone: str | None
    hours: str | None
    money: str | None
    note: str | None


class LineError(Exception):
    """A row that cannot be read: a code of the error table, its data and, where one is at fault, the column."""

    def __init__(self, code: str, column: str | None = None, **data: Any) -> None:
        super().__init__(code)
        self.code, self.column, self.data = code, column, data


def read_line(row: Row) -> Line:
    """The row as a line, or `LineError`."""
    if row.fault:
        raise LineError(row.fault)
    cells = row.cells
    part = _name(cells.get("part", ""))
    count = _count(cells.get("quantity", "1"))
    off, on = (_mass(column, cells) for column in ("off", "on"))
    hours, money = (_decimal(column, cells) for column in ("hours", "money"))
    if not (off or on or hours or money):
        raise LineError("line_empty", part=part)
    zone, note = _zone_and_note(cells)
    stage = _short("stage", cells)
    return Line(row.number, key_of(cells), part, off, on, count, stage, zone, hours, money, note)


def key_of(cells: dict[str, str]) -> str:
    """Hash of the row's normalised text: the same whatever the order of columns, the spacing, the letter case of the
    header, the separator and the encoding.
    """
    words = [f"{name}\x1f{unicodedata.normalize('NFC', cells[name])}" for name in COLUMNS if cells.get(name)]
    return hashlib.sha256("\x1e".join(words).encode()).hexdigest()


def _name(text: str) -> str:
    if not text:
        raise LineError("line_no_part", "part")
    if text.casefold().rstrip(":") in _TOTALS:
        raise LineError("line_total", "part", part=text)
    if len(text) > _LONGEST_NAME:
        raise LineError("line_too_long", "part", most=_LONGEST_NAME)
    return text


def _short(column: str, cells: dict[str, str]) -> str | None:
    text = cells.get(column)
    if text and len(text) > _LONGEST_NAME:
        raise LineError("line_too_long", column, most=_LONGEST_NAME)
    return text or None


def _mass(column: str, cells: dict[str, str]) -> str | None:
    text = cells.get(column, "")
    if _NOTHING.fullmatch(text):
        return None
    unit = cells.get("unit", "")
    typed = with_unit(text, unit)
    try:
        return typed if read_mass(typed).exact else None
    except QuantityError as problem:
        raise LineError(problem.code, column, **problem.data) from problem


def _count(text: str) -> int:
    whole = re.fullmatch(r"(\d{1,9})(?:\.0*)?\s*(?:x|×|pcs?\.?)?", text.casefold())
    if whole is None or not 1 <= int(whole[1]) <= _MOST_PIECES:
        raise LineError("line_bad_quantity", "quantity", typed=text, most=_MOST_PIECES)
    return int(whole[1])


def _decimal(column: str, cells: dict[str, str]) -> str | None:
    text = cells.get(column, "")
    if not text or re.fullmatch(r"[-–—]+", text):
        return None
    number = _NUMBER.fullmatch(text)
    if number is None:
        raise LineError("line_bad_number", column, typed=text)
    return number[1]


def _zone_and_note(cells: dict[str, str]) -> tuple[str | None, str | None]:
    """A zone by its own name; any other word for a place is kept in the note rather than lost."""
    typed, note = cells.get("zone", ""), cells.get("note", "")
    if len(note) > _LONGEST_NOTE:
        raise LineError("line_too_long", "note", most=_LONGEST_NOTE)
    if typed.casefold() in ZONES:
        return typed.casefold(), note or None
    kept = [words for words in (note, f"zone in the file: {_short('zone', cells)}" if typed else "") if words]
    return None, "; ".join(kept) or None
