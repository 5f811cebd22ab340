"""What ballast is looked for in, and what the car comes to with it: shares, centre and cross weight."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import fsum

from tarebook.core.garage.records import Warned, warned
from tarebook.core.numbers.uncertain import Uncertain, add, divide

Share = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Place:
    """Where blocks may be fixed: `most` blocks of `block` kg, their middle at x, y, z (m)."""

    id: str
    x: float
    y: float
    z: float
    block: float
    most: int


@dataclass(frozen=True, slots=True)
class Carried:
    """The car in the condition it is weighed in, without the ballast looked for. kg and m; None where unknown.

    `front`, `left`: loads of that axle and side. `height` of its centre. `roll_front`: κ.
    """

    total: Uncertain
    front: Uncertain | None = None
    left: Uncertain | None = None
    height: float | None = None
    wheelbase: float | None = None
    track_front: float | None = None
    track_rear: float | None = None
    roll_front: float | None = None


@dataclass(frozen=True, slots=True)
class Wanted:
    """`least`: minimum + guard, kg; `most`: ceiling of the total. `front`, `left`: shares from, to.

    `prefer`: "mass", "centre" or "cross", what is made least first. Without a ceiling that is always the mass, unless
    the ballast may be so many kg `more` than the least for it.
    """

    least: float
    most: float | None = None
    front: Share | None = None
    left: Share | None = None
    prefer: str = "mass"
    more: float | None = None


@dataclass(frozen=True, slots=True)
class Ballast:
    """`put`: blocks by place. `front`, `left`: shares afterwards; `height` of the centre (m). `cross`: Σ w y (kg m);
    `cross_load`: what it moves RF + LR by (kg). `missing`: what even this, the nearest there is, does not reach.
    """

    put: dict[str, int]
    added: float
    total: Uncertain
    front: Uncertain | None
    left: Uncertain | None
    height: float | None
    cross: float
    cross_load: float | None
    missing: tuple[Warned, ...]
    proven: bool
    warnings: tuple[Warned, ...]


def told(car: Carried, places: Sequence[Place], counts: Sequence[int], missing: list[Warned], proven: bool) -> Ballast:
    put = list(zip(places, counts, strict=True))
    added = fsum(place.block * count for place, count in put)
    total = add(car.total, Uncertain(added))
    cross = fsum(place.block * count * place.y for place, count in put)
    return Ballast(
        put={place.id: count for place, count in put if count},
        added=added,
        total=total,
        front=_front(car, put, total),
        left=_left(car, put, total),
        height=_height(car, put, total),
        cross=cross,
        cross_load=_cross_load(car, cross),
        missing=tuple(missing),
        proven=proven,
        warnings=tuple(_warnings(car, proven)),
    )


def share_between(low: float | None, high: float | None) -> Share | None:
    """From one end to the other; an end left out is as far as it goes."""
    return None if low is None and high is None else (low or 0.0, 1.0 if high is None else high)


Put = Sequence[tuple[Place, int]]


def _front(car: Carried, put: Put, total: Uncertain) -> Uncertain | None:
    if car.front is None or not car.wheelbase:
        return None
    onto = fsum(place.block * count * (1.0 - place.x / car.wheelbase) for place, count in put)
    return divide(add(car.front, Uncertain(onto)), total)


def _left(car: Carried, put: Put, total: Uncertain) -> Uncertain | None:
    track = mean_track(car)
    if car.left is None or not track:
        return None
    onto = fsum(place.block * count * (0.5 - place.y / track) for place, count in put)
    return divide(add(car.left, Uncertain(onto)), total)


def _height(car: Carried, put: Put, total: Uncertain) -> float | None:
    if car.height is None:
        return None
    raised = fsum(place.block * count * place.z for place, count in put)
    return (car.total.value * car.height + raised) / total.value


def _cross_load(car: Carried, cross: float) -> float | None:
    if car.roll_front is None or not car.track_front or not car.track_rear:
        return None
    return cross * (car.roll_front / car.track_front - (1.0 - car.roll_front) / car.track_rear)


def mean_track(car: Carried) -> float | None:
    return 0.5 * (car.track_front + car.track_rear) if car.track_front and car.track_rear else None


def _warnings(car: Carried, proven: bool) -> list[Warned]:
    unlike = car.left is not None and car.track_front != car.track_rear and mean_track(car) is not None
    return [
        *([warned("tracks_unequal")] if unlike else []),
        *([] if proven else [warned("ballast_not_proven")]),
    ]
