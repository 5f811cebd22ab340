"""The odd one of several readings, named by a published test, and never left out by itself.

Grubbs' test (Technometrics 11, 1969; ISO 5725-2, 7.3.4): the reading farthest from the rest, against what its
distance would be by chance, at 5 % for all readings together. In its form for several looks of one set, each wheel
with a mean of its own, the distance of a reading from the mean of the others of its look is held against the scatter
of all readings but itself; for one look that is Grubbs' own test to the digit. A display shows steps: no scatter
counts as less than the rounding alone (d/√12), and nothing within a division of the others is odd.

Two readings cannot say which of them is off. Where they are farther apart than 2.8 standard deviations of a reading
(the repeatability limit, ISO 5725-6, 4.1.4 and 5.2.2), a third is asked for.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt

from tarebook.core.numbers.plain import plain_sum
from tarebook.core.numbers.student import student_beyond
from tarebook.core.weighing.repeats import APART

CHANCE = 0.05
LIMIT = 2.8


@dataclass(frozen=True, slots=True)
class Odd:
    """`look` and `at`: which reading of which look. `off`: from the mean of the others, kg. `chance`: of one so far."""

    look: int
    at: int
    off: float
    chance: float


def odd_one(looks: Sequence[Sequence[float]], division: float) -> Odd | None:
    """The odd one among the readings (kg) of the looks of one set; None where all may belong together."""
    tried = sum(len(look) for look in looks if len(look) > 2)
    found = [_tested(looks, look, at, division, tried) for look, of in enumerate(looks) for at in range(len(of))]
    odd = [each for each in found if each and each.chance < CHANCE and abs(each.off) > APART * division]
    return min(odd, key=lambda each: each.chance, default=None)


def _tested(looks: Sequence[Sequence[float]], look: int, at: int, division: float, tried: int) -> Odd | None:
    if len(looks[look]) < 3:
        return None
    others = [value for k, value in enumerate(looks[look]) if k != at]
    rest = [others if k == look else each for k, each in enumerate(looks)]
    freedom = sum(len(each) - 1 for each in rest if each)
    variance = max(plain_sum(_squares(each) for each in rest if each) / freedom, division * division / 12.0)
    off = looks[look][at] - _mean(others)
    t = off / sqrt(variance * (1.0 + 1.0 / len(others)))
    return Odd(look, at, off, min(1.0, tried * student_beyond(t, freedom)))


def _mean(values: Sequence[float]) -> float:
    return plain_sum(values) / len(values)


def _squares(values: Sequence[float]) -> float:
    mean = _mean(values)
    return plain_sum((value - mean) * (value - mean) for value in values)


def needs_third(readings: Sequence[float], division: float, repeats: float) -> bool:
    """Whether two readings are too far apart to be left so. `repeats`: standard deviation of one by the record, kg."""
    if len(readings) != 2:
        return False
    one = sqrt(repeats * repeats + division * division / 12.0)
    return abs(readings[0] - readings[1]) > max(APART * division, LIMIT * one)
