"""Plain sums, one term after the other, so that both languages have the same digits.

Newer Pythons' own `sum` carries along what is lost. A sum that must be right in any order is `uncertain`'s to take.
"""

from collections.abc import Iterable
from functools import reduce
from operator import add, mul


def plain_sum(terms: Iterable[float]) -> float:
    return reduce(add, terms, 0.0)


def dot(a: Iterable[float], b: Iterable[float]) -> float:
    """The sum of products over the shorter of the two."""
    return plain_sum(map(mul, a, b))
