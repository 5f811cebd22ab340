"""The sum of what was read beside the sum of the column as it stands, and what the sheet's own totals lines say.

The two are found by different ways: what was read from the masses of the lines taken, the column from every cell that
has a digit, with no look at whether its line could be read. Units are never converted here, so every sum is exact.
"""

import re
from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Context, Inexact
from fractions import Fraction

from tarebook.core.numbers.typed import same_marks
from tarebook.core.numbers.units import MASS
from tarebook.importing.headings import MASSES
from tarebook.importing.line import Line, Way
from tarebook.importing.sheet import Row, with_unit

Amounts = Mapping[str, Fraction]
"""Unit as written in our table, or as typed where it is none of ours, and how many of it."""
_LONGEST = 64
_AMOUNT = re.compile(
    r"(?P<sign>-)?\s?(?:(?:(?P<whole>\d{1,15})[ -])?(?P<above>\d{1,15}) ?/ ?(?P<below>\d{1,15})"
    r"|(?P<number>\d{0,15}\.\d{1,15}|\d{1,15}\.?))\s*(?P<unit>[^\W\d_]*)"
)


@dataclass
class ColumnSum:
    """One column's sums. `counted`: what was read times the pieces. `unread`: lines that stand in the column's sum and
    were not read. `totals`: (line, what it says) of each totals line."""

    read: dict[str, Fraction] = field(default_factory=lambda: defaultdict(Fraction))
    counted: dict[str, Fraction] = field(default_factory=lambda: defaultdict(Fraction))
    stands: dict[str, Fraction] = field(default_factory=lambda: defaultdict(Fraction))
    section: dict[str, Fraction] = field(default_factory=lambda: defaultdict(Fraction))
    section_counted: dict[str, Fraction] = field(default_factory=lambda: defaultdict(Fraction))
    unread: list[int] = field(default_factory=list)
    totals: list[tuple[int, Amounts, str]] = field(default_factory=list)

    def fits(self, said: Amounts) -> str:
        """What a totals line's amounts are the sum of, in words; "" when of nothing that stands above it."""
        sums = {
            "the column": self.stands, "the column, counting pieces": self.counted,
            "its section": self.section, "its section, counting pieces": self.section_counted,
        }  # fmt: skip
        return next((words for words, amounts in sums.items() if same(said, amounts)), "")


class Sums:
    """The sums of every column of masses, line by line as they are met."""

    def __init__(self, unit: str) -> None:
        self.unit = unit
        self.columns: dict[str, ColumnSum] = {}

    def line(self, row: Row, line: Line | None, plain: Way) -> None:
        """A row that stands in the columns' sums, and the line it was read as."""
        for name, text in self._cells(row).items():
            column, amounts = self.columns.setdefault(name, ColumnSum()), amounts_of(text)
            read = amounts_of(_read_as(line, name, text, plain) or "")
            _add(column.stands, amounts)
            _add(column.section, amounts)
            _add(column.read, read)
            _add(column.counted, read, line.count if line else 1)
            _add(column.section_counted, read, line.count if line else 1)
            if any(amounts.values()) and not read:
                column.unread.append(row.number)

    def total(self, row: Row) -> None:
        """A totals line."""
        for name, text in self._cells(row).items():
            column, amounts = self.columns.setdefault(name, ColumnSum()), amounts_of(text)
            if amounts:
                column.totals.append((row.number, amounts, column.fits(amounts)))
        self.section()

    def section(self) -> None:
        """A new section begins."""
        for column in self.columns.values():
            column.section.clear()
            column.section_counted.clear()

    def is_sum(self, row: Row) -> bool:
        """Whether a row without a part's name, or called a total of something, has the sum of what stands above it."""
        part = row.cells.get("part", "")
        if part and not part.casefold().startswith(("total", "sum ")):
            return False
        known = [(self.columns[name], text) for name, text in self._cells(row).items() if name in self.columns]
        return any(any(said.values()) and column.fits(said) for column, text in known for said in [amounts_of(text)])

    def _cells(self, row: Row) -> dict[str, str]:
        unit = row.cells.get("unit", "") or self.unit
        return {name: with_unit(row.cells[name], unit) for name in MASSES if name in row.cells}


def amounts_of(text: str) -> dict[str, Fraction]:
    """Every number of a text with the unit behind it, added up by unit."""
    found: dict[str, Fraction] = defaultdict(Fraction)
    for one in _AMOUNT.finditer(same_marks(text)) if len(text) <= _LONGEST else ():
        below = int(one["below"] or 1)
        size = (
            Fraction(one["number"])
            if one["number"]
            else int(one["whole"] or 0) + Fraction(int(one["above"]), below or 1)
        )
        found[MASS.names.get(one["unit"], one["unit"])] += -size if one["sign"] else size
    return dict(found)


def same(one: Amounts, other: Amounts) -> bool:
    """Equal but for units of which there is nothing."""
    return {unit: size for unit, size in one.items() if size} == {unit: size for unit, size in other.items() if size}


def spelled(amounts: Amounts) -> str:
    """All digits of it: "12.5 kg + 3 1/3 lb"."""
    return " + ".join(f"{_digits(size)} {unit}".strip() for unit, size in sorted(amounts.items()) if size) or "0"


def _digits(size: Fraction) -> str:
    exact = Context(prec=40, traps=[Inexact])
    try:
        return f"{exact.divide(size.numerator, size.denominator):f}"
    except Inexact:
        whole, rest = divmod(size, 1)
        return f"{whole} {rest}" if whole else str(rest)


def _read_as(line: Line | None, name: str, text: str, plain: Way) -> str | None:
    """What of the cell went into the line."""
    if line is None:
        return None
    masses = line.masses(plain if name not in ("off", "on") else name)  # type: ignore[arg-type]
    return next((mass.typed for mass in masses if mass.typed == text), None)


def _add(to: dict[str, Fraction], amounts: Amounts, times: int = 1) -> None:
    for unit, size in amounts.items():
        to[unit] += size * times
