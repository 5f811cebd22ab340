"""The line that names the columns: which heading means what, in the wordings people use.

A heading may carry its unit, in brackets or after it ("Weight (lb)", "Weight, kg", "off in oz"), or be nothing but a
unit ("kg"). What is not known here is named to the person and left alone; so is a second column of one meaning, but for
notes, which go together.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from tarebook.core.numbers.units import MASS
from tarebook.errors import TarebookError

MASSES = ("off", "on", "mass", "weighed", "guessed", "quoted")
NUMBERS = (*MASSES, "quantity", "hours", "money")
REPORT_COLUMNS = ("within", "basis", "job", "state", "trim")  # those of `tarebook report --format csv` alone
_LONGEST = 60  # characters; nothing longer is a heading
_SAID = {
    "part": "part, parts, part name, item, items, item name, name, description, component, thing, what",
    "off": "off, removed, came off, taken off, weight off, off weight, mass off, weight removed, removed weight, old, "
    "old weight, old part, stock, stock weight, original, original weight, oem, oem weight",
    "on": "on, added, went on, put on, weight on, on weight, mass on, weight added, added weight, new, new weight, "
    "new part, replacement, replacement weight",
    "mass": "mass, weight, wt, each, weight each, mass each, unit weight, weight per piece, part weight, item weight, "
    "weight ea",
    "weighed": "weighed, weighed weight, actual, actual weight, measured, measured weight, scale weight, "
    "scale reading, reading",
    "guessed": "guessed, guess, estimate, estimated, est, est weight, estimated weight, guessed weight, approx, "
    "approx weight, approximate weight",
    "quoted": "quoted, quoted weight, claim, claimed, claimed weight, listed weight, book weight, brochure, "
    "brochure weight, advertised weight, catalogue weight",
    "unit": "unit, units, uom, weight unit, unit of weight",
    "quantity": "quantity, qty, count, pcs, pieces, no of, no off, number of, how many, quant, amount",
    "stage": "stage, phase, group, section, job",
    "zone": "zone, location, place, where, area, position, where in the car",
    "hours": "hours, hour, hrs, h, time, labour, labor, time taken, labour hours",
    "money": "money, cost, costs, price, paid, spent, price paid, £, $, €, gbp, usd, eur",
    "note": "note, notes, comment, comments, remark, remarks, details, info, memo",
    "date": "date, day, when, date removed, removed on, date fitted, fitted on, date weighed",
    "scale": "scale, scales, weighed on, weighed with, which scale, scale used, scale name",
    "basis": "basis, source, how known, how, how weighed, weight basis, weighed or guessed",
}
COLUMNS = tuple(_SAID)
_MEANT = {word: name for name, words in _SAID.items() for word in words.split(", ")}
_HOURS = ("", "h", "hr", "hrs", "hour", "hours")


@dataclass(frozen=True)
class Column:
    """One column: what it means, its heading as typed, its place in the line, and the unit its heading gives or ''."""

    name: str
    heading: str
    place: int
    unit: str = ""


@dataclass(frozen=True)
class Header:
    """The columns that are read, and the headings of those that are not."""

    line: int
    separator: str
    columns: tuple[Column, ...]
    unknown: tuple[str, ...]
    second: tuple[str, ...]
    """Headings that mean what another column means already."""

    def named(self, name: str) -> Column | None:
        return next((column for column in self.columns if column.name == name), None)


def header_in(line: int, separator: str, cells: list[str]) -> Header | None:
    """The line as one that names columns: a part and something more; else None. Raises `import_column_twice`."""
    found = [_column(place, cell) for place, cell in enumerate(cells)]
    known = [column for column in found if column.name]
    columns, second = _one_each(known)
    if "part" not in [column.name for column in columns] or len(columns) == 1:
        return None
    _check_twice(known, line)
    unknown = tuple(column.heading for column in found if not column.name and column.heading)
    return Header(line, separator, tuple(columns), unknown, second)


def is_own_report(cells: list[str]) -> bool:
    """Whether these are the headings of the table that Tarebook itself writes of a garage's jobs."""
    return set(REPORT_COLUMNS) <= {cell.strip().casefold() for cell in cells}


def _column(place: int, cell: str) -> Column:
    heading = " ".join(cell.replace("\0", "").split())
    if len(heading) > _LONGEST:
        return Column("", f"{heading[:_LONGEST]}…", place)
    before, _bracket, rest = heading.replace("[", "(").partition("(")
    inside = _words(rest.replace("]", ")").partition(")")[0])
    for words, unit in _readings(_words(before), inside):
        name = _MEANT.get(words, "mass" if not words and unit else "")
        if name in MASSES or (name and not unit):
            fits = name != "hours" or inside in _HOURS
            return Column(name if fits else "", heading, place, unit)
    return Column("", heading, place)


def _readings(words: str, inside: str) -> Iterator[tuple[str, str]]:
    """(what the heading says, its unit), the likeliest first."""
    if inside in MASS.names:
        yield words, inside
    yield words, ""
    *before, last = words.split() or [""]
    if last in MASS.names:
        yield " ".join(before[:-1] if before[-1:] == ["in"] else before), last


def _words(text: str) -> str:
    return " ".join(re.sub(r"[^\w£$€]|_", " ", text.casefold()).split())


def _one_each(known: list[Column]) -> tuple[list[Column], tuple[str, ...]]:
    """The column of each meaning, notes all; one that bears the very name goes before others, and then the first."""
    chosen: dict[str, Column] = {}
    for column in known:
        if column.name not in chosen or _words(column.heading) == column.name != _words(chosen[column.name].heading):
            chosen[column.name] = column
    columns = [column for column in known if column.name == "note" or chosen[column.name] is column]
    return columns, tuple(column.heading for column in known if column not in columns)


def _check_twice(known: list[Column], line: int) -> None:
    headings = [column.heading.casefold() for column in known]
    for column, heading in zip(known, headings, strict=True):
        if headings.count(heading) > 1:
            raise TarebookError("import_column_twice", column=column.heading, line=line)
