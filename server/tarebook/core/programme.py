"""An exact integer programme of a few whole numbers: least cost under linear rows, by branch and bound.

Counts n_i lie between 0 and a limit; a row says Σ weight_i n_i ≤ most. Weights and costs are whole numbers that a
double holds exactly, so a row holds or does not. Costs are compared in whole steps: what differs by less is alike.

At every branch a linear programme is solved, by the simplex method on its dual, which needs no first feasible point.
Its multipliers λ ≥ 0 make one more row: for every choice the rows allow, cost ≥ Σ (cost_i + Σ λ_r weight_ri) n_i −
Σ λ_r most_r. That holds for any λ ≥ 0, however roughly the simplex stopped, so its rounding costs time and never the
answer. The search goes depth first, nearest to the linear programme's count first, and leaves a branch when a
row, or that one for a better cost, can no longer hold. Both languages take the same steps in the same doubles.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from math import ceil, floor, gcd, inf

MOST_NODES = 20_000  # then the best so far is given as not proven
_TINY = 1e-9
_SLACK = 0.5  # of a unit that costs are counted in: what rounding in the multipliers' row may come to
_SLIM = 1e-6  # the same, for a proof without costs, where weights are about one
_PIVOTS = 200


@dataclass(frozen=True, slots=True)
class Row:
    """Σ weights_i n_i ≤ most."""

    weights: Sequence[float]
    most: float


@dataclass(slots=True)
class Found:
    """`cost` = Σ costs_i counts_i. `proven`: none is a step cheaper. `row`: holds for all that are as good."""

    counts: tuple[int, ...]
    cost: float
    proven: bool
    row: Row


def least(
    costs: Sequence[float], rows: Sequence[Row], limits: Sequence[int], step: float = 1.0, enough: float = -inf
) -> Found | None:
    """The cheapest counts, or None when none satisfy the rows. Stops at the first whose cost is `enough` or less."""
    root = _relax(costs, rows, limits)
    search = _Search(costs, rows, limits, step, enough)
    search.go_on(0, [0.0] * len(rows), 0.0)
    if search.best is None:
        return None
    most = ceil(search.cost / step) * step + root.held + _SLACK
    return Found(search.best, search.cost, search.nodes <= MOST_NODES, Row(root.weights, most))


@dataclass(slots=True)
class _Search:
    """Depth first. `ceiling`: what a cost must not exceed to be a step better than the best."""

    costs: Sequence[float]
    rows: Sequence[Row]
    limits: Sequence[int]
    step: float
    enough: float
    best: tuple[int, ...] | None = None
    cost: float = inf
    ceiling: float = inf
    common: float = 1.0
    nodes: int = 0
    done: bool = False
    rest: list[list[float]] = field(default_factory=list)
    counts: list[int] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.counts = [0] * len(self.limits)
        # Every cost is a multiple of what single ones have in common; else equal blocks would all be tried.
        self.common = float(gcd(*(int(cost) for cost in self.costs))) or 1.0
        self.rest = [
            _least_after(weights, self.limits) for weights in (*(row.weights for row in self.rows), self.costs)
        ]

    def go_on(self, at: int, used: list[float], cost: float) -> None:
        """Choose the count at place `at` and all after it; `used`: what each row has taken up before."""
        self.nodes += 1
        if self.nodes > MOST_NODES:
            self.done = True
        elif at == len(self.limits):
            # Where there is no place at all, no range was looked at before.
            if all(so_far <= row.most for so_far, row in zip(used, self.rows, strict=True)):
                self._take(cost)
        else:
            self._branch(at, used, cost)

    def _branch(self, at: int, used: list[float], cost: float) -> None:
        low, high = self._range(at, used, cost)
        if low > high:
            return
        guide = low if self.costs[at] >= 0.0 else high
        if at < len(self.limits) - 1:
            left = [Row(row.weights[at:], row.most - so_far) for row, so_far in zip(self.rows, used, strict=True)]
            relaxed = _relax(self.costs[at:], left, self.limits[at:])
            if relaxed.is_beyond(self.limits[at:], self.ceiling - cost):
                return
            guide = relaxed.guide
        for count in _outwards(guide, low, high) if at < len(self.limits) - 1 else [guide]:
            if self.done:
                return
            self.counts[at] = count
            now = [so_far + row.weights[at] * count for so_far, row in zip(used, self.rows, strict=True)]
            self.go_on(at + 1, now, cost + self.costs[at] * count)

    def _range(self, at: int, used: list[float], cost: float) -> tuple[int, int]:
        """The counts with which every row, and a better cost, can still hold."""
        low, high = 0, self.limits[at]
        rows = [(row.weights[at], row.most - so_far) for row, so_far in zip(self.rows, used, strict=True)]
        for (weight, most), rest in zip([*rows, (self.costs[at], self.ceiling - cost)], self.rest, strict=True):
            room = most - rest[at + 1]
            if weight > 0.0 and room < inf:
                high = min(high, floor(room / weight))
            elif weight < 0.0 and room < inf:
                low = max(low, ceil(room / weight))
            elif room < 0.0:
                return 1, 0
        return low, high

    def _take(self, cost: float) -> None:
        self.best, self.cost = tuple(self.counts), cost
        self.ceiling = floor((ceil(cost / self.step) - 1) * self.step / self.common) * self.common
        self.done = cost <= self.enough


@dataclass(slots=True)
class _Relaxed:
    """The multipliers' row: cost ≥ Σ weights_i n_i − held for all the rows allow. `guide`: a count to begin near."""

    weights: list[float]
    held: float
    guide: int
    impossible: bool

    def is_beyond(self, limits: Sequence[int], ceiling: float) -> bool:
        """True when no counts can satisfy the rows at a cost of the ceiling or less."""
        lowest = _sum(min(0.0, weight * limit) for weight, limit in zip(self.weights, limits, strict=True)) - self.held
        return lowest > (_SLIM if self.impossible else ceiling + _SLACK)


def _least_after(weights: Sequence[float], limits: Sequence[int]) -> list[float]:
    """For each place the least that it and all after it can add to a row; 0 after the last."""
    rest = [0.0]
    for weight, limit in zip(reversed(weights), reversed(limits), strict=True):
        rest.append(rest[-1] + min(0.0, weight * limit))
    return rest[::-1]


def _outwards(middle: int, low: int, high: int) -> list[int]:
    """The counts from low to high, nearest to the middle first, the larger of two first."""
    if low > high:
        return []
    start = min(max(middle, low), high)
    order = [start]
    for away in range(1, high - low + 1):
        order += [count for count in (start + away, start - away) if low <= count <= high]
    return order


def _relax(costs: Sequence[float], rows: Sequence[Row], limits: Sequence[int]) -> _Relaxed:
    """The linear programme of the same costs and rows.

    A place with a negative cost is counted from its limit down, so that all costs are positive and the dual, max −Σ
    most λ − Σ limit μ with −Σ weight λ − μ ≤ cost, starts feasible at nothing. Where it grows without end, no counts
    satisfy the rows, and the multipliers of that growth prove it without the costs.
    """
    places = range(len(costs))
    sizes = [max([abs(weight) for weight in row.weights], default=0.0) or 1.0 for row in rows]
    unit = max([abs(cost) for cost in costs], default=0.0) or 1.0
    flips = [-1.0 if cost < 0.0 else 1.0 for cost in costs]
    turned = [at for at in places if flips[at] < 0.0]
    goal = [
        (row.most - _sum(row.weights[at] * limits[at] for at in turned)) / size
        for row, size in zip(rows, sizes, strict=True)
    ]
    goal += [*(float(limit) for limit in limits), *(0.0 for _ in places), 0.0]
    table = [_line(at, costs, rows, sizes, flips[at], unit) for at in places]
    basis, endless = _maximise(table, goal, len(rows) + len(costs))
    values = _multipliers(table, basis, endless, len(rows))
    by = [value * (1.0 if endless is not None else unit) / size for value, size in zip(values, sizes, strict=True)]
    weights = [
        (0.0 if endless is not None else cost) + _sum(one * row.weights[at] for one, row in zip(by, rows, strict=True))
        for at, cost in enumerate(costs)
    ]
    held = _sum(one * row.most for one, row in zip(by, rows, strict=True))
    price = goal[len(rows) + len(costs)]
    guide = floor((price if flips[0] > 0.0 else limits[0] - price) + 0.5) if costs else 0
    return _Relaxed(weights, held, guide, endless is not None)


def _line(
    at: int, costs: Sequence[float], rows: Sequence[Row], sizes: Sequence[float], flip: float, unit: float
) -> list[float]:
    """The dual's line of one place: rows' multipliers, limits' multipliers, slacks, and the cost."""
    own = [1.0 if other == at else 0.0 for other in range(len(costs))]
    weights = [-flip * row.weights[at] / size for row, size in zip(rows, sizes, strict=True)]
    return [*weights, *(-one for one in own), *own, abs(costs[at]) / unit]


def _multipliers(table: list[list[float]], basis: list[int], endless: int | None, count: int) -> list[float]:
    """Of the rows: where the simplex stopped, or along the way that never ends."""
    values = [1.0 if row == endless else 0.0 for row in range(count)]
    for line, variable in zip(table, basis, strict=True):
        if variable < count:
            values[variable] = max(0.0, line[-1] if endless is None else -line[endless])
    return values


def _maximise(table: list[list[float]], goal: list[float], first_slack: int) -> tuple[list[int], int | None]:
    """The simplex method in place; gives the variable of each line, and the one that can grow without end, if any."""
    basis = [first_slack + at for at in range(len(table))]
    for _ in range(_PIVOTS):
        entering = min(range(len(goal) - 1), key=lambda column: goal[column], default=0)
        if goal[entering] >= -_TINY:
            break
        open_lines = [at for at, line in enumerate(table) if line[entering] > _TINY]
        if not open_lines:
            return basis, entering
        leaving = min(open_lines, key=lambda at: (table[at][-1] / table[at][entering], basis[at]))
        _pivot(table, goal, leaving, entering)
        basis[leaving] = entering
    return basis, None


def _pivot(table: list[list[float]], goal: list[float], leaving: int, entering: int) -> None:
    by = table[leaving][entering]
    table[leaving] = [value / by for value in table[leaving]]
    for line in (*(line for at, line in enumerate(table) if at != leaving), goal):
        factor = line[entering]
        if factor != 0.0:
            line[:] = [value - factor * other for value, other in zip(line, table[leaving], strict=True)]


def _sum(terms: Iterable[float]) -> float:
    """One term after the other, as the phone does it: newer Pythons' own sum carries what is lost along."""
    whole = 0.0
    for term in terms:
        whole += term
    return whole
