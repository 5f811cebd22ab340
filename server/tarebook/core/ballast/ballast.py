"""Ballast: how many blocks at which of the allowed places, found exactly.

The car must come to the minimum and its guard, with its front and left shares inside their ranges. Multiplied out by
the total, every one of these is linear in the numbers of blocks, so the best choice is an integer programme
(`core/ballast/programme`). Masses are counted in whole hundredths of a milligram, and choices are compared in whole
grams of mass and tenths of a kilogram times a metre of moment: first the least mass, then the lowest, then the least
effect on cross weight; or the lowest centre, or the least effect on cross weight, first, under a ceiling for the total.

Axes: x rearward from the front axle, y to the right, z up. A block of mass w adds w(1 − x/L) to the front and
w(½ − y/t) to the left, t the mean track. On springs it moves cross weight by w y (κ/t_f − (1 − κ)/t_r), κ the front's
share of roll stiffness: whatever κ is, that is least where Σ w y is nearest to nothing.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from math import ceil, floor, inf

from tarebook.core.ballast.ballast_answer import Ballast, Carried, Place, Share, Wanted, mean_track, told
from tarebook.core.ballast.programme import Bounds, Effort, Found, Row, least
from tarebook.core.garage.records import Warned, warned
from tarebook.core.numbers.plain import dot
from tarebook.core.numbers.shown import show_mass

__all__ = ["Ballast", "Carried", "Place", "Share", "Wanted", "ballast"]

MOST_PLACES = 8
MOST_BLOCKS = 10_000
_KILOGRAM = 1e8  # whole steps in one, or in a kg m
GRAM = 1e5  # masses are compared in whole grams
MOMENT = 1e7  # heights in tenths of a kg m, which move the centre of a car by a tenth of a millimetre
CROSS = 5e7  # effects on cross weight in halves of a kg m: a few hundredths of a kilogram at the wheels
LOAD = 1e7  # a share that cannot be reached is missed by as few tenths of a kilogram as can be
WORTH = 20.0  # kg of ballast that may be carried for every kg a share that cannot be reached comes nearer
_FINE = 10_000.0  # steps of a metre in which the height of the centre is compared


@dataclass(frozen=True, slots=True)
class _Goal:
    """`step`: how nearly it is reached where it cannot be."""

    code: str
    row: Row
    step: float


def ballast(car: Carried, places: Sequence[Place], wanted: Wanted) -> Ballast | Warned:
    """The best choice, the nearest one with what it misses, or why there is none to look for."""
    trouble = _trouble(car, places, wanted)
    if trouble:
        return trouble
    task = _task(car, places)
    goals = _goals(car, places, wanted)
    counts = _best(task, wanted, [goal.row for goal in goals])
    if counts is None:
        counts = _best(task, wanted, _nearest(task, goals)) or (0,) * len(places)
    return told(car, places, counts, _missing(goals, counts), task.effort.is_proven)


def _trouble(car: Carried, places: Sequence[Place], wanted: Wanted) -> Warned | None:
    if len(places) > MOST_PLACES:
        return warned("ballast_many_places", most=MOST_PLACES)
    if bad := [place.id for place in places if not (place.block > 0.0 and 0 <= place.most <= MOST_BLOCKS)]:
        return warned("ballast_bad_place", place=bad[0])
    if any(share and not 0.0 <= share[0] <= share[1] <= 1.0 for share in (wanted.front, wanted.left)):
        return warned("ballast_share_range")
    if wanted.most is not None and wanted.most < wanted.least:
        return warned("ballast_ceiling")
    if wanted.front and not (car.front and car.wheelbase):
        return warned("ballast_no_front")
    if wanted.left and not (car.left and car.track_front and car.track_rear):
        return warned("ballast_no_left")
    return warned("ballast_no_height") if wanted.prefer == "centre" and car.height is None else None


def _whole(kilograms: float) -> float:
    """Whole steps of a hundredth of a milligram, or those times a metre."""
    return float(floor(kilograms * _KILOGRAM + 0.5))


def _goals(car: Carried, places: Sequence[Place], wanted: Wanted) -> list[_Goal]:
    """What is wanted as rows, the first to be given up last. The code says that a row does not hold."""
    total = car.total.value
    blocks = [_whole(place.block) for place in places]
    least_row = _at_most([-block for block in blocks], -_whole(wanted.least - total))
    goals = [_Goal("ballast_short", least_row, GRAM)]
    if wanted.most is not None:
        goals.append(_Goal("ballast_over", _at_most(blocks, _whole(wanted.most - total)), GRAM))
    if wanted.front and car.front and car.wheelbase:
        parts = [(p.block, 1.0 - p.x / car.wheelbase) for p in places]
        goals += _share_goals("ballast_front", car.front.value, total, wanted.front, parts)
    track = mean_track(car)
    if wanted.left and car.left and track:
        parts = [(p.block, 0.5 - p.y / track) for p in places]
        goals += _share_goals("ballast_left", car.left.value, total, wanted.left, parts)
    return goals


def _share_goals(
    code: str, load: float, total: float, share: Share, parts: Sequence[tuple[float, float]]
) -> list[_Goal]:
    """`parts`: mass of a block and the share of it that this axle or side carries."""
    low, high = share
    at_least = _at_most([_whole(block * (low - part)) for block, part in parts], _whole(load - low * total))
    over = _at_most([_whole(block * (part - high)) for block, part in parts], _whole(high * total - load))
    return [_Goal(f"{code}_low", at_least, LOAD), _Goal(f"{code}_high", over, LOAD)]


def _at_most(weights: Sequence[float], high: float) -> Row:
    return Row(weights, -inf, high)


def _sums(places: Sequence[Place]) -> list[Row]:
    """Where several places take the same block, how many blocks of it there are in all is a whole number."""
    rows = []
    for block in dict.fromkeys(place.block for place in places):
        alike = [place for place in places if place.block == block]
        weights = [1.0 if place.block == block else 0.0 for place in places]
        if len(alike) > 1:
            rows.append(Row(weights, 0.0, float(sum(place.most for place in alike)), is_whole=True))
    return rows


@dataclass(frozen=True, slots=True)
class _Task:
    """What is searched: costs by aim, mass and moment of the car without ballast, limits, and what it may take."""

    costs: dict[str, list[float]]
    start: tuple[float, float]
    limits: Bounds
    sums: list[Row]
    effort: Effort = field(default_factory=Effort)

    def search(self, costs: Sequence[float], rows: Sequence[Row], step: float, enough: float = -inf) -> Found | None:
        return least(costs, [*rows, *self.sums], self.limits, self.effort, step, enough)


def _task(car: Carried, places: Sequence[Place]) -> _Task:
    arms = {"mass": [1.0] * len(places), "height": [p.z for p in places], "cross": [p.y for p in places]}
    costs = {
        aim: [_whole(place.block * arm) for place, arm in zip(places, each, strict=True)] for aim, each in arms.items()
    }
    start = (_whole(car.total.value), _whole(car.total.value * (car.height or 0.0)))
    limits = Bounds([0.0] * len(places), [float(place.most) for place in places])
    return _Task(costs, start, limits, _sums(places))


def _best(task: _Task, wanted: Wanted, rows: Sequence[Row]) -> tuple[int, ...] | None:
    """One aim after the other, each under what the ones before reached; None when the rows allow nothing."""
    kept, counts = list(rows), None
    if wanted.prefer != "mass" and wanted.more is not None:
        lightest = task.search(task.costs["mass"], rows, GRAM)
        if lightest is None:
            return None
        kept.append(_at_most(task.costs["mass"], lightest.cost + _whole(wanted.more)))
    for aim in _aims(wanted):
        reached = _reach(aim, task, kept)
        if reached is None:
            return counts
        counts = reached[0].counts
        kept += reached[1]
    return None if counts is None else _first_places_first(task, kept, counts)


_AIMS = {
    "mass": ("mass", "height", "cross"),
    "centre": ("centre", "mass", "cross"),
    "cross": ("cross", "mass", "height"),
}


def _aims(wanted: Wanted) -> tuple[str, ...]:
    """Without a ceiling the mass comes first; of two choices of one mass the lower has the lower centre."""
    if wanted.most is not None or wanted.more is not None:
        return _AIMS[wanted.prefer]
    return ("mass", "cross", "height") if wanted.prefer == "cross" else _AIMS["mass"]


def _reach(aim: str, task: _Task, rows: list[Row]) -> tuple[Found, list[Row]] | None:
    """The best for one aim, and rows that keep it, to a step."""
    if aim == "cross":
        return _smallest(task, rows)
    if aim == "centre":
        return _lowest(task, rows)
    step = GRAM if aim == "mass" else MOMENT
    found = task.search(task.costs[aim], rows, step)
    return None if found is None else (found, [_at_most(task.costs[aim], ceil(found.cost / step) * step)])


def _smallest(task: _Task, rows: list[Row]) -> tuple[Found, list[Row]] | None:
    """The counts whose sum of costs is nearest to nothing, from above or from below; within a step is near enough."""
    costs = task.costs["cross"]
    turned = [-cost for cost in costs]
    above = task.search(costs, [*rows, _at_most(turned, 0.0)], CROSS, CROSS)
    is_near = above is not None and above.cost <= CROSS
    below = None if is_near else task.search(turned, [*rows, _at_most(costs, 0.0)], CROSS, CROSS)
    found = above if below is None or (above and above.cost <= below.cost) else below
    if found is None:
        return None
    most = max(ceil(found.cost / CROSS), 1) * CROSS
    return found, [Row(costs, -most, most)]


def _lowest(task: _Task, rows: list[Row]) -> tuple[Found, list[Row]] | None:
    """The lowest centre of the whole car, to a tenth of a millimetre.

    The height is a ratio. Whether it can be so many tenths or less is a linear question, and the best answer to it
    leads to the next lower one to ask (Dinkelbach, Management Science 13, 1967) until there is none.
    """
    (whole, moment), mass, height = task.start, task.costs["mass"], task.costs["height"]
    best: Found | None = None
    kept: list[Row] = []
    found = task.search(height, rows, MOMENT)
    while found is not None:
        best = found
        added, raised = dot(mass, found.counts), dot(height, found.counts)
        tenths = ceil(_FINE * (moment + raised) / (whole + added))
        kept = [_as_low_as(tenths, task)]
        lower = _as_low_as(tenths - 1, task)
        found = task.search(lower.weights, [*rows, lower], _FINE * MOMENT)
    return None if best is None else (best, kept)


def _as_low_as(tenths: int, task: _Task) -> Row:
    """The centre is so many tenths of a millimetre high or lower."""
    (whole, moment), mass, height = task.start, task.costs["mass"], task.costs["height"]
    weights = [_FINE * z - tenths * w for z, w in zip(height, mass, strict=True)]
    return _at_most(weights, tenths * whole - _FINE * moment)


def _first_places_first(task: _Task, rows: Sequence[Row], counts: tuple[int, ...]) -> tuple[int, ...]:
    """Of choices that are alike the one with the most at the first place, then at the second, and so on."""
    found = counts
    for at in range(len(counts)):
        costs = [-1.0 if of == at else 0.0 for of in range(len(counts))]
        more = task.search(costs, rows, 1.0, -task.limits.high[at])
        if more is None:
            return found
        found = more.counts
        limits = Bounds(task.limits.low[:], task.limits.high[:])
        limits.low[at] = limits.high[at] = -more.cost
        task = replace(task, limits=limits)
    return found


def _nearest(task: _Task, goals: Sequence[_Goal]) -> list[Row]:
    """Every goal in its turn, as near as the ones before allow, to a step; a share as near as is worth its weight."""
    rows: list[Row] = []
    for goal in goals:
        row, step = goal.row, goal.step
        found = task.search(row.weights, rows, step, row.high)
        if found and found.cost > row.high and step == LOAD:
            worth = [weight + floor(mass / WORTH) for weight, mass in zip(row.weights, task.costs["mass"], strict=True)]
            found = task.search(worth, rows, step) or found
        over = max(0.0, (dot(row.weights, found.counts) if found else 0.0) - row.high)
        rows.append(_at_most(row.weights, row.high + ceil(over / step) * step))
    return rows


def _missing(goals: Sequence[_Goal], counts: Sequence[int]) -> list[Warned]:
    """By how many kilograms which goals are missed."""
    over = [(goal.code, (dot(goal.row.weights, counts) - goal.row.high) / _KILOGRAM) for goal in goals]
    return [warned(code, kg=kg, text=show_mass(kg, "kg")) for code, kg in over if kg > 0.0]
