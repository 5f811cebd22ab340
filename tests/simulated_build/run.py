"""One run: a world is drawn, a garage made of it, the product asked, and its answer compared with the truth."""

from __future__ import annotations

import zlib
from dataclasses import dataclass

import numpy as np
from numpy.random import Generator

from tarebook.core.garage.garage import read_garage
from tarebook.core.standing.estimate import Fused
from tarebook.core.standing.standing import standing
from tests.simulated_build.blamed import Blamed, told_of
from tests.simulated_build.ceiling import odds
from tests.simulated_build.garage import MINIMUM, records
from tests.simulated_build.garages import with_garage
from tests.simulated_build.naming import Named, all_named, named, tells
from tests.simulated_build.readings import official_look
from tests.simulated_build.scenarios import Scenario
from tests.simulated_build.slips import with_slip
from tests.simulated_build.unlogged import with_steps
from tests.simulated_build.world import World, draw

TRIES = 50  # worlds, until one has a slip that can be seen
SHOWN = 2.0  # standard uncertainties: what stands behind ± on every screen


@dataclass(frozen=True)
class Outcome:
    """`off`: the answer less the truth; `u`: what the answer says of itself; `alone`: u by the last weigh-in alone, kg.

    `answers`: off and u of each answer that is told, the one that counts first. `names`: what the product named;
    `tells`: whether it says that anything does not fit. `gaps`: where something was unlogged. `shown_under`: whether
    the official platform shows less than the minimum for the car trimmed to it. `blamed`: what is said to be the slip,
    where any kind may be.
    """

    off: float
    u: float
    answers: tuple[tuple[float, float], ...]
    alone: float
    names: tuple[Named, ...]
    tells: bool
    gaps: tuple[int, ...]
    shown_under: bool
    blamed: Blamed | None = None

    @property
    def half_width(self) -> float:
        return SHOWN * self.u

    @property
    def covers(self) -> bool:
        """The interval holds the truth; of two answers that are both told, either."""
        return any(abs(off) <= SHOWN * u for off, u in self.answers)

    @property
    def too_heavy(self) -> bool:
        """The truth lies under every interval: who trusts them may be found under the minimum."""
        return all(off > SHOWN * u for off, u in self.answers)

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
    random = random_of(scenario, seed, number)
    for _ in range(TRIES):
        world = with_slip(random, with_steps(random, with_garage(random, draw(random, scenario.setting))))
        if world is not None:
            return world
    raise AssertionError(f"{scenario.name} {number}: nothing that can be seen")


def random_of(scenario: Scenario, *seeds: int) -> Generator:
    """What chance does in a run: (seed, number), and what else tells one use of it from others."""
    return np.random.default_rng([seeds[0], zlib.crc32(scenario.name.encode()), *seeds[1:]])


def outcome(scenario: Scenario, seed: int, number: int) -> Outcome:
    world = world_of(scenario, seed, number)
    found = standing(read_garage(records(world)))
    assert found.weight is not None
    assert found.fused is not None
    assert found.official is not None
    off = found.weight.value - world.truth
    trimmed = MINIMUM + found.official.in_hand - off  # who takes out what the answer says is too much
    return Outcome(
        off=off,
        u=found.weight.u,
        answers=tuple((each.weight.value - world.truth, each.weight.u) for each in found.fused.answers),
        alone=found.fused.counted[-1].alone.u,
        names=named(found.fused),
        tells=tells(found.fused),
        gaps=world.slip.gaps if world.slip else tuple(world.steps),
        shown_under=official_look(random_of(scenario, seed, number, 1), world, trimmed) < MINIMUM,
        blamed=_blamed(world, found.fused) if scenario.setting.slip == "any" else None,
    )


def _blamed(world: World, fused: Fused) -> Blamed:
    assert world.slip is not None
    return Blamed(world.slip.kind, told_of(fused, world.slip.gaps), tuple(odds(world).items()))
