"""The weights the looks allow: one, or two where the last of them is either right or off; each with its doubt."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt

import numpy as np

from tarebook.core.fusion.average import Averaged, Flags, Sets, averaged, covariance_by_set, mixed
from tarebook.core.fusion.behaviour import Behaviour, Group, moved, scattered
from tarebook.core.fusion.looked import Looked
from tarebook.core.fusion.precision import Array, best_weights
from tarebook.core.fusion.scatter import Scatter
from tarebook.core.fusion.views import View
from tarebook.core.numbers.uncertain import Uncertain

NOTHING = 1e-6  # of a variance: a thousandth of the doubt, and what is less is rounding
UNLOGGED, SCATTER = "unlogged", "scatter"
"""The sources that hold the doubt about changes nobody wrote down, and of readings that scatter, beside the others."""


@dataclass(frozen=True, slots=True)
class Possible:
    """One of the weights the looks allow, kg, with its own doubt, and its `odds`. `off`: the last look is off then."""

    weight: Uncertain
    odds: float
    off: bool | None


def possible(
    looks: Looked,
    views: list[View],
    sets: Sets,
    among: Sequence[Group],
    scattered: Scatter | None,
    odds: float,
    off: bool | None,
) -> tuple[Sets, Averaged, Possible]:
    weights = np.array([best_weights(each.told.matrix) for each in views])
    own = np.array([1.0 / each.told.matrix.sum() for each in views])
    mean = averaged(sets, weights, views[0].values)
    bare = looks.evidence.weighted(mean.weights.tolist())
    whole = mixed(sets, mean, mean, covariance_by_set(sets, mean, mean, own))
    extra = whole - bare.u * bare.u
    doubts = _doubts(looks, views, sets, mean, among, extra if extra > NOTHING * whole else 0.0)
    if scattered and scattered.wider:
        doubts[SCATTER] = sqrt(scattered.wider * float(mean.weights * mean.weights @ looks.own))
    return sets, mean, Possible(Uncertain(bare.value, {**bare.sources, **doubts}), odds, off)


def either_or(sets: Sets, lower: bool, risk: float) -> list[tuple[Flags, float, bool | None]]:
    """The answers: which sets count in each, its odds, and whether the last look is off in it; what counts first.

    That is the lower one when its odds exceed the risk accepted: nobody may rely on weight that may not be there.
    """
    two, low = sets.two, sets.low
    alike = float(sets.chance[two].sum())
    if not lower or alike <= 0.0:
        return [(np.ones(len(sets.chance), dtype=bool), 1.0, None)]
    odds = float(sets.chance[low].sum()) / alike
    is_off = float(sets.chance[low & sets.off].sum()) > float(sets.chance[low & ~sets.off].sum())
    answers: list[tuple[Flags, float, bool | None]] = [
        (~two | low, odds, is_off),
        (~two | ~low, 1.0 - odds, not is_off),
    ]
    return answers if odds > risk else answers[::-1]


def _doubts(
    looks: Looked, views: list[View], sets: Sets, mean: Averaged, among: Sequence[Group], extra: float
) -> dict[str, float]:
    """What averaging adds to the doubt of the errors: wandering gains, zeros, and else what nobody wrote down."""
    shares = np.bincount(sets.view, sets.share, len(views)).tolist()
    found, rest = {}, extra
    for group in among:
        for name, alone in (("wander", Behaviour.wandering), ("zero", Behaviour.off_zero)):
            moves = (_moved_by(alone(each.behaviour), group, looks, mean.weights) for each in views)
            part = min(sum(share * move for share, move in zip(shares, moves, strict=True)), rest)
            if part > NOTHING * extra:
                found[f"{name}:{group.scale}"] = sqrt(part)
                rest -= part
    return {**found, UNLOGGED: sqrt(rest)} if rest > NOTHING * extra else found


def _moved_by(behaviour: Behaviour, group: Group, looks: Looked, weights: Array) -> float:
    """The variance that a behaviour of one scale puts into a weighting of the looks."""
    walked = scattered(behaviour, (group,), looks.loads, 0.0 * looks.own)
    columns = moved(behaviour, (group,), looks.loads)
    return float(weights @ walked @ weights) + sum(float(weights @ column) ** 2 for column in columns)
