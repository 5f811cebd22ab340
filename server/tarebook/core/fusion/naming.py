"""Which steps and odd looks are named: those the looks explain so much better than chance that it is worth saying.

Over all behaviours of the scales, each as likely as the looks make it, D is twice the ln of how much better the looks
are explained with a change than without: with one behaviour the Δχ² of `misfit`. A step that a wandering gain explains
as well is so not named, and one that stands out stays named though gains may wander.

The first is named when D is beyond what chance does once in twenty among all candidates; two together likewise, which
finds two that hide each other. Once something is wrong, a second is named when it pays for the choice of its place,
2 ln n for n candidates [Foster and George, Ann. Statist. 22 (1994) 1947]; a third must stand as the first. One degree
of freedom is always left over: what explains everything explains nothing.
"""

from collections.abc import Sequence
from math import log

import numpy as np
from numpy.typing import NDArray

from tarebook.core.fusion.misfit import pairs_of
from tarebook.core.fusion.precision import Array
from tarebook.core.fusion.views import View, log_sum
from tarebook.core.numbers import normal

BEYOND_CHANCE = 3.841458820694124  # χ² of one degree of freedom, 95 %
_BY_CHANCE = 0.05
_ALIKE = 1e-8  # of a D: what differs by less are the same data, and rounding does not choose among them


def named(views: Sequence[View]) -> list[int]:
    """The candidates to name, the surest first."""
    freedom, usable = views[0].told.freedom, views[0].candidates().usable
    if freedom < 2 or not len(usable):
        return []
    first = _first(len(usable))
    chosen = _pair_or_one(views, usable, freedom, first)
    while chosen and freedom - len(chosen) >= 2:
        left = [view.without(chosen) for view in views]
        better = better_with(left)
        best = _surest(better)
        if better[best] <= first:
            break
        chosen = [*chosen, best]
    return chosen


def better_with(views: Sequence[View]) -> Array:
    """D of each candidate."""
    likely = np.array([view.likely for view in views])
    better = np.array([view.candidates().better for view in views])
    return 2.0 * (log_sum(likely[:, None] + 0.5 * better) - log_sum(likely))


def _surest(better: Array) -> int:
    """The first that no other beats by more than rounding."""
    most = float(better.max())
    return int(np.argmax(better >= most - _ALIKE * abs(most)))


def _first(count: int) -> float:
    """The Δχ² that chance reaches once in twenty, at the most, among so many candidates."""
    z = normal.inverse(_BY_CHANCE / (2 * count))
    return z * z


def _pair_or_one(views: Sequence[View], usable: NDArray[np.intp], freedom: int, first: float) -> list[int]:
    better = better_with(views)
    best = int(usable[_surest(better[usable])])
    alone = better[best]
    if freedom > 2 and len(usable) > 1:
        a, b = pairs_of(usable)
        likely = np.array([view.likely for view in views])
        both = np.array([view.candidates().better_together(a, b) for view in views])
        together = 2.0 * (log_sum(likely[:, None] + 0.5 * both) - log_sum(likely))
        at = _surest(together)
        is_told = alone > first or together[at] > -2.0 * log(_BY_CHANCE / len(a))
        if is_told and together[at] - alone > max(BEYOND_CHANCE, 2.0 * log(len(usable))):
            pair = [int(a[at]), int(b[at])]
            return pair if _surest(better[pair]) == 0 else pair[::-1]
    return [best] if alone > first else []
