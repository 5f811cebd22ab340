"""What leads from one list of jobs to another, as loads at places, and what that changes in the car.

The difference of two lists: jobs only the second has are put in, jobs only the first has are taken back, with every
line's sign turned. What both have is not there at all, with its doubt. Weights above and below the beltline, unsprung
and rotating need no weigh-in; the change in yaw inertia does, for it is about the car's own centre.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from tarebook.core.balance.body import Body, Load, own_of, yaw_change
from tarebook.core.balance.place import Place, place_of
from tarebook.core.garage.records import Garage, Part, Warned, warned
from tarebook.core.ledger.net import JobNet, Line
from tarebook.core.numbers.uncertain import Uncertain, scale, total

Sizes = Mapping[str, tuple[float, float]]


@dataclass(frozen=True, slots=True)
class Moved:
    """One line that has a mass: `load` is signed, on the car positive, of all its pieces."""

    line: Line
    place: Place
    load: Load


@dataclass(frozen=True, slots=True)
class Change:
    """What some moves change, kg: `net`, and of it `above` and `below` the beltline, `unsprung`, `rotating`.

    `yaw`: the change in yaw inertia about the car's own centre, kg m². A figure is None for the reason in `reasons`.
    `unsure`: parts whose height is within its standard uncertainty of the beltline.
    """

    net: Uncertain
    above: Uncertain | None
    below: Uncertain | None
    unsprung: Uncertain
    rotating: Uncertain
    yaw: Uncertain | None
    unsure: tuple[str, ...]
    reasons: dict[str, Warned]


def moved_between(
    garage: Garage, nets: Mapping[str, JobNet], then: Sequence[str], now: Sequence[str], sizes: Sizes
) -> list[Moved]:
    """What leads from the jobs `then` to the jobs `now`.

    `sizes`: part id → (length, width) in m, in place of the part's own.
    """
    signs = [(job, 1.0) for job in now if job not in then] + [(job, -1.0) for job in then if job not in now]
    return [
        _moved(garage, line, line.mass, sign, sizes)
        for job, sign in signs
        if job in nets
        for line in nets[job].lines
        if line.mass is not None
    ]


def _moved(garage: Garage, line: Line, mass: Uncertain, sign: float, sizes: Sizes) -> Moved:
    part = garage.parts[line.part]
    place = place_of(garage.car, part, line.count)
    own = own_of(*(sizes[line.part] if line.part in sizes else _size_of(part)))
    return Moved(line, place, Load(scale(mass, sign), place.x, place.y, place.z, own + place.apart))


def _size_of(part: Part) -> tuple[float, float]:
    """A part nobody measured is a point; of one length known it is a rod."""
    return (part.length.value if part.length else 0.0, part.width.value if part.width else 0.0)


def change_of(garage: Garage, body: Body | None, moves: Sequence[Moved]) -> Change:
    """What the moves change in the body they start from; without one there is no yaw inertia to tell."""
    beltline = garage.car.beltline.value if garage.car and garage.car.beltline else None
    levels = _levels(moves, beltline)
    yaw = yaw_change(body, [each.load for each in moves]) if body else None
    reasons = {} if levels else {"beltline": warned("beltline_unknown")}
    if yaw is None:
        reasons["yaw"] = warned("yaw_unknown")
    parts = garage.parts
    return Change(
        net=_sum(moves),
        above=levels[0] if levels else None,
        below=levels[1] if levels else None,
        unsprung=_sum(each for each in moves if parts[each.line.part].unsprung),
        rotating=_sum(each for each in moves if parts[each.line.part].rotating),
        yaw=yaw,
        unsure=_unsure(moves, beltline),
        reasons=reasons,
    )


def _sum(moves: Iterable[Moved]) -> Uncertain:
    return total([each.load.mass for each in moves])


def _levels(moves: Sequence[Moved], beltline: float | None) -> tuple[Uncertain, Uncertain] | None:
    """(above, below), or None when the beltline or the height of a part is not known."""
    if beltline is None or any(each.place.z is None for each in moves):
        return None
    above = [each for each in moves if each.place.z and each.place.z.value > beltline]
    below = [each for each in moves if each.place.z and each.place.z.value <= beltline]
    return _sum(above), _sum(below)


def _unsure(moves: Sequence[Moved], beltline: float | None) -> tuple[str, ...]:
    if beltline is None:
        return ()
    near = {each.line.part for each in moves if each.place.z and abs(each.place.z.value - beltline) < each.place.z.u}
    return tuple(sorted(near))
