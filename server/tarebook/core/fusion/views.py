"""What the looks tell under each behaviour of the scales, and how well each behaviour explains them.

A behaviour adds to the covariance of the looks (`behaviour`); how likely it is, with the weight and every part of
unknown mass unknown altogether, is its chance beforehand times the restricted likelihood of the looks under it

    ln L = −½ (ln|S| + ln(1ᵀV1) + Σ ln(xᵀVx) + rᵀWr)

[H. D. Patterson and R. Thompson, Biometrika 58 (1971) 545]. One that explains them far worse than the best is dropped.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import log

import numpy as np

from tarebook.core.fusion.behaviour import Behaviour
from tarebook.core.fusion.misfit import Candidates, candidates, column
from tarebook.core.fusion.precision import Array, cleared, least_telling, precision, swept


@dataclass(frozen=True, slots=True)
class Told:
    """What the looks tell: the inverse of their covariance, parts of unknown mass swept out.

    `beside`: beside their mean. `freedom`: how many independent things that is. `nothing_new`: looks that tell nothing
    the later ones do not. `doubts`: the standard uncertainty of each look alone, kg.
    """

    matrix: Array
    beside: Array
    freedom: int
    nothing_new: list[int]
    doubts: Array

    @property
    def least(self) -> float:
        return least_telling(self.matrix)


@dataclass(frozen=True, slots=True)
class View:
    """The looks under one `behaviour`. `likely`: ln of its chance times the likelihood, up to a constant."""

    behaviour: Behaviour
    told: Told
    likely: float
    values: Array

    def without(self, names: Sequence[int]) -> View:
        """The same when these changes may have any size."""
        told, likely, count = self.told, self.likely, len(self.values)
        for name in names:
            shape = column(count, name)
            size = float(shape @ told.beside @ shape)
            if size > told.least:
                size_told = float(shape @ told.beside @ self.values)
                likely += 0.5 * size_told * size_told / size - 0.5 * log(size)
            matrix = swept(told.matrix, shape, told.least)
            told = replace(told, matrix=matrix, beside=swept(matrix, np.ones(count), 0.0))
        return replace(self, told=told, likely=likely)

    def candidates(self) -> Candidates:
        return candidates(self.told.beside, self.values, self.told.least)

    @property
    def misfit(self) -> float:
        """χ² of what the looks say beside their mean."""
        return float(self.values @ self.told.beside @ self.values)


@dataclass(frozen=True, slots=True)
class Root:
    """The inverse of a covariance of the looks, `doubts` its diagonal's roots, and ln of its determinant.

    `kept`: the looks that tell something the later ones do not.
    """

    matrix: Array
    likely: float
    doubts: Array
    kept: list[int]

    def also(self, column: Array) -> Root:
        """With an error more that moves the looks by this column [J. Sherman and W. J. Morrison, 1950]."""
        image = self.matrix @ column
        more = 1.0 + float(column @ image)
        matrix = self.matrix - np.outer(image, image) / more
        return Root(matrix, self.likely + log(more), np.sqrt(self.doubts**2 + column**2), self.kept)


def root(covariance: Array, kept: list[int]) -> Root:
    doubts = np.sqrt(np.diag(covariance))
    if kept:
        return Root(*precision(covariance, kept), doubts, kept)
    # Nothing is in doubt at all: the last look is as good as any.
    matrix = np.zeros(covariance.shape)
    matrix[-1, -1] = 1.0
    return Root(matrix, 0.0, doubts, [len(doubts) - 1])


def view(behaviour: Behaviour, found: Root, flat: Sequence[Array], values: Array) -> View:
    """`flat`: columns of unknown size."""
    matrix, likely, count = found.matrix, found.likely, len(values)
    least, freedom = least_telling(matrix), len(found.kept) - 1
    for part in flat:
        size = float(part @ matrix @ part)
        if size > least:
            matrix, likely = swept(matrix, part, least), likely + log(size)
            freedom -= 1
    matrix = cleared(matrix, least)
    beside = swept(matrix, np.ones(count), 0.0)
    nothing_new = [at for at in range(count) if at not in set(found.kept)]
    told = Told(matrix, beside, freedom, nothing_new, found.doubts)
    misfit = float(values @ beside @ values)
    return View(behaviour, told, behaviour.likely - 0.5 * (likely + log(matrix.sum()) + misfit), values)


def log_sum(likely: Array, axis: int = 0) -> Array:
    """ln Σ exp, over one axis."""
    most = likely.max(axis=axis, keepdims=True)
    found: Array = np.squeeze(most, axis) + np.log(np.exp(likely - most).sum(axis=axis))
    return found
