"""Readings that scatter more than their scales' records say: by how much, and what would explain it.

What is left over after naming, χ² of f freedoms, is more than the records allow when chance reaches it once in twenty
(by the cube root of E. B. Wilson and M. M. Hilferty, Proc. Natl. Acad. Sci. 17 (1931) 684). Then the part of the doubt
that no two looks share is multiplied by the Birge ratio √(χ²/f) [R. T. Birge, Phys. Rev. 40 (1932) 207]: no spread can
tell of an error all of them have.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt

import numpy as np

from tarebook.core.fusion.evidence import Evidence
from tarebook.core.fusion.precision import Array
from tarebook.core.fusion.views import View

_Z = 1.6448536269514722  # of the standard normal distribution, 95 % below it


@dataclass(frozen=True, slots=True)
class Scatter:
    """`scale`: whose looks scatter the most. `repeats`: what it would have to repeat a car to, kg, to explain it.

    `wider`: what widens the independent part of the doubt, a factor of its variance less one.
    """

    scale: str | None
    repeats: float
    wider: float


def scatter(evidence: Evidence, left: View, taken: int, own: Array, rounding: Array) -> Scatter | None:
    """`left`: the looks when what is named, `taken` in number, may have any size.

    `own`, `rounding`: the variance of each look by its display and repeating, and by its steps only, kg².
    """
    wider = birge(left, taken)
    ratio = wider * left.behaviour.scatter
    if ratio == 1.0:
        return None
    off = left.told.beside @ left.values
    by_scale: dict[str | None, list[int]] = {}
    for at, each in enumerate(evidence.counted):
        by_scale.setdefault(each.record.scale, []).append(at)
    worst = max(by_scale, key=lambda name: float(np.sum((off * off * own)[by_scale[name]])))
    look = max(by_scale[worst], key=lambda at: float(own[at]))
    repeats = sqrt(max(0.0, ratio * ratio * float(own[look]) - float(rounding[look])))
    return Scatter(worst, repeats, (wider * wider - 1.0) * left.behaviour.scatter**2)


def birge(left: View, taken: int) -> float:
    """Birge's ratio, 1 where chance alone may do it."""
    freedom = left.told.freedom - taken
    return sqrt(left.misfit / freedom) if freedom > 0 and left.misfit > most(freedom) else 1.0


def most(freedom: int) -> float:
    """The χ² that chance exceeds once in twenty."""
    part = 2.0 / (9.0 * freedom)
    root = 1.0 - part + _Z * sqrt(part)
    return freedom * root * root * root
