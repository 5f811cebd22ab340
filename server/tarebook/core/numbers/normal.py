"""The normal distribution: Φ, its density and its inverse, of our own making.

The server and the phone must name the same chance, and neither language's library has all three. The error
function is its power series near the middle, where every term is positive, and its continued fraction in the
tails, where one minus the series would lose its digits; the inverse refines a rough start by Halley's rule a fixed
number of times. Only `exp` may differ between the languages, by its last digit; results agree with a reference
library to 1e-12, relative in the tails. Formulas: Abramowitz and Stegun, 7.1.6, 7.1.14, 26.2.23.
"""

from math import exp, log, pi, sqrt

_MIDDLE = 2.0  # |x| below which erf is the series
_SERIES_TERMS = 60
_FRACTION_TERMS = 120
_FARTHEST = 27.0  # erfc is below the smallest double beyond this


def erfc(x: float) -> float:
    """One minus the error function 2/√π ∫₀ˣ exp(−t²) dt, keeping its digits where that is nearly one."""
    if abs(x) < _MIDDLE:
        return 1.0 - _series(x)
    return _tail(x) if x > 0 else 2.0 - _tail(-x)


def density(z: float) -> float:
    """The density of the standard normal distribution at z."""
    return exp(-0.5 * z * z) / sqrt(2.0 * pi)


def cumulative(z: float) -> float:
    """Φ(z): the chance that a standard normal number is below z."""
    return 0.5 * erfc(-z / sqrt(2.0))


def inverse(p: float) -> float:
    """z with Φ(z) = p. ValueError unless 0 < p < 1."""
    if not 0.0 < p < 1.0:
        raise ValueError("a chance lies between 0 and 1")
    return -inverse(1.0 - p) if p > 0.5 else _lower(p)


def _series(x: float) -> float:
    term = total = x
    for n in range(1, _SERIES_TERMS):
        term *= 2.0 * x * x / (2 * n + 1)
        total += term
    return 2.0 / sqrt(pi) * exp(-x * x) * total


def _tail(x: float) -> float:
    """erfc for x at or above the middle, the continued fraction evaluated from its far end."""
    if x > _FARTHEST:
        return 0.0
    fraction = x
    for n in range(_FRACTION_TERMS, 0, -1):
        fraction = x + 0.5 * n / fraction
    return exp(-x * x) / (sqrt(pi) * fraction)


def _lower(p: float) -> float:
    """The inverse for p up to one half."""
    t = sqrt(-2.0 * log(p))
    top = 2.515517 + t * (0.802853 + t * 0.010328)
    z = top / (1.0 + t * (1.432788 + t * (0.189269 + t * 0.001308))) - t
    for _ in range(3):
        miss = (cumulative(z) - p) / density(z)
        z -= miss / (1.0 + 0.5 * z * miss)
    return z
