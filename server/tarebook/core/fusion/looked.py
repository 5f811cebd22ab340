"""The looks of the evidence under every behaviour of the scales worth following.

A scale's gain acts on the car, not on the reading: the errors of gains are taken at the loads the fit says, three times
over. At the readings, a low reading would look the surer for being low.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import reduce

import numpy as np

from tarebook.core.fusion.behaviour import Group, behaviours, moved, scattered
from tarebook.core.fusion.covariances import covariances, own_looks, steady
from tarebook.core.fusion.evidence import Evidence
from tarebook.core.fusion.precision import Array, best_weights, telling
from tarebook.core.fusion.views import Root, View, root, view
from tarebook.core.numbers.uncertain import Uncertain

_PASSES = 3
_FAR_LESS = 12.0  # a behaviour this much less likely (in ln) than the best says nothing


@dataclass(frozen=True)
class Looked:
    """`own`: the variance of each look by its display alone, kg²; `rounding`: of that, by its steps."""

    evidence: Evidence
    views: list[View]
    loads: Array
    own: Array
    rounding: Array


def looked_at(evidence: Evidence, among: Sequence[Group]) -> Looked:
    """The looks under every behaviour worth following, gains acting on the loads of the fit."""
    values, same = np.array(evidence.values()), steady(evidence)
    apart = values - values[-1]
    flat = [np.array(part) for part in evidence.flat]
    thought_of = behaviours(among)
    bare = covariances(evidence, same)
    kept = telling(bare)
    loads = apart
    for _ in range(_PASSES):
        first = view(thought_of[0], root(bare, kept), flat, apart)
        mean = values[-1] + float(best_weights(first.told.matrix) @ apart)
        totals = [each.loads.total or Uncertain(mean) for each in evidence.counted]
        loads = np.array([load.value for load in totals]) - (values - mean)
        evidence = evidence.about(loads.tolist())
        bare = covariances(evidence, same)
    own = own_looks(evidence, same)
    roots: dict[tuple[float, float], Root] = {}
    views = []
    for each in thought_of:
        alike = (each.walk, each.scatter)
        if alike not in roots:
            roots[alike] = root(bare + scattered(each, among, loads, own), kept)
        views.append(view(each, reduce(Root.also, moved(each, among, loads), roots[alike]), flat, apart))
    return Looked(evidence, _likely_enough(views), loads, own, own_looks(evidence, same, ("round:",)))


def _likely_enough(views: list[View]) -> list[View]:
    """The behaviours worth following, with a change or without; the steady one stays."""
    best = [each.likely + 0.5 * float(each.candidates().better.max(initial=0.0)) for each in views]
    most = max(best)
    return [each for at, each in enumerate(views) if at == 0 or best[at] > most - _FAR_LESS]
