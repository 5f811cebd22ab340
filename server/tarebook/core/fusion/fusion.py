"""The surest weight from all looks at it, what does not fit among them, and what one more look would tell.

The looks of `core/fusion/evidence` are combined by generalised least squares: the weights are V 1 / (1ᵀ V 1) with V the
inverse of their covariance, parts of unknown mass swept out, averaged over how the scales may behave (`behaviour`) and
what may have changed unnoted (`average`). Because each look is kept as the sum of its sources, the weight is one too,
and what it shares with anything else, such as the error of the official scale, is exact.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import sqrt

import numpy as np

from tarebook.core.fusion.average import Averaged, Sets, averaged, covariance_by_set, mixed, sets_of
from tarebook.core.fusion.behaviour import Group
from tarebook.core.fusion.evidence import Evidence
from tarebook.core.fusion.looked import Looked, looked_at
from tarebook.core.fusion.misfit import column
from tarebook.core.fusion.mixture import Spread, spread_of
from tarebook.core.fusion.naming import BEYOND_CHANCE, better_with, named
from tarebook.core.fusion.possible import NOTHING, SCATTER, UNLOGGED, Possible, either_or, possible
from tarebook.core.fusion.precision import Array, best_weights
from tarebook.core.fusion.scatter import Scatter, scatter
from tarebook.core.fusion.views import Told, View
from tarebook.core.numbers.uncertain import Uncertain, covariance, weighted_sum

_LAST_BITS = 1e-12  # of a doubt: a source that cancels


@dataclass(frozen=True)
class Fusion:
    """All looks together. `weight` in kg: the first of the `answers`, which counts; `spread`: all of them together.

    `values`: the weight now by each look. `told`: what they tell under the likeliest behaviour when nothing changed.
    `views`: under each, when changes beyond the surest two may have any size. `names`: what is named as not fitting,
    the surest first. `lower`: the last look is named or, where there are only two to tell, differs by more than chance
    lets it: of two answers the lower counts while its odds exceed the risk. `scatter`: beyond what the records say.
    """

    evidence: Evidence
    values: list[float]
    told: Told
    leading: View
    views: tuple[View, ...]
    names: list[int]
    lower: bool
    sets: Sets
    mean: Averaged
    weight: Uncertain
    answers: tuple[Possible, ...]
    scatter: Scatter | None

    def learned(self, item: Uncertain) -> Uncertain:
        """An item (a scale's gain) with what the looks tell of it, for use beside the weight."""
        by_looks, by_set = self._learned_by_looks(item)
        known = self._with_looks(item, by_looks)
        bare = self._bare()
        common = self.weight.sources.get(UNLOGGED, 0.0)
        apart = mixed(self.sets, self.mean, by_looks, by_set[1]) - covariance(bare, known)
        across = apart / common if common else 0.0
        own = mixed(self.sets, by_looks, by_looks, by_set[2]) - known.u * known.u - across * across
        least = NOTHING * known.u * known.u
        doubts = {UNLOGGED: across} if across * across > least else {}
        if own > least:
            doubts[f"{UNLOGGED}:gain"] = sqrt(own)
        told = {name: part for name, part in known.sources.items() if abs(part) > _LAST_BITS * known.u}
        return Uncertain(known.value, {**told, **doubts})

    def spread(self, item: Uncertain, repeats: float, about: float) -> Spread:
        """How the reading m(1 + g) spreads about that of the weight, g the item (a gain) as the looks tell it.

        `repeats`: how the scale repeats, kg; `about`: the variance that the reading of the weight has, kg².
        """
        by_looks, (weight, across, gain) = self._learned_by_looks(item)
        known = self.learned(item)
        more = self.weight.sources.get(SCATTER, 0.0)
        m, through = self.weight.value, 1.0 + known.value
        off = self.mean.values - (m - self.values[-1])
        gains = by_looks.values + item.value - known.value
        variance = through * through * (weight + more * more) + m * m * gain + 2.0 * m * through * across
        return spread_of(self.sets.chance, off * through + m * gains, variance + repeats * repeats, about)

    def _learned_by_looks(self, item: Uncertain) -> tuple[Averaged, tuple[Array, Array, Array]]:
        """What the looks say of an item; and by set the variance of the weight, their covariance, the item's."""
        shared = np.array(self.evidence.shared_with(item))
        by_view = np.array([-(each.told.beside @ shared) for each in self.views])
        by_looks = averaged(self.sets, by_view, self.apart)
        weights = np.array([best_weights(each.told.matrix) for each in self.views])
        own = np.array([1.0 / each.told.matrix.sum() for each in self.views])
        with_weight = weights @ shared
        of_item = item.u * item.u + by_view @ shared
        return by_looks, (
            covariance_by_set(self.sets, self.mean, self.mean, own),
            covariance_by_set(self.sets, self.mean, by_looks, with_weight),
            covariance_by_set(self.sets, by_looks, by_looks, of_item),
        )

    def _with_looks(self, item: Uncertain, by_looks: Averaged) -> Uncertain:
        terms = self.evidence.expanded(by_looks.weights.tolist())
        return weighted_sum([item, *(each for each, _ in terms)], [1.0, *(weight for _, weight in terms)])

    def _bare(self) -> Uncertain:
        """The weight with the doubts of its terms only."""
        return self.evidence.weighted(self.mean.weights.tolist())

    @property
    def apart(self) -> Array:
        """The looks less the last of them, kg."""
        return np.array(self.values) - self.values[-1]

    def u_with(self, look: Uncertain) -> float:
        """Standard uncertainty of the weight if this look (kg, at the weight now) were there too."""
        shared = np.array(self.evidence.shared_with(look))
        now = self.weight.u * self.weight.u
        new = look.u * look.u - float(shared @ self.leading.told.beside @ shared)
        across = float(self.mean.weights @ shared)
        apart = now + new - 2.0 * across
        return sqrt(max(0.0, now * new - across * across) / apart) if apart > 0.0 else self.weight.u

    def residual(self, look: int) -> Uncertain | None:
        """A look less what the others say; None when they say nothing of it."""
        own = float(self.told.beside[look, look])
        if own <= self.told.least:
            return None
        return Uncertain(float(self.told.beside[look] @ self.apart) / own, {"looks": sqrt(1.0 / own)})

    def size(self, name: int) -> Uncertain:
        """The size of a named change (kg, more in the car is positive), the others named taken out."""
        shape, beside = column(len(self.values), name), self.beside_others(name)
        own = float(shape @ beside @ shape)
        return Uncertain(float(shape @ beside @ self.apart) / own, {"looks": sqrt(1.0 / own)})

    def beside_others(self, name: int) -> Array:
        """What the looks tell beside their mean and all named changes but this one."""
        return self._leading_without([other for other in self.names if other != name]).told.beside

    def _leading_without(self, names: Sequence[int]) -> View:
        return replace(self.leading, told=self.told).without(names)


def fused(evidence: Evidence, among: Sequence[Group] = (), risk: float = 0.05) -> Fusion:
    """The surest weight from the evidence. `among`: the looks that may be off together; `risk`: see `Fusion`."""
    return _answered(looked_at(evidence, among), among, risk)


def _answered(looks: Looked, among: Sequence[Group], risk: float) -> Fusion:
    views = looks.views
    names = named(views)
    leading = max(views, key=lambda each: each.without(names).likely)
    last, freedom = len(leading.values) - 2, leading.told.freedom
    differs = freedom == 1 and float(better_with(views)[last]) > BEYOND_CHANCE
    lower = last in names or differs
    settled = [each.without(names[2:]) for each in views]
    every = sets_of(settled, freedom)
    scattered = scatter(looks.evidence, leading.without(names), len(names), looks.own, looks.rounding)
    found = [
        possible(looks, settled, every.counting(counts), among, scattered, odds, off)
        for counts, odds, off in either_or(every, lower, risk)
    ]
    sets, mean, answer = found[0]
    return Fusion(
        evidence=looks.evidence,
        values=looks.evidence.values(),
        told=leading.told,
        leading=leading,
        views=tuple(settled),
        names=names,
        lower=lower,
        sets=sets,
        mean=mean,
        weight=answer.weight,
        answers=tuple(each[2] for each in found),
        scatter=scattered,
    )
