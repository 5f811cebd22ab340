"""Slips in what was done: a job entered twice, one on the wrong side of a weigh-in, a part that is elsewhere."""

from dataclasses import dataclass
from itertools import permutations
from math import sqrt

from tarebook.core.causes.looks import Looks, Shape
from tarebook.core.causes.priors import ALIKE, SAME_PART
from tarebook.core.causes.slip import Of, Tried
from tarebook.core.causes.trail import Course, Trail, moved
from tarebook.core.garage.records import Part
from tarebook.core.ledger.net import Line
from tarebook.core.numbers.plain import plain_sum
from tarebook.core.numbers.uncertain import Uncertain

_MANY_ALIKE = 12  # of so many lines of one name, none is another entered twice
_NEAR = 7.0  # standard uncertainties: a known part further from a step is not what made it
_NO_NAMES = frozenset(("a", "an", "and", "both", "copy", "of", "pair", "set", "the", "x"))


def try_jobs(trail: Trail, looks: Looks, tried: Tried) -> None:
    _twice(trail, looks, tried)
    _wrong_side(trail, looks, tried)
    _put_back(trail, looks, tried)


def _twice(trail: Trail, looks: Looks, tried: Tried) -> None:
    """The lines of a job that another has too are not there in truth."""
    for (other, job), lines in sorted(_same(trail).items()):
        is_part = any(mine.part == its.part for mine, its in lines)
        net = plain_sum(mine.mass.value for mine, _ in lines if mine.mass)
        part = lines[0][0].part if len(lines) == 1 else None
        shape = moved(trail.jobs[job])
        if len(set(shape)) == 1:
            continue  # all looks have it or lack it alike
        of: Of = {"job": job, "other": other, "part": part, "kg": net}
        tried.add(looks.about(shape, net), "twice", of, SAME_PART if is_part else 1.0)


def _same(trail: Trail) -> dict[tuple[str, str], list[tuple[Line, Line]]]:
    """(A job, one that has the same) → the lines of the latter, with those of the former."""
    alike: dict[tuple[str, str], list[Line]] = {}
    for line in trail.lines:
        alike.setdefault((line.way, line.part), []).append(line)
        if name := plain_name(trail.garage.parts[line.part].name):
            alike.setdefault((line.way, name), []).append(line)
    found: dict[tuple[str, str], dict[str, tuple[Line, Line]]] = {}
    for lines in alike.values():
        for its, mine in permutations(lines, 2) if len(lines) <= _MANY_ALIKE else ():
            if its.job != mine.job and (its.part == mine.part or _as_heavy(its.mass, mine.mass)):
                found.setdefault((its.job, mine.job), {}).setdefault(mine.id, (mine, its))
    return {jobs: list(lines.values()) for jobs, lines in found.items()}


def plain_name(name: str | None) -> str:
    """The words of a name that tell one part from another, in one order; nothing of a part nobody named."""
    letters = "".join(each if each.isalnum() else " " for each in (name or "").lower())
    words = {word.removesuffix("s") for word in letters.split() if word not in _NO_NAMES}
    return f" {' '.join(sorted(words))}" if words else ""


def _as_heavy(a: Uncertain | None, b: Uncertain | None) -> bool:
    one, other = abs(a.value) if a else 0.0, abs(b.value) if b else 0.0
    return abs(one - other) <= ALIKE * max(one, other)


def _wrong_side(trail: Trail, looks: Looks, tried: Tried) -> None:
    """In the list of a weigh-in though it was done after it, or missing there though it was done before."""
    for job, course in trail.jobs.items():
        net = trail.nets[job].total.mass.net
        if not net.value:
            continue
        for look in _beside(course):
            there = course[look]
            size = -net.value if there else net.value
            likely = looks.about(looks.singles[look], size, net.u)
            way = "undone" if there else "done"
            of: Of = {"weigh_in": trail.counted[look].record.id, "job": job, "way": way, "kg": size}
            tried.add(likely, "wrong_side", of)


def _beside(course: Course) -> list[int]:
    """The looks next to one where a job is done or undone; before the first look it may have been done any time."""
    count = len(course) - 1
    return [
        at
        for at in range(count)
        if course[at] != course[at + 1] or (course[at] != course[at - 1] if at else bool(course[at]))
    ]


@dataclass(frozen=True, slots=True)
class _Loose:
    """A part of known mass that may be elsewhere than noted: `more` pieces by the record of each look, and now.

    `first`: the gap where it moved last. `kg` it changes by from there on.
    """

    part: str
    mass: Uncertain
    more: Course
    first: int
    kg: float

    def at(self, look: int) -> float:
        """What it changes by at this look alone, kg: where it is at another."""
        here = self.more[look]
        return (next((each for each in self.more if each != here), 0) - here) * self.mass.value

    def doubt(self, kg: float) -> float:
        return abs(kg / self.mass.value) * self.mass.u


def _put_back(trail: Trail, looks: Looks, tried: Tried) -> None:
    """A part went in or out and no record says so: for one weigh-in, or from a gap on."""
    loose = [each for part in trail.garage.parts.values() if (each := _elsewhere(trail, part))]
    loose.sort(key=lambda each: (each.kg, each.first, each.part))
    tried.also("put_back", float(sum(max(0, looks.count - 1 - each.first) for each in loose)))
    for gap, shape in enumerate(looks.steps):
        here, until = trail.counted[gap].record.id, trail.counted[gap + 1].record.id
        if _may_tell(looks, tried, shape):
            moves = [(each, each.kg) for each in loose if each.first <= gap]
            _moved_at(looks, tried, shape, moves, {"weigh_in": here, "until": until})
    tried.also("put_back", float(len(loose) * looks.count))
    for look, shape in enumerate(looks.singles):
        if _may_tell(looks, tried, shape):
            moves = [(each, each.at(look)) for each in loose]
            _moved_at(looks, tried, shape, moves, {"weigh_in": trail.counted[look].record.id})


def _may_tell(looks: Looks, tried: Tried, shape: Shape) -> bool:
    """Whether anything of this shape, of the best size for it, says something beside the best slip."""
    g, own = looks.of(shape)
    return own > 0.0 and tried.tells(0.5 * g * g / own)


def _moved_at(looks: Looks, tried: Tried, shape: Shape, moves: list[tuple[_Loose, float]], of: Of) -> None:
    g, own = looks.of(shape)
    wide = _NEAR / sqrt(own)
    for each, kg in moves:
        if abs(kg - g / own) <= wide:
            tried.also("put_back", -1.0)
            likely = looks.about(shape, kg, each.doubt(kg))
            tried.add(likely, "put_back", {**of, "part": each.part, "way": "on" if kg > 0.0 else "off", "kg": kg})


def _elsewhere(trail: Trail, part: Part) -> _Loose | None:
    mass, course = trail.known.of[part.id].mass, trail.pieces.get(part.id)
    if mass is None or not mass.value:
        return None
    if course is None:  # in the car, or still to come into it
        pieces = (part.count or 1) * (1 if part.id in trail.coming else -1)
        return _Loose(part.id, mass, (*[0] * len(trail.lists), pieces), 0, pieces * mass.value)
    now = course[-1]
    first = max((at for at, then in enumerate(course) if then != now), default=0)
    # Noted where it moved last, and it did not, or moved back: the same, the other way round.
    more = course[first] - now or -now
    return _Loose(part.id, mass, (*course, course[-1] + more), first, more * mass.value) if more else None
