"""Ballast: how many blocks at which of the allowed places, found exactly.

The car must come to the minimum and its guard, with its front and left shares inside their ranges. Multiplied out by
the total, every one of these is linear in the numbers of blocks, so the best choice is an integer programme
(`core/programme`). Masses are counted in whole hundredths of a milligram, and choices are compared in whole grams of
mass and tenths of a kilogram times a metre of moment: first the least mass, then the lowest, then the least effect on
cross weight; or the lowest centre, or the least effect on cross weight, first, under a ceiling for the total.

Axes: x rearward from the front axle, y to the right, z up. A block of mass w adds w(1 − x/L) to the front and
w(½ − y/t) to the left, t the mean track. On springs it moves cross weight by w y (κ/t_f − (1 − κ)/t_r), κ the front's
share of roll stiffness: whatever κ is, that is least where Σ w y is nearest to nothing.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil, floor

from tarebook.core.ballast_answer import Ballast, Carried, Place, Share, Wanted, mean_track, told
from tarebook.core.programme import Found, Row, least
from tarebook.core.records import Warned, warned
from tarebook.core.shown import show_mass

__all__ = ["Ballast", "Carried", "Place", "Share", "Wanted", "ballast"]

MOST_PLACES = 8
MOST_BLOCKS = 10_000
GRAM = 1e5  # masses are compared in whole grams
STEP = 1e7  # moments in tenths of a kg m, which move the centre of a car by a tenth of a millimetre
_FINE = 10_000.0  # steps of a metre in which the height of the centre is compared


def ballast(car: Carried, places: Sequence[Place], wanted: Wanted) -> Ballast | Warned:
    """The best choice, the nearest one with what it misses, or why there is none to look for."""
    trouble = _trouble(car, places, wanted)
    if trouble:
        return trouble
    goals = _goals(car, places, wanted)
    limits = [place.most for place in places]
    found = _best(car, places, wanted, [row for _, row in goals], limits)
    missing: list[Warned] = []
    if not found:
        rows, missing = _nearest(goals, limits)
        found = _best(car, places, wanted, rows, limits)
    counts = found[-1].counts if found else (0,) * len(places)
    return told(car, places, counts, missing, all(each.proven for each in found))


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
    """Whole hundredths of a milligram, or those times a metre."""
    return float(floor(kilograms * 1e8 + 0.5))


def _goals(car: Carried, places: Sequence[Place], wanted: Wanted) -> list[tuple[str, Row]]:
    """What is wanted as rows, the first to be given up last. The code says that a row does not hold."""
    total = car.total.value
    goals = [("ballast_short", Row([-_whole(p.block) for p in places], -_whole(wanted.least - total)))]
    if wanted.most is not None:
        goals.append(("ballast_over", Row([_whole(p.block) for p in places], _whole(wanted.most - total))))
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
) -> list[tuple[str, Row]]:
    """`parts`: mass of a block and the share of it that this axle or side carries."""
    low, high = share
    at_least = Row([_whole(block * (low - part)) for block, part in parts], _whole(load - low * total))
    at_most = Row([_whole(block * (part - high)) for block, part in parts], _whole(high * total - load))
    return [(f"{code}_low", at_least), (f"{code}_high", at_most)]


def _best(
    car: Carried, places: Sequence[Place], wanted: Wanted, rows: Sequence[Row], limits: Sequence[int]
) -> list[Found]:
    """One aim after the other, each under what the ones before reached; empty when the rows allow nothing."""
    arms = {"mass": [1.0] * len(places), "height": [p.z for p in places], "cross": [p.y for p in places]}
    costs = {
        aim: [_whole(place.block * arm) for place, arm in zip(places, each, strict=True)] for aim, each in arms.items()
    }
    start = (_whole(car.total.value), _whole(car.total.value * (car.height or 0.0)))
    solved: list[Found] = []
    kept = list(rows)
    for aim in _aims(wanted):
        reached = _reach(aim, costs, start, kept, limits)
        if reached is None:
            return []
        solved.append(reached[0])
        kept += reached[1]
    return solved


def _aims(wanted: Wanted) -> tuple[str, ...]:
    aims = {"mass": ("mass", "height", "cross"), "centre": ("centre", "mass", "cross"),
            "cross": ("cross", "mass", "height")}[wanted.prefer]  # fmt: skip
    return aims if wanted.most is not None or aims[0] == "mass" else ("mass", *aims)


def _reach(
    aim: str, costs: dict[str, list[float]], start: tuple[float, float], rows: list[Row], limits: Sequence[int]
) -> tuple[Found, list[Row]] | None:
    """The best for one aim, and rows that keep it, to a step."""
    if aim == "cross":
        return _smallest(costs["cross"], rows, limits)
    if aim == "centre":
        return _lowest(costs["mass"], costs["height"], start, rows, limits)
    step = GRAM if aim == "mass" else STEP
    found = least(costs[aim], rows, limits, step)
    return None if found is None else (found, [Row(costs[aim], ceil(found.cost / step) * step), found.row])


def _smallest(costs: list[float], rows: list[Row], limits: Sequence[int]) -> tuple[Found, list[Row]] | None:
    """The counts whose sum of costs is nearest to nothing, from above or from below; within a step is near enough."""
    turned = [-cost for cost in costs]
    above = least(costs, [*rows, Row(turned, 0.0)], limits, STEP, STEP)
    below = None if above and above.cost <= STEP else least(turned, [*rows, Row(costs, 0.0)], limits, STEP, STEP)
    found = above if below is None or (above and above.cost <= below.cost) else below
    if found is None:
        return None
    most = max(ceil(found.cost / STEP), 1) * STEP
    return found, [Row(costs, most), Row(turned, most)]


def _lowest(
    mass: list[float], height: list[float], start: tuple[float, float], rows: list[Row], limits: Sequence[int]
) -> tuple[Found, list[Row]] | None:
    """The lowest centre of the whole car, to a tenth of a millimetre.

    The height is a ratio. Whether it can be so many tenths or less is a linear question, and the best answer to it
    leads to the next lower one to ask (Dinkelbach, Management Science 13, 1967) until there is none.
    """
    whole, moment = start
    best: Found | None = None
    kept: list[Row] = []
    found = least(height, rows, limits, STEP)
    while found is not None:
        best = found
        added, raised = _dot(mass, found.counts), _dot(height, found.counts)
        tenths = ceil(_FINE * (moment + raised) / (whole + added))
        kept = [_at_most(tenths, mass, height, start)]
        lower = _at_most(tenths - 1, mass, height, start)
        found = least(lower.weights, [*rows, lower], limits, _FINE * STEP)
    return None if best is None else (best, kept)


def _at_most(tenths: int, mass: list[float], height: list[float], start: tuple[float, float]) -> Row:
    """The centre is so many tenths of a millimetre high or lower."""
    whole, moment = start
    return Row([_FINE * z - tenths * w for z, w in zip(height, mass, strict=True)], tenths * whole - _FINE * moment)


def _dot(weights: Sequence[float], counts: Sequence[int]) -> float:
    return sum(weight * count for weight, count in zip(weights, counts, strict=True))


def _nearest(goals: Sequence[tuple[str, Row]], limits: Sequence[int]) -> tuple[list[Row], list[Warned]]:
    """Every goal in its turn as nearly as the ones before allow, and by how many kilograms some are missed."""
    rows: list[Row] = []
    missing = []
    for code, row in goals:
        found = least(row.weights, rows, limits, GRAM, row.most)
        over = (found.cost if found else 0.0) - row.most
        if over > 0.0:
            missing.append(warned(code, kg=over / 1e8, text=show_mass(over / 1e8, "kg")))
        rows.append(Row(row.weights, row.most + max(0.0, ceil(over / GRAM) * GRAM)))
    return rows, missing
