"""Several readings of one thing: their mean, and whether they agree.

The weighted mean by generalised least squares, with what the readings share: readings of one scale share its gain,
scales checked with one known mass share that. Shared errors are taken at the mean, not at each reading: at the
readings, a low reading would look the more certain for being low, and pull the mean under all of them (known as
Peelle's puzzle). Readings of one scale then share all of their gain's error, so they can be averaged first; what is
left is one small system, a row a scale.

A spread beyond one division and beyond what the uncertainties explain widens the mean by the Birge ratio, but only the
part the readings do not share: no spread can tell of an error that all of them have in common.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations
from math import sqrt
from typing import Protocol

from tarebook.core.numbers.plain import dot, plain_sum
from tarebook.core.numbers.uncertain import Uncertain

_BEYOND = 1.5
_PASSES = 3  # the mean moves the shared errors by their own tiny size; the third pass changes nothing


class Look(Protocol):
    """One reading as the mean needs it: value and own standard uncertainty, of one piece, kg."""

    @property
    def weighing(self) -> str: ...
    @property
    def scale(self) -> str: ...
    @property
    def value(self) -> float: ...
    @property
    def own(self) -> float: ...
    @property
    def division(self) -> float: ...


@dataclass(frozen=True, slots=True)
class Mean:
    """`spread`: largest less smallest reading, kg. `ratio`: the Birge ratio applied, 1 when the readings agree."""

    mass: Uncertain
    spread: float
    ratio: float


@dataclass(frozen=True, slots=True)
class _Scale:
    """The readings of one scale, averaged: `gain` maps sources to relative standard deviations."""

    looks: list[Look]
    value: float
    variance: float
    gain: Mapping[str, float]
    misfit: float  # chi-squared of its readings about their average

    @property
    def values(self) -> list[float]:
        return [look.value for look in self.looks]

    @property
    def division(self) -> float:
        return max(look.division for look in self.looks)


def weighted_mean(of: str, looks: Sequence[Look], gains: Mapping[str, Uncertain]) -> Mean:
    """The mean of at least one look; `gains` by scale id. Looks come in order of id."""
    groups: dict[str, list[Look]] = {}
    for look in looks:
        groups.setdefault(look.scale, []).append(look)
    scales = [_averaged(group, gains[scale]) for scale, group in groups.items()]
    value, weights, misfit = _fitted(scales)
    sources = _gain_sources(scales, weights, value)
    own = _own_variance(scales, weights)
    spread = max(look.value for look in looks) - min(look.value for look in looks)
    ratio = sqrt(max(1.0, misfit / (len(looks) - 1))) if _beyond_a_division(scales) else 1.0
    if ratio > 1.0:
        unshared = own + (_of_scales(sources) if len(scales) > 1 else 0.0)
        sources[f"spread:{of}"] = sqrt((ratio * ratio - 1.0) * unshared)
    # Nobody else has these roundings: of several looks one source is left, not one for each of ten thousand weighings.
    sources[f"round:{looks[0].weighing}" if len(looks) == 1 else f"looks:{of}"] = sqrt(own)
    return Mean(Uncertain(value, sources), spread, ratio)


def _averaged(looks: list[Look], gain: Uncertain) -> _Scale:
    weight = plain_sum(1.0 / (look.own * look.own) for look in looks)
    total = plain_sum(look.value / (look.own * look.own) for look in looks)
    value = looks[0].value if len(looks) == 1 else total / weight
    off = [(look.value - value) / look.own for look in looks]
    relative = {source: deviation / (1.0 + gain.value) for source, deviation in gain.sources.items()}
    return _Scale(looks, value, 1.0 / weight, relative, dot(off, off))


def _beyond_a_division(scales: Sequence[_Scale]) -> bool:
    """Whether two looks on one scale, or the averages of two scales, differ by more than the coarser division.

    A display differs by whole divisions, so half a division more than one leaves out what computing adds to one.
    """
    within = (max(s.values) - min(s.values) > _BEYOND * s.division for s in scales)
    between = (abs(a.value - b.value) > _BEYOND * max(a.division, b.division) for a, b in combinations(scales, 2))
    return any(within) or any(between)


def _fitted(scales: Sequence[_Scale]) -> tuple[float, list[float], float]:
    """The mean, each scale's weight in it, and chi-squared of all the readings."""
    misfit = plain_sum(scale.misfit for scale in scales)
    if len(scales) == 1:
        return scales[0].value, [1.0], misfit
    value = dot([1.0 / len(scales)] * len(scales), [scale.value for scale in scales])
    weights: list[float] = []
    for _ in range(_PASSES):
        weights = _weights(scales, value)
        value = dot(weights, [scale.value for scale in scales])
    off = [scale.value - value for scale in scales]
    return value, weights, misfit + dot(off, _solved(_factored(scales, value), off))


def _weights(scales: Sequence[_Scale], value: float) -> list[float]:
    """The weights of the surest mean among those that lie between the averages.

    Strongly shared errors can ask for a weight below zero, and then the mean may lie outside of all readings, where
    nobody would believe it; such a scale is left out.
    """
    counted = list(range(len(scales)))
    while True:
        ones = [1.0] * len(counted)
        solved = _solved(_factored([scales[i] for i in counted], value), ones)
        least = min(range(len(counted)), key=solved.__getitem__)
        if solved[least] >= 0.0:
            break
        del counted[least]
    shares = dict(zip(counted, solved, strict=True))
    whole = dot(solved, ones)
    return [shares.get(i, 0.0) / whole for i in range(len(scales))]


def _factored(scales: Sequence[_Scale], value: float) -> list[list[float]]:
    """The Cholesky factor of the covariance of the scales' averages."""
    root: list[list[float]] = []
    for i, scale in enumerate(scales):
        row: list[float] = []
        for j in range(i):
            row.append((_shared(scale, scales[j], value) - dot(row, root[j])) / root[j][j])
        # Never below the scale's own variance, whatever rounding does to the difference.
        row.append(sqrt(max(scale.variance, scale.variance + _shared(scale, scale, value) - dot(row, row))))
        root.append(row)
    return root


def _shared(a: _Scale, b: _Scale, value: float) -> float:
    return value * value * plain_sum(deviation * b.gain.get(source, 0.0) for source, deviation in a.gain.items())


def _solved(root: Sequence[Sequence[float]], right: Sequence[float]) -> list[float]:
    """x with (root · rootᵀ) x = right."""
    size = len(root)
    x = list(right)
    for i in range(size):
        x[i] = (x[i] - dot(root[i][:i], x[:i])) / root[i][i]
    for i in reversed(range(size)):
        x[i] = (x[i] - plain_sum(root[j][i] * x[j] for j in range(i + 1, size))) / root[i][i]
    return x


def _gain_sources(scales: Sequence[_Scale], weights: Sequence[float], value: float) -> dict[str, float]:
    sources: dict[str, float] = {}
    for scale, weight in zip(scales, weights, strict=True):
        for source, deviation in scale.gain.items():
            sources[source] = sources.get(source, 0.0) - value * weight * deviation
    return sources


def _own_variance(scales: Sequence[_Scale], weights: Sequence[float]) -> float:
    """Variance of the mean by what no two looks share."""
    return plain_sum(weight * weight * scale.variance for scale, weight in zip(scales, weights, strict=True))


def _of_scales(sources: Mapping[str, float]) -> float:
    """Variance by the scales' own gains, which differ from scale to scale."""
    return plain_sum(part * part for source, part in sources.items() if source.startswith("cal:"))
