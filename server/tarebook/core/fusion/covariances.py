"""The covariance of every pair of looks at the weight now, from what their terms share.

What only one term knows of touches the looks in a plain way: an error of one weigh-in its own look, an error of what
was written down between two weigh-ins all looks before. Only the few errors that several terms name, gains and
densities and parts that moved twice, need to be followed by name.
"""

from collections import Counter
from dataclasses import dataclass
from itertools import accumulate
from math import fsum

import numpy as np

from tarebook.core.fusion.evidence import Evidence
from tarebook.core.fusion.precision import Array
from tarebook.core.numbers.uncertain import Uncertain
from tarebook.core.whole_car.weighed import Terms


@dataclass(frozen=True, slots=True)
class Steady:
    """What is the same whatever load the gains are taken to act on.

    `named`: how many terms name an error. `gains`: those of several terms that a load names. `shared`: the covariance
    of the looks by all else that several terms share, kg². `later`: by what one net alone names.
    """

    named: Counter[str]
    gains: list[str]
    shared: Array


def steady(evidence: Evidence) -> Steady:
    """Taken once, for it is most of the work."""
    terms = [*(item for terms in evidence.own for item, _ in terms), *evidence.written, evidence.target]
    named = Counter(name for item in terms for name in item.sources)
    loads = {name for terms in evidence.own for name in terms[0][0].sources}
    several = [name for name, times in named.items() if times > 1]
    later = [_alone(item, named) for item in evidence.written]
    after = np.array(list(accumulate(reversed(later), initial=_alone(evidence.target, named)))[:0:-1])
    rows = _rows(evidence, [name for name in several if name not in loads])
    at = np.arange(len(evidence.own))
    return Steady(named, [name for name in several if name in loads], rows @ rows.T + after[np.maximum.outer(at, at)])


def covariances(evidence: Evidence, same: Steady) -> Array:
    """The covariance matrix of the looks, kg². `same`: of this evidence, about whatever loads."""
    rows = _rows(evidence, same.gains)
    return rows @ rows.T + same.shared + np.diag([_own(terms, same.named) for terms in evidence.own])


def own_looks(evidence: Evidence, same: Steady, of: tuple[str, ...] = ("round:", "rep:")) -> Array:
    """The variance of each look by its display and by how the scale repeats alone, kg²."""
    own = [terms[0][0].sources for terms in evidence.own]
    return np.array([
        fsum(part * part for name, part in sources.items() if same.named[name] == 1 and name.startswith(of))
        for sources in own
    ])  # fmt: skip


def _own(terms: Terms, named: Counter[str]) -> float:
    return fsum(_alone(item, named) for item, _ in terms)


def _rows(evidence: Evidence, names: list[str]) -> Array:
    """For every look, how far one standard deviation of each of these errors moves it, kg."""
    columns = [evidence.moved_by(name) for name in names]
    return np.array(columns).T if columns else np.zeros((len(evidence.own), 0))


def _alone(item: Uncertain, named: Counter[str]) -> float:
    """The variance of an item by what no other term names."""
    return fsum(part * part for name, part in item.sources.items() if named[name] == 1)
