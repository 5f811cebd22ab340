"""The least change that nobody wrote down and that the product names, in kilograms, for an otherwise clean garage.

In each run one change, at a gap and in a direction drawn for it, is made larger and larger. The least that is named in
half of the runs, or in nine of ten, is read off the share of runs that name each size. Sizes in kilograms say what is
lost to people; in multiples of its own doubt a change would grow with the doubt.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import exp, log

import numpy as np

from tarebook.core.garage.garage import read_garage
from tarebook.core.standing.standing import standing
from tests.simulated_build.garage import records
from tests.simulated_build.naming import all_named, named
from tests.simulated_build.run import random_of, world_of
from tests.simulated_build.scenarios import Scenario
from tests.simulated_build.share import Share, lines
from tests.simulated_build.world import World

SIZES = tuple(float(size) for size in np.geomspace(0.15, 30.0, 24))  # kg
SURE = 3  # sizes running
SHARES = (0.5, 0.9)
HEADINGS = ("scenario", "runs", *(f"named in {100 * share:.0f} %" for share in SHARES))


def names_of(scenario: Scenario, seed: int, number: int) -> tuple[bool, ...]:
    """Whether a change of each of `SIZES` is named where it is, in one run: once `SURE` are so, all larger ones are."""
    world, random = world_of(scenario, seed, number), random_of(scenario, seed, number, 2)
    gap, sign = int(random.integers(world.count - 1)), float(random.choice((-1.0, 1.0)))
    names: list[bool] = []
    for size in SIZES:
        is_sure = len(names) >= SURE and all(names[-SURE:])
        names.append(is_sure or _is_named(replace(world, steps={gap: sign * size}), gap))
    return tuple(names)


def _is_named(world: World, gap: int) -> bool:
    fused = standing(read_garage(records(world))).fused
    return fused is not None and all_named((gap,), [name.within for name in named(fused)])


def least(shares: Sequence[float], wanted: float) -> float | None:
    """The least size (kg) that so large a share of runs names, between two of `SIZES`; None when no size is."""
    first = next((at for at, share in enumerate(shares) if share >= wanted), None)
    if not first:
        return None if first is None else SIZES[0]
    below, above = shares[first - 1], shares[first]
    part = (wanted - below) / (above - below)
    return exp((1.0 - part) * log(SIZES[first - 1]) + part * log(SIZES[first]))


def table(found: Sequence[tuple[Scenario, Sequence[tuple[bool, ...]]]]) -> str:
    """A line a scenario: the change that is named in half of its runs, and in nine of ten, and where those may lie."""
    return lines(HEADINGS, [_row(each, names) for each, names in found])


def _row(scenario: Scenario, names: Sequence[tuple[bool, ...]]) -> tuple[str, ...]:
    runs = len(names)
    shares = [sum(of_size) / runs for of_size in zip(*names, strict=True)]
    return (scenario.name, f"{runs:,}", *(_told(shares, wanted, runs) for wanted in SHARES))


def _told(shares: Sequence[float], wanted: float, runs: int) -> str:
    doubt = Share(round(wanted * runs), runs).doubt
    middle, low, high = (_kg(least(shares, wanted + off)) for off in (0.0, -doubt, doubt))
    return f"{middle} ({low} to {high}) kg"


def _kg(size: float | None) -> str:
    return f"over {SIZES[-1]:.0f}" if size is None else f"{size:.2f}"
