"""Outlines of straight sides, decided exactly: what crosses, what lies inside, how large it is.

Corners are exact fractions of a metre as typed or drawn. They are first put on one grid fine enough for all of them, so
that every question is one of whole numbers and none is decided by a rounding. Sides are counted from 0; side i runs
from corner i to the next.
"""

from collections.abc import Sequence
from fractions import Fraction
from itertools import combinations
from math import lcm

Point = tuple[Fraction, Fraction]
Spot = tuple[int, int]


def on_grid(outlines: Sequence[Sequence[Point]]) -> tuple[list[list[Spot]], int]:
    """The outlines in whole steps of a grid, and how many steps a metre has."""
    steps = lcm(*(size.denominator for outline in outlines for point in outline for size in point))
    return [[(int(x * steps), int(y * steps)) for x, y in outline] for outline in outlines], steps


def twice_area(outline: Sequence[Spot]) -> int:
    """Twice the signed area in square steps (the shoelace formula); positive when the corners run from x to y."""
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in _sides(outline))


def crossing(outline: Sequence[Spot]) -> tuple[int, int] | None:
    """The first two sides that cross, touch or fold back on each other; None for an outline that can be cut."""
    sides = _sides(outline)
    last = len(sides) - 1
    for one, other in combinations(range(len(sides)), 2):
        if other == one + 1:
            bad = _folds(sides[one], sides[other])
        elif (one, other) == (0, last):
            bad = _folds(sides[other], sides[one])
        else:
            bad = _touch(sides[one], sides[other])
        if bad:
            return one, other
    return None


def apart(a: Sequence[Spot], b: Sequence[Spot]) -> bool:
    """True when no side of one touches a side of the other; one may still lie wholly inside the other."""
    return not any(_touch(one, other) for one in _sides(a) for other in _sides(b))


def inside(spot: Spot, outline: Sequence[Spot]) -> bool:
    """True when the spot, which is on no side, is within the outline: a ray to the right leaves it an odd number of
    times."""
    x, y = spot
    crossed = 0
    for (ax, ay), (bx, by) in _sides(outline):
        if (ay > y) != (by > y):
            turn = (bx - ax) * (y - ay) - (x - ax) * (by - ay)
            crossed += (turn > 0) == (by > ay)
    return crossed % 2 == 1


def _sides(outline: Sequence[Spot]) -> list[tuple[Spot, Spot]]:
    return list(zip(outline, [*outline[1:], *outline[:1]], strict=True))


def _turn(a: Spot, b: Spot, c: Spot) -> int:
    """Which way the way from a to b turns towards c: the sign of twice the triangle's area."""
    twice = (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])
    return (twice > 0) - (twice < 0)


def _folds(one: tuple[Spot, Spot], following: tuple[Spot, Spot]) -> bool:
    """True when the following side runs back over this one, or either has no length."""
    (a, b), (_, c) = one, following
    ahead = (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1])
    return b in (a, c) or (_turn(a, b, c) == 0 and ahead < 0)


def _touch(one: tuple[Spot, Spot], other: tuple[Spot, Spot]) -> bool:
    (a, b), (c, d) = one, other
    if _turn(a, b, c) * _turn(a, b, d) < 0 and _turn(c, d, a) * _turn(c, d, b) < 0:
        return True
    return _on(c, a, b) or _on(d, a, b) or _on(a, c, d) or _on(b, c, d)


def _on(spot: Spot, a: Spot, b: Spot) -> bool:
    within = all(min(a[k], b[k]) <= spot[k] <= max(a[k], b[k]) for k in (0, 1))
    return within and _turn(a, b, spot) == 0
