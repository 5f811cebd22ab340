"""Changes that nobody wrote down, put into a world: as large as they have to be to be seen at all, at random gaps."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from numpy.random import Generator

from tests.simulated_build.evidence import evidence_of, u_of_steps
from tests.simulated_build.world import World


def with_steps(random: Generator, world: World) -> World:
    """The world with as many unlogged changes as its setting asks for, each so many times its own u, up or down.

    A change after the last weigh-in shows in nothing, so every one lies between two weigh-ins.
    """
    setting = world.setting
    if not setting.steps:
        return world
    gaps = tuple(sorted(random.choice(world.count - 1, setting.steps, replace=False).tolist()))
    sizes = random.uniform(setting.least, setting.most, setting.steps) * np.sign(random.uniform(-1, 1, setting.steps))
    steps = sizes * u_of_steps(evidence_of(world), gaps)
    steps = np.sign(steps) * np.maximum(np.abs(steps), setting.least_kg)
    return replace(world, steps={gap: float(size) for gap, size in zip(gaps, steps, strict=True)})
