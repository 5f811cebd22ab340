"""Slips in what was done: a job entered twice, one on the wrong side of a weigh-in, a part that is elsewhere."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable
from itertools import permutations
from math import sqrt

from tarebook.core.causes.looks import Looks
from tarebook.core.causes.priors import ALIKE, SAME_PART
from tarebook.core.causes.slip import Of, Tried
from tarebook.core.causes.trail import Course, Trail, moved
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


def _put_back(trail: Trail, looks: Looks, tried: Tried) -> None:
    """A part whose mass is known went in or out at a gap, and no record says so."""
    moves = sorted(_elsewhere(trail))
    sizes = [size for size, _, _, _ in moves]
    for gap, shape in enumerate(looks.steps):
        g, own = looks.of(shape)
        tried.also("put_back", float(sum(first <= gap for _, first, _, _ in moves)))
        if not own or not tried.tells(0.5 * g * g / own):
            continue
        wide = _NEAR / sqrt(own)
        near = moves[bisect_left(sizes, g / own - wide) : bisect_right(sizes, g / own + wide)]
        of = {"weigh_in": trail.counted[gap].record.id, "until": trail.counted[gap + 1].record.id}
        for size, first, part, doubt in near:
            if first <= gap:
                tried.also("put_back", -1.0)
                way = "on" if size > 0.0 else "off"
                tried.add(looks.about(shape, size, doubt), "put_back", {**of, "part": part, "way": way, "kg": size})


def _elsewhere(trail: Trail) -> Iterable[tuple[float, int, str, float]]:
    """What a part changes by going in or out, kg, the first gap it may have done so at, the part, and the doubt."""
    coming = {line.part for net in trail.nets.values() for line in net.lines if line.way == "on"}
    for part in trail.garage.parts.values():
        mass = trail.known.of[part.id].mass
        if mass is None or not mass.value:
            continue
        course = trail.pieces.get(part.id, (0,))
        now, doubt = course[-1], mass.u
        first = max((at for at, then in enumerate(course) if then != now), default=0)
        if part.id not in trail.pieces:
            more = (part.count or 1) * (1 if part.id in coming else -1)
        else:  # noted where it moved last, and it did not, or moved back: the same, the other way round
            more = course[first] - now or -now
        if more:
            yield more * mass.value, first, part.id, abs(more) * doubt
