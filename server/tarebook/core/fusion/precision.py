"""Small systems of looks at one thing that share errors: the inverse of their covariance, and what is swept out of it.

With S the covariance of the looks, V = S⁻¹ says how much each pair of them tells. Sweeping a column x out of V leaves
what they tell when an unknown amount of x may be in them, V − V x (V x)ᵀ / (xᵀ V x): generalised least squares with one
more unknown, without solving anew. The best mean of looks is V 1 / (1ᵀ V 1); W = V with 1 swept out is what they say
beside their mean. Plain sums in order, so that both languages have the same digits.
"""

from collections.abc import Sequence
from math import sqrt

from tarebook.core.numbers.plain import dot, plain_sum

Vector = Sequence[float]
Matrix = list[list[float]]

_NOTHING_NEW = 1e-11  # of a look's own variance: what is left of it beside the others is rounding
_ABSORBED = 1e-12  # of the most a look tells: a column that tells less has been swept out already


def times(matrix: Sequence[Vector], column: Vector) -> list[float]:
    return [dot(row, column) for row in matrix]


def precision(covariance: Sequence[Vector]) -> tuple[Matrix, list[int]]:
    """The inverse of a covariance, and the looks that tell nothing the later ones do not: their rows are zero.

    Looks are taken from the last to the first, so that of two that tell the same the later one is kept.
    """
    size = len(covariance)
    kept, root = _factored(covariance)
    inverse = _inverted(root)
    answer = [[0.0] * size for _ in range(size)]
    for a, i in enumerate(kept):
        for b in range(a + 1):
            told = plain_sum(row[a] * row[b] for row in inverse[a:])
            answer[i][kept[b]] = answer[kept[b]][i] = told
    return answer, [i for i in range(size) if i not in kept]


def _factored(covariance: Sequence[Vector]) -> tuple[list[int], Matrix]:
    """The looks kept, last first, and the Cholesky factor of their covariance."""
    kept: list[int] = []
    root: Matrix = []
    for i in reversed(range(len(covariance))):
        row: list[float] = []
        for j, above in zip(kept, root, strict=True):
            row.append((covariance[i][j] - dot(row, above)) / above[-1])
        pivot = covariance[i][i] - dot(row, row)
        if pivot > _NOTHING_NEW * covariance[i][i]:
            kept.append(i)
            root.append([*row, sqrt(pivot)])
    return kept, root


def _inverted(root: Sequence[Vector]) -> Matrix:
    """The inverse of a lower triangle, as rows."""
    inverse: Matrix = []
    for i, row in enumerate(root):
        made = [0.0] * (i + 1)
        for j in range(i):
            made[j] = -plain_sum(row[k] * inverse[k][j] for k in range(j, i)) / row[i]
        made[i] = 1.0 / row[i]
        inverse.append(made)
    return inverse


def least_telling(told: Sequence[Vector]) -> float:
    """What a column must tell, at the least, to be more than rounding in what these looks tell."""
    return _ABSORBED * max((row[i] for i, row in enumerate(told)), default=0.0)


def swept(told: Sequence[Vector], column: Vector, least: float) -> Matrix:
    """What is told when an unknown amount of `column` may be in the looks; the same when it tells `least` or less."""
    image = times(told, column)
    size = dot(column, image)
    if size <= least:
        return [list(row) for row in told]
    return [[x - a * b / size for x, b in zip(row, image, strict=True)] for row, a in zip(told, image, strict=True)]


def cleared(told: Sequence[Vector], least: float) -> Matrix:
    """The same without the looks that tell `least` or less: what is left of them is rounding."""
    kept = [row[i] > least for i, row in enumerate(told)]
    return [
        [x if mine and its else 0.0 for x, its in zip(row, kept, strict=True)]
        for row, mine in zip(told, kept, strict=True)
    ]


def best_weights(told: Sequence[Vector]) -> list[float]:
    """The weights of the surest mean, which add up to one."""
    sums = [dot(row, [1.0] * len(row)) for row in told]
    whole = dot(sums, [1.0] * len(sums))
    return [each / whole for each in sums]
