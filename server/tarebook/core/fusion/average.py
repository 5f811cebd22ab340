"""The mean over none, one and two changes that nobody wrote down, each as likely as the looks make it.

Naming the surest change and forgetting that it was guessed would make the interval too narrow; ignoring what is not
quite sure would do so too. So every set of none, one or two steps and looks that are off counts with its probability:
beforehand one gap between looks in eight hides a change (an assumption, no source), any place as likely as another, and
a change is as large as what is worth knowing (normal, with a standard deviation of five times its own standard
uncertainty, which takes √26 from its likelihood). The spread between these answers is doubt beside that of the errors.

A step next to the first look and an error of it are the same data and the same answer: it counts twice. A step before
the last look and an error of that are the same data with two answers, and both count. When that is named, the value is
the lower of the two, for nobody may rely on weight that may not be there; the doubt holds both.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import exp, fsum, log

from tarebook.core.fusion.misfit import Candidates, along
from tarebook.core.fusion.precision import times
from tarebook.core.numbers.plain import dot

_A_GAP = 0.125
_SIZE = 0.5 * log(1.0 + 5.0 * 5.0)
_MANY = 40
_FAR_LESS = 40.0  # a set this much less likely (in ln) than the best says nothing


@dataclass(frozen=True, slots=True)
class Guess:
    """One set of changes: its `chance`, and its `share` in the value. `at`: the candidates, `sizes`: theirs.

    `inverse`: that of their normal equations, row by row. `off`: whether the last look is off, and no step before it.
    """

    at: tuple[int, ...]
    chance: float
    share: float
    sizes: tuple[float, ...]
    inverse: tuple[tuple[float, ...], ...]
    off: bool


@dataclass(frozen=True, slots=True)
class Averaged:
    """A weighting of the looks after averaging: its `weights`, and by set of changes how far the value `shifts`.

    `effects`: how far each change of a set moves it; `taken`: how much of each candidate is taken out in the mean.
    """

    weights: list[float]
    shifts: list[float]
    effects: list[list[float]]
    taken: list[float]


def guesses(found: Candidates, freedom: int, lower: bool) -> list[Guess]:
    """The sets with their chances. `lower`: the last look may be off and that is named: the lower answer counts.

    `freedom`: how many independent things the looks tell beside their mean. Of one only, all candidates are the same
    data: either the last look is off, or the one before it is or a step lies between them.
    """
    last = found.count - 2
    usable = found.usable if freedom > 1 else [at for at in found.usable if at == last]
    # Of many weigh-ins only steps go in pairs: two next to each other are a look that is off.
    paired = usable if len(usable) <= _MANY else [at for at in usable if at <= last]
    pairs = [(a, b) for n, a in enumerate(paired) for b in paired[n + 1 :] if found.determinant(a, b)]
    sets: list[tuple[float, tuple[int, ...], bool]] = [(0.0, (), False)]
    hidden = _A_GAP * (found.count - 1)
    for number, several, beforehand in ((1, [(at,) for at in usable], hidden), (2, pairs, 0.5 * hidden * hidden)):
        for at in several:
            likely = 0.5 * _better(found, at) - number * _SIZE + log(beforehand / len(several))
            sets += [(likely + log(ways), at, off) for off, ways in _ways(at, last, freedom)]
    most = max(likely for likely, _, _ in sets)
    kept = [(exp(likely - most), at, off) for likely, at, off in sets if likely > most - _FAR_LESS]
    whole = fsum(chance for chance, _, _ in kept)
    return _shared_out(found, [_guess(found, at, chance / whole, off) for chance, at, off in kept], lower)


def _ways(at: tuple[int, ...], last: int, freedom: int) -> list[tuple[bool, int]]:
    """In how many ways a set may have come about: with the last look right; if the last step is in it, with it off."""
    steps = 2 if 0 in at or (freedom == 1 and at) else 1
    return [(False, steps), (True, 2 if 0 in at and last else 1)] if last in at else [(False, steps)]


def _better(found: Candidates, at: tuple[int, ...]) -> float:
    if len(at) == 1:
        return found.better(at[0])
    a, b = at
    gram, told = found.gram, found.told
    cross = told[a] * told[a] * gram[b][b] - 2.0 * told[a] * told[b] * gram[a][b] + told[b] * told[b] * gram[a][a]
    return cross / found.determinant(a, b)


def _guess(found: Candidates, at: tuple[int, ...], chance: float, off: bool) -> Guess:
    inverse = _inverse(found, at)
    sizes = tuple(dot(row, [found.told[each] for each in at]) for row in inverse)
    return Guess(at, chance, chance, sizes, inverse, off)


def _shared_out(found: Candidates, sets: list[Guess], lower: bool) -> list[Guess]:
    """With `lower`, the lower of two answers that are the same data has the share of both."""
    last = found.count - 2
    if not lower:
        return sets
    both: dict[tuple[int, ...], float] = {}
    for each in sets:
        both[each.at] = both.get(each.at, 0.0) + each.chance
    return [
        # More in the car by the last look: less when that look is off.
        replace(each, share=both[each.at] if each.off == (each.sizes[each.at.index(last)] > 0.0) else 0.0)
        if last in each.at
        else each
        for each in sets
    ]


def _inverse(found: Candidates, at: tuple[int, ...]) -> tuple[tuple[float, ...], ...]:
    if not at:
        return ()
    if len(at) == 1:
        return ((1.0 / found.gram[at[0]][at[0]],),)
    a, b = at
    gram, determinant = found.gram, found.determinant(a, b)
    across = -gram[a][b] / determinant
    return ((gram[b][b] / determinant, across), (across, gram[a][a] / determinant))


def averaged(found: Candidates, sets: Sequence[Guess], weights: Sequence[float]) -> Averaged:
    """A weighting that is best when nothing changed (its sum one, or zero), averaged over the sets of changes."""
    effects = along(weights)
    whole = fsum(weights)
    last = found.count - 2
    taken = [0.0] * len(effects)
    shifts: list[float] = []
    reaches: list[list[float]] = []
    for each in sets:
        reach = [effects[at] + (whole if each.off and at == last else 0.0) for at in each.at]
        for at, row in zip(each.at, each.inverse, strict=True):
            taken[at] += each.share * dot(row, reach)
        shifts.append(-dot(reach, each.sizes))
        reaches.append(reach)
    images = [dot(taken, [image[look] for image in found.images]) for look in range(found.count)]
    return Averaged([x - y for x, y in zip(weights, images, strict=True)], shifts, reaches, taken)


def spread(found: Candidates, sets: Sequence[Guess], a: Averaged, b: Averaged, cautious: bool = False) -> float:
    """What averaging adds to the covariance of two weightings beyond the errors of the looks.

    `cautious`: of the answers that count only, for asking how low the value may be.
    """
    mean_a = fsum(each.share * shift for each, shift in zip(sets, a.shifts, strict=True))
    mean_b = fsum(each.share * shift for each, shift in zip(sets, b.shifts, strict=True))
    between = fsum(
        (each.share if cautious else each.chance) * (dot(one, times(each.inverse, other)) + (x - mean_a) * (y - mean_b))
        for each, one, other, x, y in zip(sets, a.effects, b.effects, a.shifts, b.shifts, strict=True)
    )
    return between - dot(a.taken, times(found.gram, b.taken))
