"""The surest weight from all looks at it, what does not fit among them, and what one more look would tell.

The looks of `core/fusion/evidence` are combined by generalised least squares: the weights are V 1 / (1ᵀ V 1) with V the
inverse of their covariance, parts of unknown mass swept out. Because each look is kept as the sum of its sources, the
weight is one too, and what it shares with anything else, such as the error of the official scale, is exact.

A scale's gain acts on the car, not on the reading: the errors of gains are taken at the loads the fit says, three times
over. At the readings, a low reading would look the surer for being low.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import sqrt

from tarebook.core.fusion.average import Averaged, Guess, averaged, guesses, spread
from tarebook.core.fusion.covariances import Steady, covariances, steady
from tarebook.core.fusion.evidence import Evidence
from tarebook.core.fusion.misfit import BEYOND_CHANCE, Candidates, candidates, column, named
from tarebook.core.fusion.precision import Matrix, best_weights, cleared, least_telling, precision, swept, times
from tarebook.core.numbers.plain import dot
from tarebook.core.numbers.uncertain import Uncertain, weighted_sum

_PASSES = 3
UNLOGGED = "unlogged"
"""The source that holds the doubt about changes nobody wrote down, beside the errors of the looks."""


@dataclass(frozen=True, slots=True)
class Told:
    """What the looks tell: the inverse of their covariance, parts of unknown mass swept out.

    `beside`: beside their mean. `freedom`: how many independent things that are. `nothing_new`: looks that tell nothing
    the later ones do not. `doubts`: the standard uncertainty of each look alone, kg.
    """

    matrix: Matrix
    beside: Matrix
    freedom: int
    nothing_new: list[int]
    doubts: list[float]

    @property
    def least(self) -> float:
        return least_telling(self.matrix)

    def without(self, names: Sequence[int]) -> Told:
        """What is left when these changes may have any size."""
        matrix, count = self.matrix, len(self.matrix)
        for name in names:
            matrix = swept(matrix, column(count, name), self.least)
        return replace(self, matrix=matrix, beside=swept(matrix, [1.0] * count, 0.0))


@dataclass(frozen=True, slots=True)
class Fusion:
    """All looks together. `weight` in kg.

    `values`: the weight now by each look. `told`: what they tell when nothing changed; `settled`: when changes beyond
    the surest two may have any size. `names`: what is named as not fitting, the surest first. `lower`: the last look
    is named or, where there are only two to tell, differs by more than chance lets it: the lower answer counts.
    `cautious`: the weight with the doubt of the answers that count only, for asking how low it may be.
    """

    evidence: Evidence
    values: list[float]
    told: Told
    settled: Told
    names: list[int]
    lower: bool
    found: Candidates
    sets: list[Guess]
    mean: Averaged
    weight: Uncertain
    cautious: Uncertain

    def learned(self, item: Uncertain) -> Uncertain:
        """An item (a scale's gain) with what the looks tell of it, for use beside the cautious weight."""
        shared = self.evidence.shared_with(item)
        by_looks = averaged(self.found, self.sets, [-each for each in times(self.settled.beside, shared)])
        terms = self.evidence.expanded(by_looks.weights)
        known = weighted_sum([item, *(each for each, _ in terms)], [1.0, *(weight for _, weight in terms)])
        common = self.cautious.sources.get(UNLOGGED, 0.0)
        across = spread(self.found, self.sets, self.mean, by_looks, cautious=True) / common if common else 0.0
        own = spread(self.found, self.sets, by_looks, by_looks, cautious=True) - across * across
        doubts = {UNLOGGED: across, f"{UNLOGGED}:gain": sqrt(max(0.0, own))}
        return Uncertain(known.value, {**known.sources, **{name: part for name, part in doubts.items() if part}})

    def u_with(self, look: Uncertain) -> float:
        """Standard uncertainty of the weight if this look (kg, at the weight now) were there too."""
        shared = self.evidence.shared_with(look)
        now = self.weight.u * self.weight.u
        new = look.u * look.u - dot(shared, times(self.settled.beside, shared))
        across = dot(self.mean.weights, shared)
        apart = now + new - 2.0 * across
        return sqrt(max(0.0, now * new - across * across) / apart) if apart > 0.0 else self.weight.u

    def residual(self, look: int) -> Uncertain | None:
        """A look less what the others say; None when they say nothing of it."""
        own = self.told.beside[look][look]
        if own <= self.told.least:
            return None
        return Uncertain(dot(self.told.beside[look], self.values) / own, {"looks": sqrt(1.0 / own)})

    def size(self, name: int) -> Uncertain:
        """The size of a named change (kg, more in the car is positive), the others named taken out."""
        shape = column(len(self.values), name)
        image = times(self.beside_others(name), shape)
        own = dot(image, shape)
        return self.evidence.weighted([each / own for each in image])

    def beside_others(self, name: int) -> Matrix:
        """What the looks tell beside their mean and all named changes but this one."""
        return self.told.without([other for other in self.names if other != name]).beside


def fused(evidence: Evidence) -> Fusion:
    """The surest weight from the evidence."""
    values = evidence.values()
    same = steady(evidence)
    told = _told(evidence, same)
    for _ in range(_PASSES):
        mean = dot(best_weights(told.matrix), values)
        totals = [each.loads.total or Uncertain(mean) for each in evidence.counted]
        evidence = evidence.about([load.value - (value - mean) for load, value in zip(totals, values, strict=True)])
        told = _told(evidence, same)
    names = named(told.beside, values, told.freedom)
    settled = told.without(names[2:])
    found = candidates(settled.beside, values, told.least)
    last = len(values) - 2
    lower = last in names or (told.freedom == 1 and found.better(last) > BEYOND_CHANCE)
    sets = guesses(found, told.freedom, lower)
    mean_of = averaged(found, sets, best_weights(settled.matrix))
    weight = evidence.weighted(mean_of.weights)
    doubted = _doubted(weight, spread(found, sets, mean_of, mean_of))
    cautious = _doubted(weight, spread(found, sets, mean_of, mean_of, cautious=True))
    return Fusion(evidence, values, told, settled, names, lower, found, sets, mean_of, doubted, cautious)


def _doubted(weight: Uncertain, variance: float) -> Uncertain:
    """The weight with the doubt of changes beside its own."""
    return Uncertain(weight.value, {**weight.sources, UNLOGGED: sqrt(variance)}) if variance > 0.0 else weight


def _told(evidence: Evidence, same: Steady) -> Told:
    shared = covariances(evidence, same)
    matrix, nothing_new = precision(shared)
    count = len(matrix)
    if len(nothing_new) == count:  # nothing is in doubt at all: the last look is as good as any
        matrix[-1][-1] = 1.0
        nothing_new = nothing_new[:-1]
    least, freedom = least_telling(matrix), count - len(nothing_new) - 1
    for part in evidence.flat:
        if dot(part, times(matrix, part)) > least:
            matrix = swept(matrix, part, least)
            freedom -= 1
    matrix = cleared(matrix, least)
    doubts = [sqrt(row[at]) for at, row in enumerate(shared)]
    return Told(matrix, swept(matrix, [1.0] * count, 0.0), freedom, nothing_new, doubts)
