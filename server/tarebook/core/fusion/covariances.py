"""The covariance of every pair of looks at the weight now, from what their terms share.

What only one term knows of touches the looks in a plain way: an error of one weigh-in its own look, an error of what
was written down between two weigh-ins all looks before. Only the few errors that several terms name, gains and
densities and parts that moved twice, need to be followed by name.
"""

from collections import Counter
from dataclasses import dataclass
from itertools import accumulate
from math import fsum
from operator import mul

from tarebook.core.fusion.evidence import Evidence
from tarebook.core.numbers.uncertain import Uncertain


@dataclass(frozen=True, slots=True)
class Steady:
    """What is the same whatever load the gains are taken to act on.

    `named`: how many terms name an error. `gains`: those of several terms that a load names. `below`: for every look
    its covariance with each look up to itself, kg², by all else that several terms share.
    """

    named: Counter[str]
    gains: list[str]
    below: list[list[float]]


def steady(evidence: Evidence) -> Steady:
    """Taken once, for it is most of the work."""
    terms = [*(item for terms in evidence.own for item, _ in terms), *evidence.written, evidence.target]
    named = Counter(name for item in terms for name in item.sources)
    loads = {name for terms in evidence.own for name in terms[0][0].sources}
    shared = [name for name, times in named.items() if times > 1]
    later = [_alone(item, named) for item in evidence.written]
    after = list(accumulate(reversed(later), initial=_alone(evidence.target, named)))[:0:-1]
    rows = _rows(evidence, [name for name in shared if name not in loads])
    below = [[fsum((*map(mul, row, other), after[at])) for other in rows[: at + 1]] for at, row in enumerate(rows)]
    return Steady(named, [name for name in shared if name in loads], below)


def covariances(evidence: Evidence, same: Steady) -> list[list[float]]:
    """The covariance matrix of the looks, kg². `same`: of this evidence, about whatever loads."""
    alone = [fsum(_alone(item, same.named) for item, _ in terms) for terms in evidence.own]
    rows = _rows(evidence, same.gains)
    below = [
        [
            fsum((*map(mul, row, other), same.below[i][j], alone[i] if i == j else 0.0))
            for j, other in enumerate(rows[: i + 1])
        ]
        for i, row in enumerate(rows)
    ]
    return [[below[max(i, j)][min(i, j)] for j in range(len(rows))] for i in range(len(rows))]


def _rows(evidence: Evidence, names: list[str]) -> list[tuple[float, ...]]:
    """For every look, how far one standard deviation of each of these errors moves it, kg."""
    return list(zip(*(evidence.moved_by(name) for name in names), strict=True)) or [()] * len(evidence.own)


def _alone(item: Uncertain, named: Counter[str]) -> float:
    """The variance of an item by what no other term names."""
    return fsum(part * part for name, part in item.sources.items() if named[name] == 1)
