"""The mean over what may have gone on: behaviours of the scales, and none, one or two changes nobody wrote down.

Naming the surest change and forgetting that it was guessed would make the interval too narrow; ignoring what is not
quite sure would do so too. So under every behaviour every set of none, one or two steps and looks that are off counts
with its probability: beforehand one gap between looks in eight hides a change (an assumption, no source), any place as
likely as another, and a change is as large as what is worth knowing (normal, with a standard deviation of five times
its own standard uncertainty, which takes √26 from its likelihood). The spread between these answers is doubt beside
that of the errors.

A step next to the first look and an error of it are the same data and the same answer: it counts twice. A step before
the last look and an error of that are the same data with two answers, and both count, each with its odds.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import log

import numpy as np
from numpy.typing import NDArray

from tarebook.core.fusion.misfit import Candidates, along, pairs_of
from tarebook.core.fusion.precision import Array
from tarebook.core.fusion.views import View

_A_GAP = 0.125
SIZE = 0.5 * log(1.0 + 5.0 * 5.0)
_MANY = 40
_FAR_LESS = 16.0  # a set this much less likely (in ln) than the best says nothing
_NONE, _NEVER = -1, -2

Indices = NDArray[np.intp]
Flags = NDArray[np.bool_]


@dataclass(frozen=True)
class Sets:
    """Every set of changes under every view, an element each. `a`, `b`: its candidates, −1 for none.

    `off`: the last look is off, and no step before it. `chance`: of each; `share`: in the answer that counts.
    `inverse`: of the normal equations (aa, ab, bb); `sizes`: of a and b. `images`: W h by view and candidate.
    """

    view: Indices
    a: Indices
    b: Indices
    off: Flags
    chance: Array
    share: Array
    inverse: tuple[Array, Array, Array]
    sizes: tuple[Array, Array]
    images: Array
    last: int

    @property
    def two(self) -> Flags:
        """Whether the last step is in it: the same data have another answer."""
        found: Flags = (self.a == self.last) | (self.b == self.last)
        return found

    @property
    def low(self) -> Flags:
        """Of those, the lower of the two answers: with more in the car by the last look, that it is off."""
        size = np.where(self.a == self.last, self.sizes[0], self.sizes[1])
        found: Flags = self.two & (self.off == (size > 0.0))
        return found

    def counting(self, counts: Flags) -> Sets:
        """The same with only some of them in the answer."""
        share = np.where(counts, self.chance, 0.0)
        return replace(self, share=share / share.sum())


@dataclass(frozen=True)
class Averaged:
    """A weighting of the looks, averaged: its `weights`, and by set the `values` and how far a and b `reach` it.

    `own`: covariances by view with itself when nothing changed, filled in by who knows it.
    """

    weights: Array
    values: Array
    reach: tuple[Array, Array]


def sets_of(views: Sequence[View], freedom: int) -> Sets:
    """The sets with their chances.

    `freedom`: how many independent things the looks tell beside their mean. Of one only, all candidates are the same
    data: either the last look is off, or the one before it is or a step lies between them.
    """
    found = [view.candidates() for view in views]
    last = found[0].count - 2
    if last < 0:
        return _alone(views)
    rows = [_of_view(each, view.likely, freedom) for each, view in zip(found, views, strict=True)]
    view = np.concatenate([np.full(len(row[0]), at) for at, row in enumerate(rows)])
    likely, a, b, off = (np.concatenate(columns) for columns in zip(*rows, strict=True))
    kept = likely > likely.max() - _FAR_LESS
    view, likely, a, b, off = view[kept], likely[kept], a[kept], b[kept], off[kept]
    chance = np.exp(likely - likely.max())
    chance /= chance.sum()
    own = np.array([each.own for each in found])
    gram = np.array([each.gram for each in found])
    told = np.array([each.told for each in found])
    inverse = _inverse(own, gram, view, a, b)
    one, two = np.where(a >= 0, told[view, a], 0.0), np.where(b >= 0, told[view, b], 0.0)
    sizes = (inverse[0] * one + inverse[1] * two, inverse[1] * one + inverse[2] * two)
    images = np.array([each.images for each in found])
    return Sets(view, a, b, off, chance, chance, inverse, sizes, images, last)


def _alone(views: Sequence[View]) -> Sets:
    """Of a single look: no changes, only the behaviours."""
    likely = np.array([view.likely for view in views])
    chance, none = np.exp(likely - likely.max()), np.full(len(views), _NONE)
    chance /= chance.sum()
    nothing = np.zeros(len(views))
    inverse, sizes = (nothing, nothing, nothing), (nothing, nothing)
    never, images = np.zeros(len(views), dtype=bool), np.zeros((len(views), 1, 1))
    return Sets(np.arange(len(views)), none, none, never, chance, chance, inverse, sizes, images, _NEVER)


_Rows = tuple[Array, Indices, Indices, Flags]


def _of_view(found: Candidates, likely: float, freedom: int) -> _Rows:
    last, hidden = found.count - 2, _A_GAP * (found.count - 1)
    usable = found.usable if freedom > 1 else found.usable[found.usable == last]
    # Of many weigh-ins only steps go in pairs: two next to each other are a look that is off.
    a, b = pairs_of(usable if len(usable) <= _MANY else usable[usable <= last])
    apart = found.determinant(a, b) > 0.0
    a, b = a[apart], b[apart]
    none = np.full(len(usable), _NONE)
    nothing = (np.array([likely]), np.array([_NONE]), np.array([_NONE]), np.array([False]))
    single = likely + 0.5 * found.better[usable] - SIZE + log(hidden / max(1, len(usable)))
    double = likely + 0.5 * found.better_together(a, b) - 2.0 * SIZE + log(0.5 * hidden * hidden / max(1, len(a)))
    rows = [nothing, *_ways(single, usable, none, last, freedom), *_ways(double, a, b, last, freedom)]
    return tuple(np.concatenate(columns) for columns in zip(*rows, strict=True))  # type: ignore[return-value]


def _ways(likely: Array, a: Indices, b: Indices, last: int, freedom: int) -> list[_Rows]:
    """In how many ways a set may have come about: with the last look right; if the last step is in it, with it off."""
    first = (a == 0) | (b == 0)
    right = np.where(first | (freedom == 1), 2.0, 1.0)
    two = (a == last) | (b == last)
    wrong = np.where(first & (last > 0), 2.0, 1.0)[two]
    return [
        (likely + np.log(right), a, b, np.zeros(len(a), dtype=bool)),
        (likely[two] + np.log(wrong), a[two], b[two], np.ones(int(two.sum()), dtype=bool)),
    ]


def _inverse(own: Array, gram: Array, view: Indices, a: Indices, b: Indices) -> tuple[Array, Array, Array]:
    some, both = a >= 0, b >= 0
    aa, bb = np.where(some, own[view, a], 1.0), np.where(both, own[view, b], 1.0)
    ab = np.where(both, gram[view, a, b], 0.0)
    determinant = aa * bb - ab * ab
    return np.where(some, bb / determinant, 0.0), -ab / determinant, np.where(both, aa / determinant, 0.0)


def averaged(sets: Sets, by_view: Array, values: Array) -> Averaged:
    """A weighting by view that is best when nothing changed (its sum one, or zero), averaged over the sets."""
    effects, whole = along(by_view), by_view.sum(axis=1)
    if not effects.shape[1]:
        effects = np.zeros((len(by_view), 1))
    reach = tuple(
        np.where(at >= 0, effects[sets.view, at], 0.0) + np.where(sets.off & (at == sets.last), whole[sets.view], 0.0)
        for at in (sets.a, sets.b)
    )
    aa, ab, bb = sets.inverse
    taken = np.zeros(effects.shape)
    np.add.at(taken, (sets.view, sets.a), sets.share * (aa * reach[0] + ab * reach[1]))
    np.add.at(taken, (sets.view, sets.b), np.where(sets.b >= 0, sets.share * (ab * reach[0] + bb * reach[1]), 0.0))
    shares = np.bincount(sets.view, sets.share, len(by_view))
    weights = shares @ by_view - np.einsum("mn,mnk->k", taken, sets.images)
    found = (by_view @ values)[sets.view] - reach[0] * sets.sizes[0] - reach[1] * sets.sizes[1]
    return Averaged(weights, found, (reach[0], reach[1]))


def covariance_by_set(sets: Sets, a: Averaged, b: Averaged, by_view: Array) -> Array:
    """Of two weightings under each set; `by_view`: theirs when nothing changed."""
    aa, ab, bb = sets.inverse
    (one, two), (first, second) = a.reach, b.reach
    found: Array = by_view[sets.view] + one * (aa * first + ab * second) + two * (ab * first + bb * second)
    return found


def mixed(sets: Sets, a: Averaged, b: Averaged, by_set: Array) -> float:
    """The covariance of two weightings over all sets that count: within each, and between their values."""
    between = (a.values - sets.share @ a.values) * (b.values - sets.share @ b.values)
    return float(sets.share @ (by_set + between))
