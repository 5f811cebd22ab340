"""A spread of answers about one value, as chances under a bound and as quantiles.

Where the evidence leaves more than one answer, no symmetric interval says what may be relied on: the chance to be under
a bound is Σ p Φ((bound − value) / u) over the answers, and what to keep in hand for a risk is a quantile of that.
Answers within a fifth of the least doubt of any are taken together, with their mean and their variance.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt

import numpy as np

from tarebook.core.fusion.precision import Array
from tarebook.core.numbers import normal

_APART = 0.2
_HALVINGS = 60
_FAR = 9.0  # standard uncertainties


@dataclass(frozen=True, slots=True)
class Lump:
    """Answers taken together: their `chance`, how far `off` the value they are, `more`: of variance than it has."""

    chance: float
    off: float
    more: float


Spread = tuple[Lump, ...]
CERTAIN: Spread = (Lump(1.0, 0.0, 0.0),)


def spread_of(chance: Array, off: Array, variance: Array, about: float) -> Spread:
    """The answers as a few lumps, in order of `off`. `about`: the variance of the value they are about."""
    width = _APART * sqrt(max(0.0, float(variance.min())))
    if width <= 0.0:
        places = zip(chance.tolist(), off.tolist(), variance.tolist(), strict=True)
        return tuple(Lump(p, x, max(0.0, v) - about) for p, x, v in places)
    # Most answers are off by nothing or nearly so: that is the middle of a lump, not where two meet.
    found, lump = np.unique(np.floor(off / width + 0.5), return_inverse=True)
    whole = np.bincount(lump, chance, len(found))
    mean = np.bincount(lump, chance * off, len(found)) / whole
    inner = np.bincount(lump, chance * (variance + (off - mean[lump]) ** 2), len(found)) / whole
    return tuple(Lump(*each) for each in zip(whole.tolist(), mean.tolist(), (inner - about).tolist(), strict=True))


def chance_below(bound: float, value: float, variance: float, spread: Spread) -> float:
    """The chance to be under a bound. `variance`: of the value."""
    return sum(each.chance * _below(bound - value - each.off, variance + each.more) for each in spread)


def _below(short: float, variance: float) -> float:
    return normal.cumulative(short / sqrt(variance)) if variance > 0.0 else float(short > 0.0)


def value_for(bound: float, variance: float, spread: Spread, risk: float) -> float:
    """The least value, to the last digits, at which the chance to be under the bound is no more than the risk."""
    reach = _FAR * sqrt(max(0.0, *(variance + each.more for each in spread)))
    low = bound - max(each.off for each in spread) - reach
    high = bound - min(each.off for each in spread) + reach
    for _ in range(_HALVINGS):
        middle = 0.5 * (low + high)
        if chance_below(bound, middle, variance, spread) > risk:
            low = middle
        else:
            high = middle
    return high
