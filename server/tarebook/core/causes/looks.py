"""How well a slip explains what does not fit, from all looks at once.

With W what the looks tell beside their mean (and beside what else is named), and r the looks, a slip that put e into
them has the likelihood, against none at all, ln L = eᵀWr − ½ eᵀWe. A slip is a shape h, so much in each look, times a
size t: ln L = t g − ½ t² G with g = hᵀWr and G = hᵀWh. Where the size is not known it is integrated over what it may
be: normal about a size, or evenly between two.
"""

from collections.abc import Sequence
from math import exp, inf, log, pi, sqrt
from typing import NamedTuple

from tarebook.core.numbers.normal import erfc, inverse
from tarebook.core.numbers.plain import dot, plain_sum

Shape = tuple[float, ...]
Matrix = Sequence[Sequence[float]]

_BY_CHANCE = 0.01  # a second slip is rarer than one: what is left must stand out the more
_TELLS_NOTHING = 1e-9  # of the most a look tells


class Fit(NamedTuple):
    """How well a slip explains the looks: ln L, and what it would have put into them, `size` kg of the shape."""

    likely: float
    shape: Shape
    size: float


class Looks:
    """The looks of a fusion, asked about one shape after another; each shape is worked out once.

    `told`: what they tell beside their mean; `values`: the weight now by each, kg. `singles`: one kilogram too much in
    a look. `steps`: one more in the car from between a look and the next on: those before it lack it.
    """

    def __init__(self, told: Matrix, values: Sequence[float]) -> None:
        self.told, self.values = told, values
        self.count = len(values)
        self.pull = times(told, values)
        self._least = _TELLS_NOTHING * max((row[at] for at, row in enumerate(told)), default=0.0)
        every = range(self.count)
        self.singles: list[Shape] = [tuple(float(at == look) for at in every) for look in every]
        self.steps: list[Shape] = [tuple(-1.0 if at <= gap else 0.0 for at in every) for gap in every[:-1]]
        self._known: dict[Shape, tuple[float, float]] = {}
        self._know_steps_and_singles()

    def _know_steps_and_singles(self) -> None:
        """Those that nearly every slip is of, in one pass: a step is the looks before it, one after the other."""
        image, before = [0.0] * self.count, 0.0
        for at, (row, pull) in enumerate(zip(self.told, self.pull, strict=True)):
            self._keep(self.singles[at], pull, row[at], 1.0)
            image = [each + x for each, x in zip(image, row, strict=True)]
            before += pull
            if at + 1 < self.count:
                self._keep(self.steps[at], -before, plain_sum(image[: at + 1]), at + 1.0)

    def _keep(self, shape: Shape, g: float, own: float, size: float) -> tuple[float, float]:
        found = self._known[shape] = (g, own) if own > self._least * size else (0.0, 0.0)
        return found

    def of(self, shape: Shape) -> tuple[float, float]:
        """g and G of a shape; nothing when the looks tell nothing of it."""
        found = self._known.get(shape)
        if found is None:
            own = dot(shape, times(self.told, shape))
            found = self._keep(shape, dot(shape, self.pull), own, dot(shape, shape))
        return found

    def about(self, shape: Shape, size: float, doubt: float = 0.0) -> Fit:
        """A shape of this size, kg, known so well."""
        g, own = self.of(shape)
        wider = 1.0 + doubt * doubt * own
        likely = (size * g - 0.5 * size * size * own + 0.5 * doubt * doubt * g * g) / wider - 0.5 * log(wider)
        return Fit(likely, shape, (size + doubt * doubt * g) / wider)

    def between(self, shape: Shape, low: float, high: float) -> Fit:
        """A shape of a size anywhere between two, kg."""
        g, own = self.of(shape)
        if own <= 0.0 or high <= low:
            return self.about(shape, low)
        root = sqrt(own)
        a, b = (low * own - g) / root, (high * own - g) / root
        a, b = (-b, -a) if a + b < 0.0 else (a, b)  # the tail that keeps its digits
        within = 0.5 * (erfc(a / sqrt(2.0)) - erfc(b / sqrt(2.0)))
        if within <= 0.0:
            return Fit(-inf, shape, low)
        likely = 0.5 * g * g / own + log(sqrt(2.0 * pi) / (root * (high - low))) + log(within)
        return Fit(likely, shape, min(max(g / own, low), high))

    def without(self, fit: Fit) -> "Looks":
        """The same looks as they would be without a slip."""
        put = zip(self.values, fit.shape, strict=True)
        return Looks(self.told, [value - fit.size * each for value, each in put])

    def name_nothing(self) -> bool:
        """Whether no step and no single look stands out by more than chance lets one of them."""
        found = [self.of(shape) for shape in (*self.steps, *self.singles[1:-1])]
        telling = [g * g / own for g, own in found if own]
        return not telling or max(telling) <= inverse(_BY_CHANCE / (2 * len(telling))) ** 2


def times(matrix: Matrix, column: Sequence[float]) -> list[float]:
    return [dot(row, column) for row in matrix]


def shared(logs: Sequence[float]) -> list[float]:
    """The chances that logarithms of odds stand for."""
    most = max(logs)
    odds = [exp(each - most) for each in logs]
    whole = plain_sum(odds)
    return [each / whole for each in odds]
