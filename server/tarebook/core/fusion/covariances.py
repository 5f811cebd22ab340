"""The covariance of every pair of looks at the weight now, from what their terms share.

What only one term knows of touches the looks in a plain way: an error of one weigh-in its own look, an error of what
was written down between two weigh-ins all looks before. Only the few errors that several terms name, gains and
densities and parts that moved twice, need to be followed by name.
"""

from __future__ import annotations

from collections import Counter
from itertools import accumulate
from math import fsum
from operator import mul

from tarebook.core.fusion.evidence import Evidence
from tarebook.core.numbers.uncertain import Uncertain


def covariances(evidence: Evidence) -> list[list[float]]:
    """The covariance matrix of the looks, kg²."""
    own = [[item for item, _ in terms] for terms in evidence.own]
    terms = [*(item for items in own for item in items), *evidence.written, evidence.target]
    named = Counter(name for item in terms for name in item.sources)
    shared = [name for name, times in named.items() if times > 1]
    alone = [fsum(_alone(item, named) for item in items) for items in own]
    later = [_alone(item, named) for item in evidence.written]
    after = list(accumulate(reversed(later), initial=_alone(evidence.target, named)))[:0:-1]
    rows = list(zip(*(evidence.moved_by(name) for name in shared), strict=True)) or [()] * len(own)
    size = range(len(own))
    return [
        [fsum((*map(mul, rows[i], rows[j]), after[max(i, j)], alone[i] if i == j else 0.0)) for j in size] for i in size
    ]


def _alone(item: Uncertain, named: Counter[str]) -> float:
    """The variance of an item by what no other term names."""
    return fsum(part * part for name, part in item.sources.items() if named[name] == 1)
