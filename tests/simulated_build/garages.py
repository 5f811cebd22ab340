"""What else a garage has, and how its scales wander: put into a world before anything is written down wrongly.

A garage in which somebody slips has drivers beside the one who counts, ballast that is in the car on some days, and a
crate in which parts hang: with none of these a slip with them would tell itself. Scales at home (not the official
platform) change from one weigh-in to the next where a scenario says so.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from numpy.random import Generator

from tests.simulated_build.evidence import Vector
from tests.simulated_build.world import CAR_SCALES, HOME, Part, World

WANDERS = 0.0005  # of the load, from one weigh-in to the next
OTHERS, HEAVIER = 2, (3.0, 25.0)  # drivers beside the lightest, heavier by so many kg
BLOCKS, BLOCK = (2, 10), 2.5  # of ballast; kg each
CRATE = (2.0, 6.0)  # kg
OFTEN = 0.5  # of weigh-ins with ballast, and of parts on the hook in the crate
UNEVEN = 1.0  # kg, standard deviation by which the zeros of four pads differ


def with_garage(random: Generator, world: World) -> World:
    """The world as its setting says, before any slip."""
    setting = world.setting
    if setting.checked:
        world = replace(world, known={**world.known, **{name: _known(random, world, name) for name in HOME}})
    if setting.wander:
        world = replace(world, drift={name: _drift(random, setting.wander, world.count) for name in HOME})
    if setting.zero:
        world = replace(world, zeros=_zeros(random, world))
    return _peopled(random, world) if setting.slip else world


def _known(random: Generator, world: World, name: str) -> tuple[float, ...]:
    return tuple(float(random.uniform(mass - off, mass + off)) for mass, off in world.checks(name))


def _drift(random: Generator, wander: str, count: int) -> Vector:
    """From nothing at the first weigh-in: a random walk, or ever the same way."""
    if wander == "slope":
        steps = np.full(count - 1, float(random.choice((-WANDERS, WANDERS))))
    else:
        steps = random.normal(0.0, WANDERS, count - 1)
    walked: Vector = np.concatenate([[0.0], np.cumsum(steps)])
    return walked


def _zeros(random: Generator, world: World) -> dict[int, tuple[float, ...]]:
    """The pads were never zeroed: each is off by something, all together by what the setting says, either way."""
    pads = CAR_SCALES["pads"].looks
    apart = random.normal(0.0, UNEVEN, pads)
    off = float(random.choice((-1.0, 1.0))) * world.setting.zero / pads + apart - apart.mean()
    return {k: tuple(off.tolist()) for k, name in enumerate(world.on) if name == "pads"}


def _peopled(random: Generator, world: World) -> World:
    others = tuple(world.driver + float(each) for each in random.uniform(*HEAVIER, OTHERS))
    aboard = BLOCK * int(random.integers(*BLOCKS, endpoint=True))
    return replace(
        world,
        others=others,
        seated={k: int(random.integers(1 + OTHERS)) for k in range(world.count) if world.driver_in(k)},
        ballast={k: aboard if random.random() < OFTEN else 0.0 for k in range(world.count)},
        crate=float(random.uniform(*CRATE)),
        parts=tuple(_held(random, part) for part in world.parts),
    )


def _held(random: Generator, part: Part) -> Part:
    crated = part.scale == "hook" and part.guess is None and random.random() < OFTEN
    return replace(part, crate="used") if crated else part
