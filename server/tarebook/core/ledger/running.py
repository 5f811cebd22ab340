"""A running total of uncertain values that can be read after every step.

Summing anew at each of a thousand jobs would touch every error source a million times. Here each sum is kept as the
exact list of doubles whose sum it is (Shewchuk's partials, as in `math.fsum`), so a step costs only its own sources,
and taking out what was put in leaves exactly nothing.
"""

from math import fsum, sqrt

from tarebook.core.numbers.uncertain import Uncertain


class Running:
    """`add` values one by one; `value` and `u` (kg) are those of their sum, rounded once."""

    def __init__(self) -> None:
        self._value: list[float] = []
        self._variance: list[float] = []
        self._sources: dict[str, list[float]] = {}

    def add(self, item: Uncertain) -> None:
        _grow(self._value, item.value)
        for source, deviation in item.sources.items():
            partials = self._sources.setdefault(source, [])
            before = fsum(partials)
            _grow(partials, deviation)
            after = fsum(partials)
            _grow(self._variance, after * after)
            _grow(self._variance, -(before * before))

    @property
    def value(self) -> float:
        return fsum(self._value) + 0.0

    @property
    def u(self) -> float:
        return sqrt(fsum(self._variance))


def _grow(partials: list[float], x: float) -> None:
    """Adds x to the exact sum the partials stand for."""
    kept = 0
    for partial in partials:
        large, small = (x, partial) if abs(x) >= abs(partial) else (partial, x)
        x = large + small
        rest = small - (x - large)
        if rest:
            partials[kept] = rest
            kept += 1
    partials[kept:] = [x]
