"""Slips in what a part or a driver weighs: a unit, what held it, a claim far off, water in it."""

from collections.abc import Iterator
from dataclasses import dataclass

from tarebook.core.causes.looks import Looks, Shape
from tarebook.core.causes.priors import FACTORS, RANGES, RATES, SOMEBODY, SPREADS
from tarebook.core.causes.slip import Tried
from tarebook.core.causes.trail import Trail, moved
from tarebook.core.garage.records import Weighing
from tarebook.core.weighing.weighing import Reading

_SHARE = 0.9  # of what was on the scale: a container or a person is no more of it
_HELD = ("difference", "container")
# Against one another: a container of that scale, any, a person on it, what held it taken out twice.
_THERE, _UNKNOWN, _STOOD, _TAKEN_TWICE = 2.0, 0.2, 0.2, 0.4
_WET = 0.05  # how much rarer a wet part is than a wet car


@dataclass(frozen=True, slots=True)
class Read:
    """What is known of a part or driver: `shape` of an error of one kilogram in its mass, `kg` of one piece.

    `share` of the reading in that mass, `pieces` weighed at once. Without a weighing it is a claim.
    """

    of: str
    is_driver: bool
    shape: Shape
    kg: float
    share: float
    pieces: int
    weighing: Weighing | None

    @property
    def ids(self) -> dict[str, str | None]:
        """The records a slip in it would be in."""
        weighing = self.weighing.id if self.weighing else None
        return {"driver" if self.is_driver else "part": self.of, "weighing": weighing}


@dataclass(frozen=True, slots=True)
class Held:
    """What may have held a part, kg: `containers` by the scale they were weighed empty on, and `people`."""

    containers: dict[str | None, list[float]]
    people: list[float]


def try_weighings(trail: Trail, looks: Looks, tried: Tried) -> None:
    people = [mass.value for driver in trail.garage.drivers if (mass := trail.known.of[driver].mass)]
    held = Held(_containers(trail), people)
    for read in _read(trail):
        _unit(read, looks, tried)
        if read.weighing:
            _tare(read, read.weighing, looks, tried, held)
            if not read.is_driver:
                likely = looks.between(read.shape, *(each * read.share * read.kg for each in RANGES["wet_part"]))
                tried.add(likely, "wet", read.ids, _WET)
        else:
            for share in SPREADS.get(trail.known.of[read.of].basis or "", ()):
                tried.add(looks.about(read.shape, 0.0, share * read.kg), "guess", read.ids)


def _read(trail: Trail) -> Iterator[Read]:
    """Every reading and claim that the looks rest on."""
    for part, course in trail.pieces.items():
        shape = moved(course)
        if len(set(shape)) > 1:
            yield from _of(trail, part, shape, is_driver=False)
    for driver in trail.garage.drivers:
        aboard = tuple(-1.0 if each.record.driver == driver else 0.0 for each in trail.counted)
        if len(set(aboard)) > 1:
            yield from _of(trail, driver, aboard, is_driver=True)


def _of(trail: Trail, name: str, shape: Shape, is_driver: bool) -> Iterator[Read]:
    mass = trail.known.of[name]
    if mass.mass is None:
        return
    if not mass.readings:
        if mass.basis != "worked_out":
            yield Read(name, is_driver, shape, mass.mass.value, 1.0, 1, None)
        return
    share = 1.0 / len(mass.readings)
    yield from (
        _reading(trail, each, Read(name, is_driver, shape, each.value, share, 1, None)) for each in mass.readings
    )


def _reading(trail: Trail, reading: Reading, read: Read) -> Read:
    weighing = trail.garage.weighings[reading.weighing]
    return Read(read.of, read.is_driver, read.shape, read.kg, read.share, weighing.pieces or 1, weighing)


def _unit(read: Read, looks: Looks, tried: Tried) -> None:
    for unit, factor in FACTORS.items():
        kg = (1.0 - factor) * read.share * read.kg
        tried.add(looks.about(read.shape, kg), "unit", {**read.ids, "unit": unit, "kg": kg}, RATES.get(unit, 1.0))


def _containers(trail: Trail) -> dict[str | None, list[float]]:
    """What was weighed empty, kg, by the scale it stood on; the same one once."""
    held: dict[str | None, set[float]] = {}
    for each in trail.garage.weighings.values():
        if each.method in _HELD and each.shown_empty:
            held.setdefault(each.scale, set()).add(each.shown_empty.value)
    return {scale: sorted(empty) for scale, empty in held.items()}


def _tare(read: Read, weighing: Weighing, looks: Looks, tried: Tried, held: Held) -> None:
    """What held it is in the mass; or it was taken out though the display had done so."""
    most = _SHARE * read.kg * read.pieces
    each = read.share / read.pieces

    def add(size: float, weight: float, doubt: float = 0.0) -> None:
        of = {**read.ids, "kg": size * each}
        tried.add(looks.about(read.shape, size * each, doubt * each), "tare", of, weight)

    if weighing.method in _HELD and weighing.shown_empty:
        add(-weighing.shown_empty.value, _TAKEN_TWICE)
        return
    low, high = RANGES["container"]
    if low < most:
        likely = looks.between(read.shape, low * each, min(high, most) * each)
        tried.add(likely, "tare", read.ids, _UNKNOWN)
    there = [kg for kg in held.containers.get(weighing.scale, []) if kg < most]
    for kg in there:
        add(kg, _THERE / len(there))
    people = [(kg, 0.0) for kg in held.people] or [SOMEBODY]
    light = [each for each in people if each[0] < most]
    for kg, doubt in light:
        add(kg, _STOOD / len(light), doubt)
