"""What does not fit among looks at one thing, in order of time: steps and single looks that are off.

A step between two looks says that something went in or came out there and nobody wrote it down: all looks before it
lack it. A single look may be off by itself. Next to the first or the last look the two are the same data. For any of
these, a column h, with W what the looks tell beside their mean: δ = hᵀWt / hᵀWh is its size, (hᵀWh)^−½ the standard
uncertainty of that, and Δχ² = (hᵀWt)² / hᵀWh what the looks fit better with it.

The first is named when Δχ² is beyond what chance does once in twenty among all candidates; two together likewise, which
finds two that hide each other. Once something is wrong, a second is named when it pays for the choice of its place,
2 ln n for n candidates [Foster and George, Ann. Statist. 22 (1994) 1947]; a third must stand as the first. One degree
of freedom is always left over: what explains everything explains nothing.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate
from math import log

from tarebook.core.fusion.precision import Matrix, least_telling, swept, times
from tarebook.core.numbers import normal

BEYOND_CHANCE = 3.841458820694124  # χ² of one degree of freedom, 95 %
_BY_CHANCE = 0.05
_COLLINEAR = 1e-9


@dataclass(frozen=True, slots=True)
class Candidates:
    """Every step and every look that may be off: `count` − 1 steps, then the looks between the first and the last.

    A step `at` lies between the looks `at` and `at` + 1. `images`: W h of each; `gram`: hᵀWh'; `told`: hᵀWt.
    """

    count: int
    images: Matrix
    gram: Matrix
    told: list[float]
    least: float

    @property
    def usable(self) -> list[int]:
        """Those the looks can tell anything of."""
        return [at for at in range(len(self.told)) if self.gram[at][at] > self.least]

    def better(self, at: int) -> float:
        """Δχ² of one candidate."""
        return self.told[at] * self.told[at] / self.gram[at][at] if self.gram[at][at] > self.least else 0.0

    def determinant(self, a: int, b: int) -> float:
        """That of a pair's normal equations; zero when the looks cannot tell the two apart."""
        both = self.gram[a][a] * self.gram[b][b]
        found = both - self.gram[a][b] * self.gram[a][b]
        return found if found > _COLLINEAR * both else 0.0


def along(vector: Sequence[float]) -> list[float]:
    """hᵀv for the column h of every candidate: −1 for the looks before a step, 1 for a single look."""
    return [-before for before in accumulate(vector[:-1])] + list(vector[1:-1])


def column(count: int, candidate: int) -> list[float]:
    """The column of a candidate."""
    if candidate < count - 1:
        return [-1.0 if look <= candidate else 0.0 for look in range(count)]
    return [1.0 if look == look_of(count, candidate) else 0.0 for look in range(count)]


def look_of(count: int, candidate: int) -> int:
    """The look a candidate that is no step says is off."""
    return candidate - (count - 1) + 1


def candidates(told: Matrix, values: Sequence[float], least: float) -> Candidates:
    """`told`: what the looks tell beside their mean; `values` of the looks."""
    count = len(values)
    steps: Matrix = []
    image = [0.0] * count
    for row in told[:-1]:
        image = [x - y for x, y in zip(image, row, strict=True)]
        steps.append(image)
    images = [*steps, *told[1:-1]]
    return Candidates(count, images, [along(image) for image in images], along(times(told, values)), least)


def named(told: Matrix, values: Sequence[float], freedom: int) -> list[int]:
    """The candidates to name, the surest first.

    `told`: what the looks tell beside their mean; `freedom`: how many independent things that are.
    """
    least = least_telling(told)
    found = candidates(told, values, least)
    usable = found.usable
    if freedom < 2 or not usable:
        return []
    first = _first(len(usable))
    chosen = _pair_or_one(found, usable, freedom, first)
    while chosen and freedom - len(chosen) >= 2:
        for at in chosen:
            told = swept(told, column(found.count, at), least)
        left = candidates(told, values, least)
        best = max(range(len(left.told)), key=left.better)
        if left.better(best) <= first:
            break
        chosen = [*chosen, best]
    return chosen


def _first(count: int) -> float:
    """The Δχ² that chance reaches once in twenty, at the most, among so many candidates."""
    z = normal.inverse(_BY_CHANCE / (2 * count))
    return z * z


def _pair_or_one(found: Candidates, usable: Sequence[int], freedom: int, first: float) -> list[int]:
    best = max(usable, key=found.better)
    alone = found.better(best)
    pair, together = _best_pair(found, usable) if freedom > 2 else ((), 0.0)
    pairs = len(usable) * (len(usable) - 1) / 2
    is_told = alone > first or (pairs > 0 and together > -2.0 * log(_BY_CHANCE / pairs))
    if is_told and together - alone > max(BEYOND_CHANCE, 2.0 * log(len(usable))):
        return sorted(pair, key=found.better, reverse=True)
    return [best] if alone > first else []


def _best_pair(found: Candidates, usable: Sequence[int]) -> tuple[tuple[int, ...], float]:
    """The two that fit best together, and their Δχ²."""
    best: tuple[int, ...] = ()
    most = 0.0
    gram, told = found.gram, found.told
    for at, a in enumerate(usable):
        row, here = gram[a], told[a]
        for b in usable[at + 1 :]:
            determinant = found.determinant(a, b)
            if determinant:
                cross = here * here * gram[b][b] - 2.0 * here * told[b] * row[b] + told[b] * told[b] * row[a]
                if cross > most * determinant:
                    best, most = (a, b), cross / determinant
    return best, most
