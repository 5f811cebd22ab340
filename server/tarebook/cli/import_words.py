"""What `tarebook import` says: how it reads the file, what becomes of each line, and the sums."""

from collections.abc import Iterator

from tarebook.importing.fates import FATES
from tarebook.importing.headings import MASSES, Column
from tarebook.importing.match import Correction
from tarebook.importing.run import Plan
from tarebook.importing.sheet import Sheet
from tarebook.importing.sums import ColumnSum, same, spelled
from tarebook.importing.text import ENCODINGS
from tarebook.importing.undo import Undone

_FATES = {
    "taken": ("line to take in", "lines to take in"),
    "corrected": ("line that corrects an earlier one", "lines that correct earlier ones"),
    "same": ("line that is here already", "lines that are here already"),
    "nothing": ("line with nothing to take in", "lines with nothing to take in"),
    "heading": ("heading or title", "headings and titles"),
    "total": ("total", "totals"),
    "bad": ("line not understood", "lines not understood"),
    "continued": ("line that goes on from the one above", "lines that go on from the one above"),
}
_SEPARATORS = {",": "commas", ";": "semicolons", "\t": "tabs", "|": "bars"}
_MOST_RUNS = 20  # of line numbers
_MEANT = {"off": "what came off", "on": "what went on"}
_BASIS = {"weighed": "weighed", "guessed": "guessed", "quoted": "quoted"}


def plan_lines(plan: Plan) -> Iterator[str]:
    """What taking the file in would do, for people."""
    yield f"{plan.sheet.path.name}: {_written(plan.sheet)}."
    for column in plan.sheet.header.columns:
        yield f"  {column.heading} is read as {_meaning(column, plan.plain)}"
    yield from _left(plan)
    yield f"Of {plan.sheet.lines} lines:"
    for fate in FATES:
        yield from _fate(fate, plan)
    yield from _sums(plan)


def bad_lines(plan: Plan) -> Iterator[str]:
    """Each line that is not understood, with what to do."""
    headings = {column.name: column.heading for column in plan.sheet.header.columns}
    for bad in plan.reading.bad:
        where = f"line {bad.number}" + (f", {headings.get(bad.column, bad.column)}" if bad.column else "")
        yield f"{where}: {bad.sentence} {bad.do}"


def undone_lines(done: Undone) -> Iterator[str]:
    """What became of an import that was taken back."""
    yield f"{done.withdrawn} jobs taken back, {done.restored} with the values they had before."
    if done.kept:
        yield f"Kept, as somebody has worked on them since: {', '.join(done.kept)}."


def _written(sheet: Sheet) -> str:
    encoding = ENCODINGS.get(sheet.encoding, "UTF-16")
    return f"{encoding}, {_SEPARATORS[sheet.header.separator]} between cells, {_decimals(sheet)}"


def _decimals(sheet: Sheet) -> str:
    decimals = sheet.decimals
    line, number = decimals.example or (0, "")
    why = {
        "said": ", as you say",
        "sure": f", as “{number}” in line {line} can be nothing else",
        "separator": f", as there are semicolons between cells: “{number}” in line {line} is no thousand",
    }
    return f"decimal {decimals.mark}s{why.get(decimals.found, '')}"


def _meaning(column: Column, plain: str) -> str:
    if column.name not in MASSES:
        return column.name
    way = column.name if column.name in _MEANT else plain
    unit = f", in {column.unit}" if column.unit else ""
    choice = f" (--weights {'on' if plain == 'off' else 'off'} if not)" if column.name not in _MEANT else ""
    return f"{_MEANT[way]}{', ' + _BASIS[column.name] if column.name in _BASIS else ''}{unit}{choice}"


def _left(plan: Plan) -> Iterator[str]:
    header = plan.sheet.header
    if header.unknown:
        yield f"Not read, as no such column is known: {', '.join(header.unknown)}."
    if header.second:
        yield f"Not read, as another column says it already: {', '.join(header.second)}."
    lines = [line for line, _job in plan.matched.new] + [each.line for each in plan.matched.corrected]
    named = {line.scale for line in lines if line.scale and line.scale.casefold() not in plan.place.scales}
    if named:
        yield f"No scale of the garage is called {', '.join(sorted(named))}: their weighings say so in a note."


def _fate(fate: str, plan: Plan) -> Iterator[str]:
    numbers = plan.fates[fate]
    if not numbers:
        return
    words = _FATES[fate][len(numbers) > 1]
    yield f"{len(numbers):>7} {words}" + ("" if fate in ("taken", "same") else f": {_runs(numbers)}")
    if fate == "corrected":
        yield from (f"        {_correction(each)}" for each in plan.matched.corrected)
    if fate == "same" and plan.matched.deleted:
        gone = [line.number for line in plan.matched.deleted]
        yield f"        deleted in the app since, and left so: {_runs(gone)}"


def _correction(correction: Correction) -> str:
    changes = ", ".join(f"{name} {old or 'nothing'} → {new or 'nothing'}" for name, old, new in correction.was)
    return f"line {correction.line.number}, {correction.line.part}: {changes}"


def _runs(numbers: list[int]) -> str:
    """ "2, 4–9, 12" """
    runs: list[list[int]] = []
    for number in sorted(numbers):
        if runs and number == runs[-1][1] + 1:
            runs[-1][1] = number
        else:
            runs.append([number, number])
    told = [str(first) if first == last else f"{first}–{last}" for first, last in runs[:_MOST_RUNS]]
    return ", ".join(told) + (" …" if len(runs) > _MOST_RUNS else "")


def _sums(plan: Plan) -> Iterator[str]:
    headings = {column.name: column.heading for column in plan.sheet.header.columns}
    for name, column in plan.sums.columns.items():
        if column.stands or column.totals:
            yield from _column(headings[name], column)


def _column(heading: str, column: ColumnSum) -> Iterator[str]:
    missing = "" if same(column.read, column.stands) else f"; the difference is in line {_runs(column.unread)}"
    yield f"{heading}: {spelled(column.read)} read, {spelled(column.stands)} in the column{missing}."
    if not same(column.read, column.counted):
        yield f"  Counting pieces: {spelled(column.counted)}."
    for line, amounts, fits in column.totals:
        yield f"  The total in line {line} says {spelled(amounts)}: {fits or 'not the sum of what stands above it'}."
