"""Student's t for a whole number of degrees of freedom, as a finite sum (Abramowitz & Stegun, 26.7.3 and 26.7.4)."""

from math import atan, pi, sqrt


def student_beyond(t: float, freedom: int) -> float:
    """The probability that |T| is larger than |t|. `freedom`: 1 or more."""
    across = abs(t) / sqrt(freedom + t * t)
    along2 = freedom / (freedom + t * t)
    term, within = 1.0, 0.0
    for k in range(freedom % 2, freedom - 1, 2):
        within += term
        term *= along2 * (k + 1) / (k + 2)
    if freedom % 2 == 0:
        return max(0.0, 1.0 - across * within)
    return max(0.0, 1.0 - 2.0 / pi * (atan(abs(t) / sqrt(freedom)) + across * sqrt(along2) * within))
