"""What the product names, held against what is true: which gap between two weigh-ins each named change may lie in.

A weigh-in whose reading is off and something that came in before it and went out after it are the same data, so such a
name counts for a change in either gap beside it. A name that gives a range of places is right when the range is.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import permutations

from tarebook.core.standing.estimate import Fused
from tests.simulated_build.garage import weigh_in_id
from tests.simulated_build.setting import MOST_WEIGH_INS

Gaps = frozenset[int]
_PLACE = {weigh_in_id(k): k for k in range(MOST_WEIGH_INS)}


@dataclass(frozen=True)
class Named:
    """One change: gap g lies between weigh-in g and the next. `within`: where it may be; `best`: where most likely."""

    within: Gaps
    best: Gaps


def named(fused: Fused) -> tuple[Named, ...]:
    """Every change the product names; an outlier between two steps' places stands for two."""
    each = zip(named_of(fused), fused.changes, strict=True)
    return tuple(name for name, change in each for _ in range(2 if change.kind == "outlier" else 1))


def named_of(fused: Fused) -> list[Named]:
    """Where each change lies that the product names."""
    gaps = len(fused.counted) - 1
    return [
        Named(_gaps(gaps, change.earliest, change.latest), _gaps(gaps, change.first, change.second))
        for change in fused.changes
    ]


def tells(fused: Fused) -> bool:
    """Whether anybody is told that something does not fit: a change, or two answers of which either may be so."""
    return bool(fused.changes) or fused.lower


def _gaps(gaps: int, first: str, last: str) -> Gaps:
    """The gaps between two weigh-ins, or those beside one."""
    low, high = _PLACE[first], _PLACE[last]
    beside = range(low - 1, low + 1) if low == high else range(low, high)
    return frozenset(beside) & frozenset(range(gaps))


def all_named(real: Sequence[int], claims: Sequence[Gaps]) -> bool:
    """Whether every real gap is claimed by a name of its own."""
    chosen = permutations(claims, len(real))
    return any(all(gap in claim for gap, claim in zip(real, each, strict=True)) for each in chosen)
