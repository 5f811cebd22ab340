"""A file of separated values as numbered rows with cells by column.

The header may stand under a title; columns come in any order (`headings`). A first reading finds out how the file
writes its decimals and its dates, and how many lines it has; a second one gives the rows.
"""

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from tarebook.errors import TarebookError
from tarebook.importing.dates import Order, day_of, order_in
from tarebook.importing.decimals import Decimals, Mark, decide
from tarebook.importing.headings import NUMBERS, Header, header_in, is_own_report
from tarebook.importing.text import SEPARATORS, encoding_of, numbered_lines, opened, records, split

_HEADER_WITHIN = 20  # lines a title may take before the header


@dataclass(frozen=True)
class Row:
    """What stands in a line of the file: its number, its cells by column, and all that is in it, as `words`.

    `lines`: more than one where a quoted cell goes on. `heading`: the one that names the columns, again or for the
    first time, or what stands above it. `fault`, a code with its data, when it is not readable.
    """

    number: int
    cells: Mapping[str, str]
    fault: str | None = None
    column: str | None = None
    data: Mapping[str, Any] = field(default_factory=dict)
    lines: int = 1
    words: tuple[str, ...] = ()
    heading: bool = False


@dataclass(frozen=True)
class Sheet:
    """What the file turned out to be. `unit`: of numbers whose cell, column and line name none."""

    path: Path
    encoding: str
    header: Header
    names: tuple[str, ...]  # the header's own words, to know it again
    lines: int = 0
    own_report: bool = False
    unit: str = ""
    decimals: Decimals = field(default_factory=Decimals)
    dates: Order = ""

    def rows(self) -> Iterator[Row]:
        """Every line of the file, empty ones too. Raises `file_unreadable`."""
        with _readable(self.path), opened(self.path, self.encoding) as text:
            for number, lines, cells in records(text, self.header.separator):
                yield replace(self._row(number, cells), lines=lines)

    def _row(self, number: int, cells: list[str] | None) -> Row:
        if cells is None:
            title = number < self.header.line
            return Row(number, {}, None if title else "line_open_quote", heading=title)
        words = tuple(filter(None, map(_tidy, cells)))
        if number <= self.header.line or words == self.names:
            return Row(number, {}, words=words, heading=bool(words))
        found = self._cells(cells)
        for name in NUMBERS:
            if name in found and (readings := self.decimals.doubtful(found[name])):
                data = {"typed": found[name], "instead": " or ".join(readings)}
                return Row(number, {}, "line_two_readings", name, data, words=words)
        return Row(number, {name: self._plain(name, text) for name, text in found.items()}, words=words)

    def looked_over(self, said: Mark | None) -> "Sheet":
        """With what only the whole file tells: its decimals, its dates, how many lines it has."""
        numbers: list[tuple[int, str]] = []
        dates: list[str] = []
        lines = 0
        with _readable(self.path), opened(self.path, self.encoding) as text:
            for number, taken, cells in records(text, self.header.separator):
                lines += taken
                found = self._cells(cells) if cells and number > self.header.line else {}
                numbers += [(number, found[name]) for name in NUMBERS if name in found]
                dates += [found["date"]] if "date" in found else []
        decimals = decide(numbers, self.header.separator, said)
        return replace(self, lines=lines, decimals=decimals, dates=order_in(dates))

    def _plain(self, name: str, text: str) -> str:
        if name == "date":
            return day_of(text, self.dates) or text
        return self.decimals.plain(text) if name in NUMBERS else text

    def _cells(self, cells: list[str]) -> dict[str, str]:
        found: dict[str, str] = {}
        for column in self.header.columns:
            text = _tidy(cells[column.place]) if column.place < len(cells) else ""
            if text:
                text = with_unit(text, column.unit)
                found[column.name] = f"{found[column.name]}; {text}" if column.name in found else text
        return found


def read_sheet(path: Path, said: Mark | None = None, unit: str = "") -> Sheet:
    """The file as a sheet. `said`: the mark before decimals, and `unit` the unit, where a person has told.

    Raises `file_unreadable`, `import_no_header` and `import_column_twice`.
    """
    with _readable(path):
        encoding = encoding_of(path)
        header, cells = _header(path, encoding)
    own = is_own_report(cells)
    if own:  # its figures are rounded: what it calls weighed is none of a scale's readings
        header = replace(header, columns=tuple(each for each in header.columns if each.name != "basis"))
    return Sheet(path, encoding, header, tuple(filter(None, map(_tidy, cells))), 0, own, unit).looked_over(said)


def with_unit(text: str, unit: str) -> str:
    """A number with a unit from elsewhere, unless it has one; ½ is a number, a dash is none."""
    is_bare = any(map(str.isnumeric, text)) and not any(map(str.isalpha, text))
    return f"{text} {unit}" if unit and is_bare else text


@contextmanager
def _readable(path: Path) -> Iterator[None]:
    try:
        yield
    except OSError as problem:
        raise TarebookError("file_unreadable", file=str(path), reason=problem.strerror or str(problem)) from problem


def _tidy(cell: str) -> str:
    return " ".join(cell.replace("\0", "").split())


def _header(path: Path, encoding: str) -> tuple[Header, list[str]]:
    """The line that names most columns, and its cells."""
    with opened(path, encoding) as text:
        first = [line for line, _ in zip(numbered_lines(text), range(_HEADER_WITHIN), strict=False)]
    usable: list[tuple[Header, list[str]]] = []
    for number, line in first:
        for separator in SEPARATORS:
            cells = split(line, separator) or []
            header = header_in(number, separator, cells)
            usable += [(header, cells)] if header else []
    if not usable:
        raise TarebookError("import_no_header", file=str(path))
    return max(usable, key=lambda found: len(found[0].columns))
