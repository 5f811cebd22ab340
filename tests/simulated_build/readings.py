"""What every display of a simulated build shows: true loads, with the gain of the scale, rounded to its division."""

from __future__ import annotations

from numpy.random import Generator

from tests.simulated_build.world import (
    CAR_SCALES,
    PART_SCALES,
    PERSON,
    Part,
    Scale,
    World,
)

SHARES = {1: (1.0,), 2: (0.55, 0.45), 4: (0.28, 0.27, 0.23, 0.22)}  # of the load, by the number of displays


def shown(scale: Scale, gain: float, load: float) -> float:
    """What a display shows for a load."""
    return round(load * (1.0 + gain) / scale.division) * scale.division


def part_looks(world: World, part: Part) -> tuple[float, float]:
    """As written: the display with one piece of a part, and without it.

    A person holds it on the bathroom scale, and it may lie in a crate elsewhere.
    """
    scale, gain = PART_SCALES[part.scale], world.gains[part.scale]
    empty = PERSON if part.scale == "floor" else world.crate if part.crate else 0.0
    full = shown(scale, gain, part.mass + empty)
    return part.factor * full, 0.0 if part.crate == "forgotten" else part.factor * shown(scale, gain, empty)


def crate_look(world: World) -> float:
    return shown(PART_SCALES["hook"], world.gains["hook"], world.crate)


def driver_looks(world: World) -> list[float]:
    return [shown(PART_SCALES["floor"], world.gains["floor"], mass) for mass in world.drivers]


def check_looks(world: World, name: str) -> list[float]:
    scale = {**PART_SCALES, **CAR_SCALES}[name]
    return [shown(scale, world.gains[name], mass) for mass in world.known[name]]


def official_look(random: Generator, world: World, load: float) -> float:
    """What the official platform shows of a car of this weight on another day: its gain is what it always was."""
    return shown(
        CAR_SCALES["platform"], world.gains["platform"], load + float(random.normal(0.0, world.setting.repeats))
    )


def car_looks(world: World, k: int) -> list[float]:
    """The displays of weigh-in k, one a corner, an axle or the whole car."""
    scale, gain, load = CAR_SCALES[world.on[k]], world.gain_at(k), world.load(k)
    loads = [load * share for share in SHARES[scale.looks]]
    zeros = world.zeros.get(k, (0.0,) * scale.looks)
    offs = zip(loads, world.jitter[k], zeros, strict=True)
    return [shown(scale, gain, each + float(off) + zero) for each, off, zero in offs]
