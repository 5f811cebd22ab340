"""One row of the sheet read as what a person did, or the reason why it is none of that.

The masses stay as typed, with the unit of their own cell or else of the unit column; they are of one piece. A cell
with nothing, a dash or a plain zero says that there was no such part; anything else is read or told.
"""

import re
from dataclasses import dataclass
from typing import Any, Literal

from tarebook.core.numbers.quantity import read_mass
from tarebook.core.numbers.typed import QuantityError
from tarebook.importing.basis import Basis, basis_of
from tarebook.importing.headings import NUMBERS
from tarebook.importing.sheet import Row, with_unit
from tarebook.journal.kinds import KINDS, ZONES

Way = Literal["off", "on"]
_NOTHING = re.compile(r"[-–—−]*|(0+(?:[.,]0*)?|[.,]0+)\s*([^\W\d_]+\.?)?")  # no digit but zero: 0.823 kg is something
_NUMBER = re.compile(r"[£$€]?\s*(\d{1,9}(?:\.\d{1,4})?)(?:\s*(?:[£$€]|h|hrs?|hours?))?")
_TOTAL = re.compile(
    r"(?:(?:grand|overall|running|sub) ?)?(?:totals?|sum)"
    r"(?: of| in| all| parts?| weights?| mass| off| on| removed| saved| car| kgs?| lbs?)*"
    r"|sub ?totals?\b.{0,80}"
)
_RULED = re.compile(r"[\W_]+")
_LONGEST_NAME = KINDS["part"].fields["name"].most
_LONGEST_NOTE = KINDS["job"].fields["note"].most - 3 * _LONGEST_NAME  # room for words that no other field takes
_MOST_PIECES = KINDS["part"].fields["count"].most


@dataclass(frozen=True)
class Mass:
    """A typed mass of one piece, with its unit, and how it is known."""

    typed: str
    basis: Basis


@dataclass(frozen=True)
class Line:
    """What a row says. `off` and `on`: a scale's reading first, where there is one beside what was claimed. `scale`:
    the name of one, as typed. `place`: the zone, as a word of ours or as typed; `date`: a day in ISO 8601."""

    number: int
    part: str
    off: tuple[Mass, ...]
    on: tuple[Mass, ...]
    count: int
    stage: str | None
    zone: str | None
    place: str
    hours: str | None
    money: str | None
    date: str | None
    scale: str | None
    note: str | None

    def masses(self, way: Way) -> tuple[Mass, ...]:
        return self.off if way == "off" else self.on


class LineError(Exception):
    """A row that is no line: a code of the error table, its data and, where one is at fault, the column."""

    def __init__(self, code: str, column: str | None = None, **data: Any) -> None:
        super().__init__(code)
        self.code, self.column, self.data = code, column, data


def read_line(row: Row, unit: str = "", plain: Way = "off", scales: frozenset[str] = frozenset()) -> Line:
    """The row as a line, or `LineError`. `unit`: where neither cell nor line names one. `plain`: which way a column
    went that only says "weight". `scales`: the names of the garage's scales, in small letters."""
    if row.fault:
        raise LineError(row.fault, row.column, **row.data)
    cells = dict(row.cells)
    part = _name(row)
    count = _count(cells.get("quantity", "1"))
    basis, scale, unknown = basis_of(cells, scales)
    off, on = (_masses(way, plain, basis, cells, unit) for way in ("off", "on"))
    hours, money = (_decimal(column, cells) for column in ("hours", "money"))
    if not (off or on or hours or money):
        raise LineError("line_empty", part=part)
    date, undated = _date(cells.get("date", ""))
    zone, place = _zone(cells)
    words = {"zone": "" if zone else place, "basis": unknown, "date": undated}
    note, stage = _note(cells, words), _short("stage", cells)
    return Line(row.number, part, off, on, count, stage, zone, place, hours, money, date, scale, note)


def is_total(text: str) -> bool:
    """Whether a name is one of a sum: "Total", "Sub-total interior", "Sum of all parts:"."""
    return _TOTAL.fullmatch(" ".join(re.findall(r"\w+", text[:200].casefold()))) is not None


def _name(row: Row) -> str:
    """The part's name; a sum, a heading and a line with no more than a ruler are none."""
    text = row.cells.get("part", "")
    if total := next(filter(is_total, (*row.words[:1], text)), None):
        raise LineError("line_total", "part", part=total)
    if all(map(_RULED.fullmatch, row.words)):
        raise LineError("line_blank")
    if _is_heading(row):
        raise LineError("line_heading", part=row.words[0])
    if not text or _RULED.fullmatch(text):
        raise LineError("line_no_part", "part")
    if len(text) > _LONGEST_NAME:
        raise LineError("line_too_long", "part", most=_LONGEST_NAME)
    return text


def _is_heading(row: Row) -> bool:
    """A line with a single text, in capitals, ended by a colon, framed by signs, or in another column than the name."""
    if len(row.words) != 1 or not any(map(str.isalpha, row.words[0])) or row.cells.keys() & {*NUMBERS}:
        return False
    [text] = row.words
    framed = not (text[0].isalnum() or text[-1].isalnum())
    return text.isupper() or text.endswith(":") or framed or "part" not in row.cells


def _short(column: str, cells: dict[str, str]) -> str | None:
    text = cells.get(column)
    if text and len(text) > _LONGEST_NAME:
        raise LineError("line_too_long", column, most=_LONGEST_NAME)
    return text or None


def _masses(way: Way, plain: Way, basis: Basis, cells: dict[str, str], unit: str) -> tuple[Mass, ...]:
    columns: dict[str, Basis] = {way: basis}
    if way == plain:
        columns = {"weighed": "weighed", way: basis, "mass": basis, "quoted": "quoted", "guessed": "guessed"}
    read = ((column, known, _mass(column, cells, unit)) for column, known in columns.items())
    return tuple(Mass(typed, known) for _column, known, typed in read if typed)


def _mass(column: str, cells: dict[str, str], unit: str) -> str | None:
    text = cells.get(column, "")
    if _NOTHING.fullmatch(text):
        return None
    typed = with_unit(text, cells.get("unit", "") or unit)
    try:
        return typed if read_mass(typed).exact else None
    except QuantityError as problem:
        raise LineError(problem.code, column, **problem.data) from problem


def _count(text: str) -> int:
    whole = re.fullmatch(r"(?:x|×)?\s?(\d{1,9})(?:\.0*)?\s*(?:x|×|off|pcs?\.?|pieces?|ea\.?)?", text.casefold())
    if whole is None or not 1 <= int(whole[1]) <= _MOST_PIECES:
        raise LineError("line_bad_quantity", "quantity", typed=text, most=_MOST_PIECES)
    return int(whole[1])


def _decimal(column: str, cells: dict[str, str]) -> str | None:
    text = cells.get(column, "")
    if not text or re.fullmatch(r"[-–—−]+", text):
        return None
    number = _NUMBER.fullmatch(text.casefold())
    if number is None:
        raise LineError("line_bad_number", column, typed=text)
    return number[1]


def _date(text: str) -> tuple[str | None, str]:
    """(the day, or what was typed where it is none)"""
    if re.fullmatch(r"\d{4}-\d{2}-\d{2}", text):
        return text, ""
    return None, text


def _zone(cells: dict[str, str]) -> tuple[str | None, str]:
    """(a zone by its own name, the place as typed)"""
    typed = _short("zone", cells) or ""
    plain = typed.casefold()
    return (plain, plain) if plain in ZONES else (None, typed)


def _note(cells: dict[str, str], words: dict[str, str]) -> str | None:
    """The note, and after it whatever word of another column no field takes, rather than lose it."""
    note = cells.get("note", "")
    if len(note) > _LONGEST_NOTE:
        raise LineError("line_too_long", "note", most=_LONGEST_NOTE)
    kept = [note, *(f"{name} in the file: {typed[:_LONGEST_NAME]}" for name, typed in words.items() if typed)]
    return "; ".join(filter(None, kept)) or None
