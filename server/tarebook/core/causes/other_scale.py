"""A weigh-in that stood on another of the known scales than the one noted.

Its look then has the errors of that scale's gain in place of the noted one's: with the look's own column 1, the
covariance of the looks becomes S' = S + 1vᵀ + v1ᵀ, where v takes out what the noted gain shares with every look and
puts in what the other does. By Woodbury's identity and the matrix determinant lemma [Hager, SIAM Rev. 31 (1989) 221]
that is a matter of 2 × 2, in what the looks tell beside their mean too.
"""

from math import inf, log

from tarebook.core.causes.looks import Fit, Looks, times
from tarebook.core.causes.slip import Tried
from tarebook.core.causes.trail import Trail
from tarebook.core.numbers.plain import dot
from tarebook.core.numbers.uncertain import Uncertain
from tarebook.core.weighing.trade_scale import whole_car_gain

Moves = dict[str, tuple[list[float], list[float]]]
"""By error: how far it moves each look, and what the looks tell of that."""

_CARS = ("corner_pads", "axle_pads", "platform")


def try_other_scales(trail: Trail, looks: Looks, tried: Tried) -> None:
    used = {each.record.scale for each in trail.counted}
    scales = [scale for scale in trail.garage.scales.values() if scale.kind in _CARS or scale.id in used]
    moves: Moves = {}
    for at, weighed in enumerate(trail.counted):
        whole = weighed.loads.total
        for scale in scales if whole else ():
            if whole and scale.id != weighed.record.scale:
                gain = whole_car_gain(trail.garage, trail.known.scales[scale.id], whole.value)
                likely = _otherwise(trail, looks, at, (weighed.loads.gain, gain), moves)
                tried.add(likely, "other_scale", {"weigh_in": weighed.record.id, "scale": scale.id})


def _otherwise(trail: Trail, looks: Looks, at: int, gains: tuple[Uncertain, Uncertain], moves: Moves) -> Fit:
    """With the second of two gains in place of the first in one look."""
    noted, other = gains
    load = trail.counted[at].loads.total or Uncertain(0.0)
    through = 1.0 + other.value
    stood = load.value * (1.0 + noted.value) / through
    swap, image = [0.0] * looks.count, [0.0] * looks.count
    for name in sorted({*noted.sources, *other.sources}):
        if name not in moves:
            column = trail.evidence.moved_by(name)
            moves[name] = column, times(looks.told, column)
        column, told = moves[name]
        gone = load.value * noted.sources.get(name, 0.0) / (1.0 + noted.value)
        change = gone - stood * other.sources.get(name, 0.0) / through
        swap = [each + change * part for each, part in zip(swap, column, strict=True)]
        swap[at] += 0.5 * change * change
        own = 0.5 * change * change
        image = [each + change * x + own * y for each, x, y in zip(image, told, looks.told[at], strict=True)]
    likely, shape = swapped(looks, at, swap, image, load.value - stood), looks.singles[at]
    g, own = looks.of(shape)
    return Fit(likely, shape, g / own if own else 0.0)


def swapped(looks: Looks, at: int, swap: list[float], image: list[float], size: float) -> float:
    """ln L of a look that is `size` too high, and whose covariance with all looks changes by `swap`, twice its own.

    `image`: what the looks tell of that change.
    """
    a, b, c = looks.told[at][at], image[at], dot(swap, image)
    # The inverse of [[0, 1], [1, 0]] is itself; what is added to it is what the looks tell of the two columns.
    determinant = (1.0 + b) * (1.0 + b) - a * c
    if determinant <= 0.0:
        return -inf
    first, second = looks.pull[at] - size * a, dot(swap, looks.pull) - size * b
    fitted = (first * first * c - 2.0 * first * second * (1.0 + b) + second * second * a) / -determinant
    alone = size * looks.pull[at] - 0.5 * size * size * a
    return alone + 0.5 * fitted - 0.5 * log(determinant)
