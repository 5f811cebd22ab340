"""How well anybody could tell which slip was made: Bayes' rule over every single slip the world might hold.

With z the readings as written down, W what they tell beside their mean, and h what a slip of size one adds to them, a
slip of size s makes z likelier by exp(s·hᵀWz − ½ s²·hᵀWh) than none does. Times how often the world's own draws make
such a slip, summed over sizes and over all slips of a kind, this is the odds of the kind: nobody who sees these
readings and lists names the true kind more often. Slips too small to be seen are never drawn and have no odds.

What the masses and the scales of the parts tell by themselves is left out: that a kitchen scale holds no wheel. That
another part shows exactly the same is not, as nobody enters a part twice without it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import erf, exp, log, sqrt

import numpy as np

from tests.simulated_build.evidence import (
    MIDDLE,
    Evidence,
    Vector,
    driver_masses,
    evidence_of,
    gain_of,
    moved_with,
    written_mass,
)
from tests.simulated_build.readings import crate_look, part_looks
from tests.simulated_build.slips import (
    CHANCES,
    FACTORS,
    KNOWN,
    SEEN,
    SOMEBODY,
    TAKEN_OUT,
    TANK,
    UNLOGGED,
    WET,
    ZERO,
    beside,
)
from tests.simulated_build.world import CAR_SCALES, NAMES, PART_SCALES, THINGS, Part, World

GRID = 200  # sizes that stand for an even spread of them
NEVER = 1e-6  # does one part come off in two jobs in truth
LIGHTEST, HEAVIEST = 0.1, 15.0  # kg, of parts that come off


@dataclass(frozen=True)
class Idea:
    """A slip that may have been made: `shape` is by how much one of size one moves each reading, kg.

    Each of the `sizes` it may have has one of the `chances`, among all slips that are made.
    """

    kind: str
    shape: Vector
    chances: Vector
    sizes: Vector


def odds(world: World) -> dict[str, float]:
    """The chance of each kind of slip, given that one was made that can be seen."""
    evidence = evidence_of(world)
    return shared_out([*likely(evidence, ideas(world)), *_other_scales(world, evidence)])


def shared_out(found: list[tuple[str, float]]) -> dict[str, float]:
    """The chance of each kind, from (kind, logarithm of a weight) of every idea; the likeliest first."""
    most = max(weight for _, weight in found)
    kinds: dict[str, float] = {}
    for kind, weight in found:
        kinds[kind] = kinds.get(kind, 0.0) + exp(weight - most)
    whole = sum(kinds.values())
    return dict(sorted(((kind, weight / whole) for kind, weight in kinds.items()), key=lambda each: -each[1]))


def likely(evidence: Evidence, all_ideas: Iterator[Idea]) -> list[tuple[str, float]]:
    """(kind, logarithm of how likely it is to have been drawn and to be read so) of every idea that can be seen."""
    image = evidence.w @ evidence.z
    found = []
    for idea in all_ideas:
        told, own = float(idea.shape @ image), float(idea.shape @ evidence.w @ idea.shape)
        seen = np.abs(idea.sizes) * sqrt(max(own, 0.0)) >= SEEN
        if seen.any():
            better = idea.sizes[seen] * told - 0.5 * idea.sizes[seen] ** 2 * own
            most = float(better.max())
            found.append((idea.kind, most + log(float(idea.chances[seen] @ np.exp(better - most)))))
    return found


def ideas(world: World) -> Iterator[Idea]:
    """Every slip the records could hold but for another scale, with the chances the world draws it with."""
    count = world.count
    steps = [np.where(np.arange(count) <= gap, 0.0, 1.0) for gap in range(count - 1)]
    sizes = np.exp(_even(log(UNLOGGED[0]), log(UNLOGGED[1])))
    for step in steps:
        yield _spread("unlogged", step, -sizes, TAKEN_OUT / len(steps))
        yield _spread("unlogged", step, sizes, (1.0 - TAKEN_OUT) / len(steps))
    yield from _of_parts(world)
    drivers = driver_masses(world)
    for k, look in enumerate(np.eye(count)):
        yield from _of_look(world, k, look, drivers)


def _spread(kind: str, shape: Vector, sizes: Vector, chance: float) -> Idea:
    return Idea(kind, shape, np.full(len(sizes), CHANCES[kind] * chance / len(sizes)), sizes)


def _one(kind: str, shape: Vector, chance: float) -> Idea:
    return Idea(kind, shape, np.array([CHANCES[kind] * chance]), np.ones(1))


def _even(low: float, high: float) -> Vector:
    """The middles of so many equal pieces of a range."""
    return low + (high - low) * (np.arange(GRID) + 0.5) / GRID


def _of_parts(world: World) -> Iterator[Idea]:
    """A part entered twice, in another unit, or with its crate."""
    weighed = [part for part in world.parts if part.guess is None]
    crate = crate_look(world) / (1.0 + gain_of(world, "hook")[0])
    crated = 1 + sum(part.crate == "used" for part in weighed)
    shapes = {part: part.signed * moved_with(world, part.job) for part in weighed}
    for part, shape in shapes.items():
        mass = written_mass(world, part)
        for factor, often in FACTORS.items():
            for times in (factor, 1.0 / factor):
                yield _one("unit", shape * (mass - mass / times), 0.5 * often / len(weighed))
        if part.scale == "hook" and part.crate != "used" and world.crate:
            yield _one("container", shape * crate, 1.0 / crated)
        twins = [twin for twin in weighed if twin.job != part.job and _alike(world, part, twin)]
        twins = [twin for twin in twins if _entered(world, part) - _entered(world, twin) in (0, 1)]
        if twins:
            one_record = any(each.same_as is not None for each in (part, *twins))
            by_chance = NEVER if one_record else _by_chance(part)
            yield _one("twice", shape * mass, 0.25 / len(weighed) / by_chance)


def _alike(world: World, one: Part, other: Part) -> bool:
    same = (one.way, one.count, one.scale, one.name) == (other.way, other.count, other.scale, other.name)
    return same and part_looks(world, one) == part_looks(world, other)


def _by_chance(part: Part) -> float:
    """How often another part shows the same and has the same name."""
    return min(1.0, PART_SCALES[part.scale].division / (part.mass * log(HEAVIEST / LIGHTEST))) / THINGS


def _entered(world: World, part: Part) -> int:
    return next(k for k, jobs in enumerate(world.lists) if part.job in jobs)


def _of_look(world: World, k: int, look: Vector, drivers: list[float]) -> Iterator[Idea]:
    """What may be wrong with one weigh-in alone."""
    count, listed = world.count, world.lists[k]
    near = beside(world.lists, k)
    for job in near:
        net = sum(part.signed * written_mass(world, part) for part in world.parts if part.job == job)
        yield _one("wrong_side", look * (-net if job in listed else net), 1.0 / count / len(near))
    masses = [
        (part, part.signed * written_mass(world, part))
        for part in world.parts
        if part.job in listed and part.guess is None
    ]
    step = np.where(np.arange(count) < k, 0.0, 1.0)
    for part, mass in masses:
        yield _one("part_off", -mass * look, 0.5 / count / len(masses))
        if k and part.job in world.lists[-1]:
            yield _one("part_off", -mass * step, 0.5 / count / len(masses))
    yield _spread("fuel", look, (_even(*TANK) - world.noted[k]) * MIDDLE, 1.0 / count)
    yield _spread("wet", look, _even(*WET), 1.0 / count)
    if world.noted_scales[k] != "platform":
        for sizes in (_even(*ZERO), -_even(*ZERO)):
            yield _spread("zero", look, sizes, 0.5 / count)
    aboard = max(world.ballast.values(), default=0.0)
    if aboard:
        yield _one("ballast", look * (-aboard if world.ballast.get(k) else aboard), 1.0 / count)
    if not world.driver_in(k):
        for mass in drivers:
            yield _one("somebody", mass * look, KNOWN / count / len(drivers))
        yield _spread("somebody", look, _even(*SOMEBODY), (1.0 - KNOWN) / count)
        return
    seated, noted = sum(map(world.driver_in, range(count))), world.seated.get(k, 0)
    yield _one("somebody", -drivers[noted] * look, 1.0 / count)
    for n, mass in enumerate(drivers):
        if n != noted:
            yield _one("other_driver", (mass - drivers[noted]) * look, 1.0 / seated / (len(drivers) - 1))


def _other_scales(world: World, evidence: Evidence) -> list[tuple[str, float]]:
    """A weigh-in that stood on another scale than noted moves nothing: its error is shared with other looks."""
    found, count = [], world.count
    for k, noted in enumerate(world.noted_scales):
        for real in (name for name in NAMES if name != noted):
            scales = tuple(real if at == k else name for at, name in enumerate(world.noted_scales))
            other = evidence_of(replace(world, noted_on=scales))
            seen = _seen_apart(other, count, k, (noted, real), sqrt(float(evidence.w[k, k])))
            if seen > 0.0:
                chance = CHANCES["other_scale"] * seen / count / (len(NAMES) - 1)
                found.append(("other_scale", log(chance) + _told(other) - _told(evidence)))
    return found


def _told(evidence: Evidence) -> float:
    """The logarithm of how likely the readings are, whatever the weight, beside a constant."""
    _, size = np.linalg.slogdet(evidence.s)
    mean = float(np.linalg.inv(evidence.s).sum())
    return -0.5 * (float(evidence.z @ evidence.w @ evidence.z) + float(size) + log(mean))


def _seen_apart(other: Evidence, count: int, k: int, scales: tuple[str, str], surely: float) -> float:
    """The chance that the two scales' errors are so far apart as to be seen, by what the readings tell of them."""
    noted, real = (_gain_column(other, count, name) for name in scales)
    load = float(real[0][k]) / real[1]
    own = load * load * (noted[1] ** 2 + real[1] ** 2)
    across = load * (real[1] * real[0] - noted[1] * noted[0])
    middle = float(across @ other.w @ other.z)
    spread = sqrt(max(own - float(across @ other.w @ across), 1e-12))
    least = SEEN / surely
    return 1.0 - _below((least - middle) / spread) + _below((-least - middle) / spread)


def _gain_column(evidence: Evidence, count: int, name: str) -> tuple[Vector, float]:
    """How far one standard deviation of a car scale's gain moves the readings, and that deviation."""
    column: Vector = evidence.a[:, count + NAMES.index(name)]
    return column, CAR_SCALES[name].gain


def _below(x: float) -> float:
    return 0.5 * (1.0 + erf(x / sqrt(2.0)))
