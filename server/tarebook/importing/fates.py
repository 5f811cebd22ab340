"""What becomes of every line of a file: its fate is one of these, and all of them together are the lines of the file.

A line is taken, corrects one, is the same as one, has nothing to take, is a heading or a total, or is not understood;
where a quoted cell goes on over several lines, those after the first belong to it.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from tarebook.errors import describe
from tarebook.importing.line import Line, LineError, Way, read_line
from tarebook.importing.sheet import Row, Sheet
from tarebook.importing.sums import Sums

FATES = ("taken", "corrected", "same", "nothing", "heading", "total", "bad", "continued")
_OF_CODE = {"line_empty": "nothing", "line_blank": "nothing", "line_heading": "heading", "line_total": "total"}


@dataclass(frozen=True)
class Bad:
    """A line that cannot be read. `column` where one cell is at fault; `sentence` and `do` as for every refusal."""

    number: int
    column: str | None
    sentence: str
    do: str


@dataclass
class Reading:
    """A sheet read: its lines, and the numbers of those that are none, by their fate."""

    lines: list[Line] = field(default_factory=list)
    others: dict[str, list[int]] = field(default_factory=lambda: {fate: [] for fate in FATES})
    bad: list[Bad] = field(default_factory=list)
    columns: Mapping[str, str] = field(default_factory=dict)


def read_all(sheet: Sheet, plain: Way, scales: frozenset[str]) -> tuple[Reading, Sums]:
    """Every line of the sheet. `plain`: which way went what a column only calls weight."""
    found, sums = Reading(), Sums(sheet.unit)
    for row in sheet.rows():
        found.others["continued"] += range(row.number + 1, row.number + row.lines)
        try:
            line = _line(row, sheet, plain, scales, sums)
            found.lines.append(line)
            sums.line(row, line, plain)
        except LineError as problem:
            fate = _OF_CODE.get(problem.code, "bad")
            found.others[fate].append(row.number)
            _note_aside(row, fate, problem, found, sums, plain)
    return found, sums


def _line(row: Row, sheet: Sheet, plain: Way, scales: frozenset[str], sums: Sums) -> Line:
    if row.heading:
        raise LineError("line_heading")
    if not row.words and row.fault is None:
        raise LineError("line_blank")
    if sums.is_sum(row):
        raise LineError("line_total", part=row.cells.get("part", ""))
    return read_line(row, sheet.unit, plain, scales)


def _note_aside(row: Row, fate: str, problem: LineError, found: Reading, sums: Sums, plain: Way) -> None:
    if fate == "total":
        sums.total(row)
    elif fate == "heading":
        sums.section()
    elif fate == "bad":
        sums.line(row, None, plain)
        said = describe(problem.code, problem.data)
        found.bad.append(Bad(row.number, problem.column, said["sentence"], said["do"]))
