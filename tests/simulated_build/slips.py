"""What people get wrong, put into a world: one slip, as large as it has to be to be seen at all.

Whether it can be seen is decided from the design alone: with h what it adds to the readings and W what those tell
beside their mean, √(hᵀWh) is the number of its own standard uncertainties it comes to. One that comes to fewer than
4.3 is drawn again, its kind too where any kind may be. Nothing here asks the product.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from math import exp, log
from typing import Any, TypeVar

import numpy as np
from numpy.random import Generator

from tests.simulated_build.evidence import Evidence, Vector, evidence_of
from tests.simulated_build.setting import Slip
from tests.simulated_build.world import JOBS, NAMES, World

SEEN = 4.3  # standard uncertainties
TRIES = 300
# Kind → how often it is the one slip that was made: common practice, no source. Frozen before the runs.
CHANCES = {
    "unlogged": 0.18,
    "twice": 0.08,
    "wrong_side": 0.13,
    "unit": 0.08,
    "container": 0.06,
    "other_scale": 0.05,
    "other_driver": 0.08,
    "somebody": 0.07,
    "fuel": 0.10,
    "ballast": 0.06,
    "wet": 0.04,
    "part_off": 0.05,
    "zero": 0.02,
}
FACTORS = {2.2046: 0.6, 10.0: 0.2, 16.0: 0.1, 28.35: 0.1}  # times too much or too little → how often
UNLOGGED = (0.5, 15.0)  # kg, evenly in the logarithm
TAKEN_OUT = 0.7  # of what nobody wrote down; the rest went in
SOMEBODY = (50.0, 100.0)  # kg, a person nobody knows the mass of
KNOWN = 0.5  # of those who sat in the car unnoticed are drivers
TANK = (5.0, 35.0)  # litres that may be noted, as those that may be in it
WET, ZERO = (1.0, 8.0), (1.0, 6.0)  # kg

T = TypeVar("T")
Draw = Callable[[Generator, World], World | None]


def with_slip(random: Generator, world: World) -> World | None:
    """The world with one slip that can be seen, of the kind its setting asks for; None when none was found."""
    asked = world.setting.slip
    if asked is None:
        return world
    evidence = evidence_of(world)
    for _ in range(TRIES):
        kind = str(random.choice(list(CHANCES), p=list(CHANCES.values()))) if asked == "any" else asked
        found = DRAWS[kind](random, world)
        if found is None:
            continue
        effect = effect_of(world, found, evidence)
        if evidence.seen(effect) >= SEEN:
            return replace(found, slip=Slip(kind, tuple(effect.tolist())))
    return None


def effect_of(world: World, found: World, evidence: Evidence) -> Vector:
    """By how much a slip moves what each reading says of the weight now; `evidence` is that of the world without it."""
    if found.noted_on:
        off = [world.gains[on] - world.gains[noted] for on, noted in zip(world.on, found.noted_on, strict=True)]
        return np.array([world.load(k) * gain for k, gain in enumerate(off)])
    return evidence_of(found).z - evidence.z


def _unlogged(random: Generator, world: World) -> World:
    size = exp(random.uniform(log(UNLOGGED[0]), log(UNLOGGED[1])))
    return replace(world, steps={_gap(random, world): -size if random.random() < TAKEN_OUT else size})


def _twice(random: Generator, world: World) -> World | None:
    """The same once more under a job of its own, when it was done or before the next weigh-in but one.

    Either with the same part, or with a part that is entered and weighed once more by the same name.
    """
    at, part = _any(random, [(at, each) for at, each in enumerate(world.parts) if each.guess is None])
    again = replace(part, job=JOBS, same_as=at if random.random() < 0.5 else None)
    entered = next(k for k, jobs in enumerate(world.inside) if part.job in jobs) + int(random.integers(2))
    if part.job not in world.inside[-1] or entered >= world.count:
        return None
    lists = tuple(jobs | {JOBS} if k >= entered else jobs for k, jobs in enumerate(world.inside))
    return replace(world, parts=(*world.parts, again), listed=lists)


def _wrong_side(random: Generator, world: World) -> World | None:
    """A job of the time before or after a weigh-in is in the list though not in the car, or the other way round."""
    k = _weigh_in(random, world)
    job = _any(random, sorted(beside(world.inside, k)))
    lists = tuple(jobs ^ {job} if at == k else jobs for at, jobs in enumerate(world.inside))
    # A job that is then in no list beside it was done and undone between two weigh-ins: no list tells of it.
    return replace(world, listed=lists) if job in beside(lists, k) else None


def beside(lists: tuple[frozenset[int], ...], k: int) -> frozenset[int]:
    """Jobs that are otherwise in the list before or after that of weigh-in k."""
    return (lists[k] ^ lists[k - 1] if k else frozenset()) | (lists[k] ^ lists[k + 1])


def _unit(random: Generator, world: World) -> World:
    factor = float(random.choice(list(FACTORS), p=list(FACTORS.values())))
    return _with_factor(random, world, factor if random.random() < 0.5 else 1.0 / factor)


def _pounds(random: Generator, world: World) -> World:
    return _with_factor(random, world, 2.2046)


def _with_factor(random: Generator, world: World, factor: float) -> World:
    chosen = _any(random, [n for n, part in enumerate(world.parts) if part.guess is None])
    return _with_part(world, chosen, factor=factor)


def _container(random: Generator, world: World) -> World | None:
    crated = [n for n, part in enumerate(world.parts) if part.crate]
    return _with_part(world, _any(random, crated), crate="forgotten") if crated else None


def _with_part(world: World, chosen: int, **changes: Any) -> World:
    parts = [replace(part, **changes) if n == chosen else part for n, part in enumerate(world.parts)]
    return replace(world, parts=tuple(parts))


def _other_scale(random: Generator, world: World) -> World:
    k = _weigh_in(random, world)
    other = _any(random, [name for name in NAMES if name != world.on[k]])
    return replace(world, noted_on=tuple(other if at == k else name for at, name in enumerate(world.on)))


def _other_driver(random: Generator, world: World) -> World | None:
    seated = [k for k in range(world.count) if world.driver_in(k)]
    if not seated or not world.others:
        return None
    k = _any(random, seated)
    noted = world.seated.get(k, 0)
    real = _any(random, [n for n in range(len(world.drivers)) if n != noted])
    return _with_extra(world, k, world.drivers[real] - world.drivers[noted])


def _somebody(random: Generator, world: World) -> World:
    """Somebody sits in the car and is not noted, or is noted and does not."""
    k = _weigh_in(random, world)
    if world.driver_in(k):
        return _with_extra(world, k, -world.drivers[world.seated.get(k, 0)])
    known = random.random() < KNOWN
    return _with_extra(world, k, _any(random, world.drivers) if known else float(random.uniform(*SOMEBODY)))


def _fuel(random: Generator, world: World) -> World:
    noted = world.noted.copy()
    noted[_weigh_in(random, world)] = random.uniform(*TANK)
    return replace(world, noted=noted)


def _ballast(random: Generator, world: World) -> World | None:
    """What was in the car is not noted, or is noted and was not there."""
    aboard = max(world.ballast.values(), default=0.0)
    k = _weigh_in(random, world)
    if not aboard:
        return None
    here = world.ballast.get(k, 0.0)
    noted = {**world.ballast, k: aboard - here}
    if not any(noted.values()):
        return None  # no record tells of any
    return _with_extra(replace(world, ballast=noted), k, here - noted[k])


def _wet(random: Generator, world: World) -> World:
    return _with_extra(world, _weigh_in(random, world), float(random.uniform(*WET)))


def _part_off(random: Generator, world: World) -> World | None:
    """A part is off though noted on, or in the car though noted off: at one weigh-in, or from then on."""
    k = _weigh_in(random, world)
    parts = [part for part in world.parts if part.guess is None and part.job in world.inside[k]]
    if not parts:
        return None
    part = _any(random, parts)
    if random.random() < 0.5:
        return _with_extra(world, k, -part.signed * part.mass)
    # It stays so: the job was done, and what nobody wrote down came after.
    return replace(world, steps={k - 1: -part.signed * part.mass}) if part.job in world.inside[-1] and k else None


def _zero(random: Generator, world: World) -> World | None:
    k = _weigh_in(random, world)
    if world.on[k] == "platform":
        return None
    displays = len(world.jitter[k])
    return replace(world, zeros={k: (float(_sign(random) * random.uniform(*ZERO)) / displays,) * displays})


def _with_extra(world: World, k: int, mass: float) -> World:
    return replace(world, extra={k: mass})


def _weigh_in(random: Generator, world: World) -> int:
    return int(random.integers(world.count))


def _gap(random: Generator, world: World) -> int:
    return int(random.integers(world.count - 1))


def _sign(random: Generator) -> int:
    return 1 if random.random() < 0.5 else -1


def _any(random: Generator, items: Sequence[T]) -> T:
    return items[int(random.integers(len(items)))]


DRAWS: dict[str, Draw] = {
    "unlogged": _unlogged,
    "twice": _twice,
    "wrong_side": _wrong_side,
    "unit": _unit,
    "pounds": _pounds,
    "container": _container,
    "other_scale": _other_scale,
    "other_driver": _other_driver,
    "somebody": _somebody,
    "fuel": _fuel,
    "ballast": _ballast,
    "wet": _wet,
    "part_off": _part_off,
    "zero": _zero,
}
