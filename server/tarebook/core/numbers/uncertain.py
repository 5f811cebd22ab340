"""A value and where its doubt comes from: one signed standard deviation for each named, independent source.

`Uncertain(12.3, {"cal:s1": 0.03, "round:w1": 0.006})` says: if the calibration of scale s1 is one standard
deviation high, this value is 0.03 high. Two values that name the same source move together, so that a sum of
ten readings of one scale carries ten times its calibration error, and a difference of two carries none of
what they share; what nobody shares adds in quadrature. That is the law of propagation of uncertainty
[JCGM 100:2008, 5.1 and 5.2], with each source an input of its own and every step linear.

Everything is in SI doubles. Sums are correctly rounded, so the order of the records never changes a digit, and
Python and TypeScript agree to the last bit.
"""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field


@dataclass(frozen=True)
class Uncertain:
    """`value` in SI units; `sources`: name → signed sensitivity times standard deviation, in the same unit."""

    value: float
    sources: Mapping[str, float] = field(default_factory=dict)

    @property
    def u(self) -> float:
        """Standard uncertainty: the root of the sum of the squared contributions."""
        return math.sqrt(_sum(part * part for part in self.sources.values()))


def expanded(item: Uncertain, k: float = 2.0) -> float:
    """The half-width of the interval people read: k standard uncertainties, 95 % for k = 2."""
    return k * item.u


def beyond_doubt(item: Uncertain) -> bool:
    """Whether it can be told from nothing: more than its own expanded uncertainty."""
    return abs(item.value) > expanded(item)


def covariance(a: Uncertain, b: Uncertain) -> float:
    """What the two share, in the product of their units: by it tests hold results against other propagators."""
    return _sum(part * b.sources[name] for name, part in a.sources.items() if name in b.sources)


def weighted_sum(items: Sequence[Uncertain], weights: Sequence[float]) -> Uncertain:
    """Σ weight × item, source by source. A source that cancels is gone."""
    terms: dict[str, list[float]] = {}
    for item, weight in zip(items, weights, strict=True):
        for name, part in item.sources.items():
            terms.setdefault(name, []).append(weight * part)
    value = _sum(weight * item.value for item, weight in zip(items, weights, strict=True))
    sums = {name: _sum(parts) for name, parts in terms.items()}
    return Uncertain(value, {name: part for name, part in sums.items() if part != 0.0})


def total(items: Sequence[Uncertain]) -> Uncertain:
    """The sum of all items, correctly rounded once, whatever their order."""
    return weighted_sum(items, [1.0] * len(items))


def add(a: Uncertain, b: Uncertain) -> Uncertain:
    return weighted_sum((a, b), (1.0, 1.0))


def subtract(a: Uncertain, b: Uncertain) -> Uncertain:
    """a − b; what they share cancels."""
    return weighted_sum((a, b), (1.0, -1.0))


def scale(item: Uncertain, factor: float) -> Uncertain:
    """The item times an exact number."""
    return weighted_sum((item,), (factor,))


def multiply(a: Uncertain, b: Uncertain) -> Uncertain:
    """a × b to first order, as litres times density."""
    return Uncertain(a.value * b.value, weighted_sum((a, b), (b.value, a.value)).sources)


def divide(a: Uncertain, b: Uncertain) -> Uncertain:
    """a ÷ b to first order, as rear over total. Raises ZeroDivisionError."""
    ratio = a.value / b.value
    return Uncertain(ratio, weighted_sum((a, b), (1.0 / b.value, -ratio / b.value)).sources)


def derived(value: float, items: Sequence[Uncertain], partials: Sequence[float]) -> Uncertain:
    """A value computed from the items otherwise, with their doubt to first order: `partials` are its derivatives."""
    return Uncertain(value, weighted_sum(items, partials).sources)


def rectangular(half_width: float) -> float:
    """Standard deviation of a value that lies anywhere within ± half_width [JCGM 100:2008, 4.3.7]."""
    return half_width / math.sqrt(3.0)


def resolution(division: float) -> float:
    """Standard deviation of one look at a display of this division [JCGM 100:2008, F.2.2.1]."""
    return division / math.sqrt(12.0)


def _sum(terms: Iterable[float]) -> float:
    """The correctly rounded sum. Raises OverflowError or ValueError when it is not finite."""
    # Adding 0.0 turns the minus zero of some Pythons into the zero of all.
    result = math.fsum(terms) + 0.0
    if not math.isfinite(result):
        raise OverflowError("the sum is not a finite number")
    return result
