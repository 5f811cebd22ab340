"""The normal distribution: Φ, its density and its inverse.

The server and the phone must name the same chance. Python's library has all three, the phone's none: it makes its own,
and agrees with these to 1e-12, relative in the tails. Φ is by `erfc`, for the library's own loses its digits there.
"""

from math import erfc, sqrt
from statistics import NormalDist

__all__ = ["cumulative", "density", "erfc", "inverse"]

_STANDARD = NormalDist()


def density(z: float) -> float:
    """The density of the standard normal distribution at z."""
    return _STANDARD.pdf(z)


def cumulative(z: float) -> float:
    """Φ(z): the chance that a standard normal number is below z."""
    return 0.5 * erfc(-z / sqrt(2.0))


def inverse(p: float) -> float:
    """z with Φ(z) = p. ValueError unless 0 < p < 1."""
    if not 0.0 < p < 1.0:
        raise ValueError("a chance lies between 0 and 1")
    return _STANDARD.inv_cdf(p)
