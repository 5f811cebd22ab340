"""What does not fit among looks at one thing, in order of time: steps and single looks that are off.

A step between two looks says that something went in or came out there and nobody wrote it down: all looks before it
lack it. A single look may be off by itself. Next to the first or the last look the two are the same data. For any of
these, a column h, with W what the looks tell beside their mean: δ = hᵀWt / hᵀWh is its size, (hᵀWh)^−½ the standard
uncertainty of that, and Δχ² = (hᵀWt)² / hᵀWh what the looks fit better with it.
"""

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from tarebook.core.fusion.precision import Array

_COLLINEAR = 1e-9


@dataclass(frozen=True)
class Candidates:
    """Every step and every look that may be off: `count` − 1 steps, then the looks between the first and the last.

    A step `at` lies between the looks `at` and `at` + 1. `images`: W h of each; `gram`: hᵀWh'; `told`: hᵀWt.
    """

    count: int
    images: Array
    gram: Array
    told: Array
    least: float

    @cached_property
    def own(self) -> Array:
        return np.diag(self.gram)

    @cached_property
    def usable(self) -> NDArray[np.intp]:
        """Those the looks can tell anything of."""
        return np.flatnonzero(self.own > self.least)

    @cached_property
    def better(self) -> Array:
        """Δχ² of each candidate."""
        safe = np.where(self.own > self.least, self.own, 1.0)
        return np.where(self.own > self.least, self.told * self.told / safe, 0.0)

    def determinant(self, a: NDArray[np.intp], b: NDArray[np.intp]) -> Array:
        """That of pairs' normal equations; zero where the looks cannot tell the two apart."""
        both = self.own[a] * self.own[b]
        found = both - self.gram[a, b] ** 2
        return np.where(found > _COLLINEAR * both, found, 0.0)

    def better_together(self, a: NDArray[np.intp], b: NDArray[np.intp]) -> Array:
        """Δχ² of pairs; zero where the looks cannot tell the two apart."""
        determinant = self.determinant(a, b)
        one, two = self.told[a], self.told[b]
        cross = one * one * self.own[b] - 2.0 * one * two * self.gram[a, b] + two * two * self.own[a]
        return np.where(determinant > 0.0, cross / np.where(determinant > 0.0, determinant, 1.0), 0.0)


def along(vector: Array) -> Array:
    """hᵀv for the column h of every candidate, over the last axis: −1 for the looks before a step, 1 for a look."""
    return np.concatenate([-np.cumsum(vector[..., :-1], axis=-1), vector[..., 1:-1]], axis=-1)


def column(count: int, candidate: int) -> Array:
    """The column of a candidate."""
    looks = np.arange(count)
    if candidate < count - 1:
        return np.where(looks <= candidate, -1.0, 0.0)
    return np.where(looks == look_of(count, candidate), 1.0, 0.0)


def look_of(count: int, candidate: int) -> int:
    """The look a candidate that is no step says is off."""
    return candidate - (count - 1) + 1


def candidates(told: Array, values: Array, least: float) -> Candidates:
    """`told`: what the looks tell beside their mean; `values` of the looks."""
    images = along(told).T
    return Candidates(len(values), images, along(images), along(told @ values), least)


def pairs_of(usable: NDArray[np.intp]) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """Every two of them, in order."""
    a, b = np.triu_indices(len(usable), 1)
    return usable[a], usable[b]
