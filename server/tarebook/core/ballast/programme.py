"""An exact integer programme of a few whole numbers: least cost under linear rows, by branch and bound.

Counts n_i lie between bounds; a row holds Σ weight_i n_i between two bounds. Weights, bounds and costs are whole
numbers that a double holds exactly, so a row holds or does not. Costs are compared in whole steps: what differs by
less is alike.

At every branch each row in its turn narrows the counts, and so does the cost that is still to be beaten; then a linear
programme is solved (`core/ballast/simplex`). A branch is left when its floor is above what is to be beaten, or when the
rows prove that nothing is in it. Else a count that is no whole number splits it in two, or better a sum of counts that
must be whole: where many places take the same block, how many there are in all says more than how many at one place.
The half nearer to the linear programme goes first. Both languages take the same steps in the same doubles.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field
from math import ceil, floor, gcd, inf

from tarebook.core.ballast.simplex import (
    Bounds,
    Floor,
    Row,
    Solved,
    Table,
    copy_of,
    floor_of,
    is_below,
    new_table,
    size_of,
    solve,
)  # fmt: skip
from tarebook.core.numbers.plain import dot

__all__ = ["Bounds", "Effort", "Found", "Row", "least"]

MOST_BRANCHES = 10_000  # of one search
FEWEST_BRANCHES = 200  # also when others have used up all there were
_NEAR = 1e-6  # as near to a whole number as this is one


@dataclass(slots=True)
class Effort:
    """How many branches a chain of searches may still look at, and whether each came to its end."""

    left: int = 30_000
    is_proven: bool = True

    def share(self) -> int:
        """How many this search may look at."""
        return max(FEWEST_BRANCHES, min(MOST_BRANCHES, self.left))

    def spend(self, branches: int, is_done: bool) -> None:
        self.left -= branches
        self.is_proven = self.is_proven and is_done


@dataclass(frozen=True, slots=True)
class Found:
    """`cost` = Σ costs_i counts_i. No other choice is a step cheaper, if the effort says that it is proven."""

    counts: tuple[int, ...]
    cost: float


def least(
    costs: Sequence[float], rows: Sequence[Row], limits: Bounds, effort: Effort, step: float = 1.0,
    enough: float = -inf,
) -> Found | None:  # fmt: skip
    """The cheapest counts, or None when none satisfy the rows. Stops at the first whose cost is `enough` or less."""
    search = _Search(costs, rows, step, enough)
    most, branches = effort.share(), 0
    search.open.append(search.root(limits))
    while search.open and branches < most:
        search.look(search.open.pop())
        branches += 1
    effort.spend(branches, not search.open)
    return search.best


@dataclass(slots=True)
class _Branch:
    table: Table
    bounds: Bounds


@dataclass(slots=True)
class _Search:
    """`ceiling`: what a cost must not exceed to be a step better than the best."""

    costs: Sequence[float]
    rows: Sequence[Row]
    step: float
    enough: float
    best: Found | None = None
    open: list[_Branch] = field(default_factory=list)
    ceiling: float = inf
    sizes: list[float] = field(default_factory=list)
    unit: float = 1.0
    common: float = 1.0
    sums: list[int] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.sizes = [size_of(row.weights) for row in self.rows]
        self.unit = size_of(self.costs)
        self.sums = [row for row, spec in enumerate(self.rows, start=len(self.costs)) if spec.is_whole]
        # Every cost is a multiple of what single ones have in common; else equal blocks would all be tried.
        self.common = float(gcd(*(int(cost) for cost in self.costs))) or 1.0

    def root(self, limits: Bounds) -> _Branch:
        low = [*limits.low, *(row.low for row in self.rows)]
        high = [*limits.high, *(row.high for row in self.rows)]
        return _Branch(new_table(self.costs, self.rows), Bounds(low, high))

    def look(self, branch: _Branch) -> None:
        if not self._narrow(branch.bounds):
            return
        bounds = Bounds(self._in_sizes(branch.bounds.low), self._in_sizes(branch.bounds.high))
        solved = solve(branch.table, bounds)
        if solved.stuck is None:
            is_left = self._is_beaten(branch, solved)
        else:
            is_left = self._is_impossible(branch, bounds, solved, solved.stuck)
        if not is_left:
            self._split(branch, solved)

    def _narrow(self, bounds: Bounds) -> bool:
        """Every row, and the cost to be beaten, narrow the counts; false when one cannot hold."""
        for row, spec in enumerate(self.rows, start=len(self.costs)):
            if not _hold_to(spec.weights, 1.0, bounds.high[row], bounds):
                return False
            if not _hold_to(spec.weights, -1.0, -bounds.low[row], bounds):
                return False
        return _hold_to(self.costs, 1.0, self.ceiling, bounds)

    def _in_sizes(self, bounds: Sequence[float]) -> list[float]:
        first = len(self.costs)
        return [*bounds[:first], *(bound / size for bound, size in zip(bounds[first:], self.sizes, strict=True))]

    def _is_beaten(self, branch: _Branch, solved: Solved) -> bool:
        """Whether no counts of this branch are better than the best, once its own counts are looked at."""
        by = self._multipliers(branch.table, branch.table.costs, self.unit)
        below = floor_of(self.costs, self.rows, by, branch.bounds)
        if self._is_above(below):
            return True
        self._consider([floor(value + 0.5) for value in solved.values[: len(self.costs)]], branch.bounds)
        if self._is_above(below):
            return True
        _hold_to(below.weights, 1.0, self.ceiling + 2.0 * below.error - below.held, branch.bounds)
        return False

    def _is_above(self, below: Floor) -> bool:
        return below.least - below.error > self.ceiling

    def _is_impossible(self, branch: _Branch, bounds: Bounds, solved: Solved, line: int) -> bool:
        """Whether the line that is stuck proves that the rows allow nothing here."""
        count, stuck = len(self.costs), branch.table.told[line]
        sign = -1.0 if is_below(branch.table, bounds, solved.values, line) else 1.0
        if stuck < count:
            weights: Sequence[float] = [1.0 if at == stuck else 0.0 for at in range(count)]
        else:
            weights = self.rows[stuck - count].weights
        by = self._multipliers(branch.table, branch.table.lines[line], sign * size_of(weights))
        below = floor_of([sign * weight for weight in weights], self.rows, by, branch.bounds)
        end = branch.bounds.high[stuck] if sign > 0.0 else -branch.bounds.low[stuck]
        return below.least - below.error > end

    def _multipliers(self, table: Table, line: Sequence[float], size: float) -> list[float]:
        """Of the rows that stand at a bound, in whole numbers again."""
        by = [0.0] * len(self.rows)
        for column, variable in enumerate(table.standing):
            row = variable - len(self.costs)
            if row >= 0:
                by[row] = line[column] * size / self.sizes[row]
        return by

    def _consider(self, counts: Sequence[int], bounds: Bounds) -> None:
        if not all(low <= count <= high for low, count, high in zip(bounds.low, counts, bounds.high, strict=False)):
            return
        if not all(row.low <= dot(row.weights, counts) <= row.high for row in self.rows):
            return
        cost = dot(self.costs, counts)
        if cost > self.ceiling:
            return
        self.best = Found(tuple(counts), cost)
        better = floor((ceil(cost / self.step) - 1) * self.step / self.common) * self.common
        self.ceiling = -inf if cost <= self.enough else better

    def _split(self, branch: _Branch, solved: Solved) -> None:
        low, high = branch.bounds.low, branch.bounds.high
        at = self._split_at(solved.values, branch.bounds)
        if at is None:
            return
        value = solved.values[at]
        cut = float(min(max(low[at], floor(value + _NEAR)), high[at] - 1.0))
        under = _Branch(copy_of(branch.table), Bounds(low[:], high[:]))
        over = _Branch(branch.table, branch.bounds)
        under.bounds.high[at] = cut
        over.bounds.low[at] = cut + 1.0
        self.open += [over, under] if value - cut < 0.5 else [under, over]

    def _split_at(self, values: Sequence[float], bounds: Bounds) -> int | None:
        """A sum that must be whole and is not, else a count that is not, the nearest to being known; else any open."""
        places = range(len(self.costs))
        for of in (self.sums, places):
            at = _most_undecided(of, values, bounds)
            if at is not None:
                return at
        return next((at for at in places if bounds.low[at] < bounds.high[at]), None)


def _most_undecided(of: Sequence[int], values: Sequence[float], bounds: Bounds) -> int | None:
    chosen, most = None, 0.0
    for at in of:
        above = values[at] - floor(values[at])
        away = min(above, 1.0 - above)
        width = bounds.high[at] - bounds.low[at]
        if away > _NEAR and width > 0.0 and away / width > most:
            chosen, most = at, away / width
    return chosen


def _hold_to(weights: Sequence[float], sign: float, most: float, bounds: Bounds) -> bool:
    """Narrows the counts to those with which Σ sign · weights_i n_i ≤ most can still hold; false when none can."""
    if most == inf:
        return True
    low, high, room = bounds.low, bounds.high, most
    for at, one in enumerate(weights):
        weight = sign * one
        room -= weight * (low if weight > 0.0 else high)[at]
    if room < 0.0:
        return False
    for at, one in enumerate(weights):
        weight = sign * one
        if weight > 0.0:
            high[at] = min(high[at], low[at] + floor(room / weight))
        elif weight < 0.0:
            low[at] = max(low[at], high[at] - floor(room / -weight))
    return True
