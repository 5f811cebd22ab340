"""One run: a world is drawn, a garage made of it, the product asked, and its answer compared with the truth."""

from __future__ import annotations

import zlib
from dataclasses import dataclass

import numpy as np

from tarebook.core.garage.garage import read_garage
from tarebook.core.standing.standing import standing
from tests.simulated_build.garage import records
from tests.simulated_build.naming import Named, all_named, named
from tests.simulated_build.scenarios import Scenario
from tests.simulated_build.unlogged import with_steps
from tests.simulated_build.world import World, draw

SHOWN = 2.0  # standard uncertainties: what stands behind ± on every screen


@dataclass(frozen=True)
class Outcome:
    """`off`: the answer less the truth; `u`: what the answer says of itself; `alone`: u by the last weigh-in alone, kg.

    `names`: what the product named. `gaps`: where something was unlogged.
    """

    off: float
    u: float
    alone: float
    names: tuple[Named, ...]
    gaps: tuple[int, ...]

    @property
    def covers(self) -> bool:
        return abs(self.off) <= SHOWN * self.u

    @property
    def too_heavy(self) -> bool:
        """The truth lies under the interval: who trusts it may be found under the minimum."""
        return self.off > SHOWN * self.u

    @property
    def invents(self) -> bool:
        """A change is named where there is none."""
        return any(name.within.isdisjoint(self.gaps) for name in self.names)

    @property
    def names_all(self) -> bool:
        """Every real change is named, at a place that holds it."""
        return all_named(self.gaps, [name.within for name in self.names])

    @property
    def places_all(self) -> bool:
        """Every real change is named at its very gap."""
        return all_named(self.gaps, [name.best for name in self.names])


def world_of(scenario: Scenario, seed: int, number: int) -> World:
    """The world of one run: the same whenever the seed, the scenario's name and the number are."""
    random = np.random.default_rng([seed, zlib.crc32(scenario.name.encode()), number])
    return with_steps(random, draw(random, scenario.setting))


def outcome(scenario: Scenario, seed: int, number: int) -> Outcome:
    world = world_of(scenario, seed, number)
    found = standing(read_garage(records(world)))
    assert found.weight is not None
    assert found.fused is not None
    return Outcome(
        off=found.weight.value - world.truth,
        u=found.weight.u,
        alone=found.fused.counted[-1].alone.u,
        names=named(found),
        gaps=tuple(world.steps),
    )
