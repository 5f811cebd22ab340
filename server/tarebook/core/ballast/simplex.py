"""A linear programme in a few bounded counts, kept as a table that goes on when a bound has moved.

Minimise Σ cost_i n_i, every count n_i and every row Σ weight_ri n_i between bounds of its own. A row is one more
variable. Some variables stand at a bound, the others are told by them; a step of the dual simplex method lets one that
is beyond a bound change places with one that stands at a bound. Moving a bound leaves the table right, so each branch
of a search goes on from the table of the branch before it.

Trusted are only the multipliers it ends with, one a row: `floor_of` is below every choice's cost whatever they are, so
rounding in the table costs time and never an answer.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import inf, isfinite

from tarebook.core.numbers.plain import dot

_TINY = 1e-10  # beyond a bound, in sizes of a row
_LEVER = 1e-7  # less is rounding, and dividing by it would be wrong
_PIVOTS = 200
_ROUNDING = 1e-14  # of all that is added up: dozens of terms, each right to 1e-16


@dataclass(frozen=True, slots=True)
class Row:
    """low ≤ Σ weights_i n_i ≤ high, in whole numbers. `is_whole`: a search may branch on the sum."""

    weights: Sequence[float]
    low: float
    high: float
    is_whole: bool = False


@dataclass(frozen=True, slots=True)
class Bounds:
    """Of the counts, then of the rows."""

    low: list[float]
    high: list[float]


@dataclass(slots=True)
class Table:
    """`lines[k][j]`: what the variable `told[k]` grows by when `standing[j]` grows by one; `costs[j]`: the cost so."""

    lines: list[list[float]]
    costs: list[float]
    told: list[int]
    standing: list[int]
    is_high: list[bool]


@dataclass(frozen=True, slots=True)
class Solved:
    """`values` of all variables. `stuck`: the line that cannot be brought within its bounds."""

    values: list[float]
    stuck: int | None


@dataclass(frozen=True, slots=True)
class Floor:
    """cost ≥ Σ weights_i n_i + held for all that the bounds allow; `least` of that, and the `error` of its rounding."""

    weights: list[float]
    held: float
    least: float
    error: float


def new_table(costs: Sequence[float], rows: Sequence[Row]) -> Table:
    return Table(
        lines=[[weight / size_of(row.weights) for weight in row.weights] for row in rows],
        costs=[cost / size_of(costs) for cost in costs],
        told=[len(costs) + row for row in range(len(rows))],
        standing=list(range(len(costs))),
        is_high=[cost < 0.0 for cost in costs],
    )


def copy_of(table: Table) -> Table:
    return Table(
        lines=[line[:] for line in table.lines],
        costs=table.costs[:],
        told=table.told[:],
        standing=table.standing[:],
        is_high=table.is_high[:],
    )


def size_of(weights: Sequence[float]) -> float:
    """The largest weight, by which a row is divided in the table."""
    return max([abs(weight) for weight in weights], default=0.0) or 1.0


def solve(table: Table, bounds: Bounds) -> Solved:
    """Steps until every variable is within its bounds, or one cannot be. Bounds of rows in their sizes."""
    values = [0.0] * len(bounds.low)
    step = 0
    while True:
        _lay(table, bounds, values)
        line = _worst(table, bounds, values)
        if line is None or step == _PIVOTS:
            return Solved(values, None)
        is_under = is_below(table, bounds, values, line)
        column = _entering(table, bounds, line, is_under)
        if column is None:
            return Solved(values, line)
        _swap(table, line, column, not is_under)
        step += 1


def is_below(table: Table, bounds: Bounds, values: Sequence[float], line: int) -> bool:
    return values[table.told[line]] < bounds.low[table.told[line]]


def _lay(table: Table, bounds: Bounds, values: list[float]) -> None:
    for variable, is_high in zip(table.standing, table.is_high, strict=True):
        values[variable] = (bounds.high if is_high else bounds.low)[variable]
    stand = [values[variable] for variable in table.standing]
    for variable, line in zip(table.told, table.lines, strict=True):
        values[variable] = dot(line, stand)


def _worst(table: Table, bounds: Bounds, values: Sequence[float]) -> int | None:
    """The line whose variable is furthest beyond its bounds."""
    line, most = None, _TINY
    for k, variable in enumerate(table.told):
        value = values[variable]
        beyond = max(bounds.low[variable] - value, value - bounds.high[variable])
        if beyond > most:
            line, most = k, beyond
    return line


def _entering(table: Table, bounds: Bounds, at: int, is_under: bool) -> int | None:
    """The column that brings the line back for the least cost a unit; of two the one with the longer lever."""
    column, least, longest = None, inf, 0.0
    for j, weight in enumerate(table.lines[at]):
        variable = table.standing[j]
        lever = -weight if is_under == table.is_high[j] else weight
        if not lever > _LEVER or bounds.low[variable] == bounds.high[variable]:
            continue
        ratio = abs(table.costs[j]) / lever
        if ratio < least or (ratio == least and lever > longest):
            column, least, longest = j, ratio, lever
    return column


def _swap(table: Table, at: int, column: int, to_high: bool) -> None:
    by = table.lines[at][column]
    own = [-weight / by for weight in table.lines[at]]
    own[column] = 1.0 / by
    table.lines[at] = own
    for line in (*table.lines, table.costs):
        if line is not own:
            _replace(line, own, column)
    leaving = table.told[at]
    table.told[at] = table.standing[column]
    table.standing[column] = leaving
    table.is_high[column] = to_high


def _replace(line: list[float], own: Sequence[float], column: int) -> None:
    factor = line[column]
    if factor == 0.0:
        return
    line[column] = 0.0
    line[:] = [weight + factor * other for weight, other in zip(line, own, strict=True)]


def floor_of(costs: Sequence[float], rows: Sequence[Row], multipliers: Sequence[float], bounds: Bounds) -> Floor:
    """`multipliers`: what each row counts for a unit; of one without a bound on that side, nothing."""
    weights = list(costs)
    held = total = 0.0
    for row, (by, spec) in enumerate(zip(multipliers, rows, strict=True), start=len(costs)):
        end = (bounds.low if by > 0.0 else bounds.high)[row]
        if by == 0.0 or not isfinite(end):
            continue
        held += by * end
        total += abs(by * end)
        total += _take(weights, by, spec.weights, bounds.high)
    least = held
    for at, weight in enumerate(weights):
        least += weight * (bounds.low if weight > 0.0 else bounds.high)[at]
        total += abs(costs[at]) * bounds.high[at]
    return Floor(weights, held, least, total * _ROUNDING)


def _take(weights: list[float], by: float, row: Sequence[float], high: Sequence[float]) -> float:
    """Takes `by` times a row away; gives how large what was taken can be."""
    total = 0.0
    for at, weight in enumerate(row):
        weights[at] -= by * weight
        total += abs(by * weight) * high[at]
    return total
