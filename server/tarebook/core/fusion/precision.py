"""Small systems of looks at one thing that share errors: the inverse of their covariance, and what is swept out of it.

With S the covariance of the looks, V = S⁻¹ says how much each pair of them tells. Sweeping a column x out of V leaves
what they tell when an unknown amount of x may be in them, V − V x (V x)ᵀ / (xᵀ V x): generalised least squares with one
more unknown, without solving anew. The best mean of looks is V 1 / (1ᵀ V 1); W = V with 1 swept out is what they say
beside their mean.
"""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]

_NOTHING_NEW = 1e-11  # of a look's own variance: what is left of it beside the others is rounding
_ABSORBED = 1e-12  # of the most a look tells: a column that tells less has been swept out already


def telling(covariance: Array) -> list[int]:
    """The looks that tell something the later ones do not, in order.

    They are taken from the last to the first, so that of two that tell the same the later one is kept.
    """
    left, own = covariance.copy(), np.diag(covariance)
    kept = []
    for at in reversed(range(len(own))):
        pivot = left[at, at]
        if pivot > _NOTHING_NEW * own[at]:
            kept.append(at)
            left -= np.outer(left[:, at], left[at]) / pivot
    return kept[::-1]


def precision(covariance: Array, kept: Sequence[int]) -> tuple[Array, float]:
    """The inverse of a covariance of the looks `kept`, the rows of others zero; and ln of its determinant."""
    among = np.ix_(kept, kept)
    root = np.linalg.cholesky(covariance[among])
    inverse = np.linalg.inv(root)
    answer = np.zeros_like(covariance)
    answer[among] = inverse.T @ inverse
    return answer, 2.0 * float(np.log(np.diag(root)).sum())


def least_telling(told: Array) -> float:
    """What a column must tell, at the least, to be more than rounding in what these looks tell."""
    return _ABSORBED * float(np.diag(told).max(initial=0.0))


def swept(told: Array, column: Array, least: float) -> Array:
    """What is told when an unknown amount of `column` may be in the looks; the same when it tells `least` or less."""
    image = told @ column
    size = float(column @ image)
    return told - np.outer(image, image) / size if size > least else told


def cleared(told: Array, least: float) -> Array:
    """The same without the looks that tell `least` or less: what is left of them is rounding."""
    kept = np.diag(told) > least
    return np.where(np.logical_and.outer(kept, kept), told, 0.0)


def best_weights(told: Array) -> Array:
    """The weights of the surest mean, which add up to one."""
    sums: Array = told.sum(axis=1)
    weights: Array = sums / sums.sum()
    return weights
