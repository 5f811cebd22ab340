"""Bodies and loads for the tests of balance, and two independent ways to propagate their doubt."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from random import Random

from tarebook.core.balance.body import Body, Load
from tarebook.core.numbers.uncertain import Uncertain

Inputs = Sequence[Uncertain]
Computed = Callable[[Inputs], Uncertain]
STEP = 1e-4  # standard deviations


@dataclass(frozen=True)
class Point:
    mass: float
    x: float
    y: float


def inputs(random: Random, loads: int, doubt: float = 1.0) -> list[Uncertain]:
    """Mass, x, y, z of a car, then of each load; doubts of their own, and a calibration all masses share."""
    found = _four(random, "car", random.uniform(700, 1300), (1.0, 0.0, 0.5), (0.5, 0.004), doubt)
    for n in range(loads):
        mass = random.choice((-1, 1)) * random.uniform(0.5, 40)
        at = (random.uniform(-0.8, 3.2), random.uniform(-0.8, 0.8), random.uniform(0.1, 1.2))
        found += _four(random, f"part{n}", mass, at, (0.02 * abs(mass), 0.1), doubt)
    return found


def _four(
    random: Random, name: str, mass: float, at: Sequence[float], u: tuple[float, float], doubt: float
) -> list[Uncertain]:
    sources = {name: u[0] * doubt, "cal": 0.002 * mass * doubt * random.choice((-1, 1))}
    arms = [Uncertain(arm, {f"{name}:{axis}": u[1] * doubt}) for axis, arm in zip("xyz", at, strict=True)]
    return [Uncertain(mass, sources), *arms]


def body_and_loads(given: Inputs, own: float = 0.05) -> tuple[Body, list[Load]]:
    fours = [given[at : at + 4] for at in range(0, len(given), 4)]
    return Body(*fours[0]), [Load(mass, x, y, z, own) for mass, x, y, z in fours[1:]]


def shifted(given: Inputs, source: str, deviations: float) -> list[Uncertain]:
    """The inputs with one error source so many standard deviations off."""
    return [Uncertain(item.value + deviations * item.sources.get(source, 0.0), item.sources) for item in given]


def sources(given: Inputs) -> list[str]:
    return sorted({name for item in given for name in item.sources})


def numerically(compute: Computed, given: Inputs) -> dict[str, float]:
    """Each source's contribution by central differences."""
    return {
        name: (compute(shifted(given, name, STEP)).value - compute(shifted(given, name, -STEP)).value) / (2 * STEP)
        for name in sources(given)
    }


def drawn(compute: Computed, given: Inputs, random: Random, runs: int) -> list[float]:
    """The value with every source drawn from its normal distribution, so many times."""
    found = []
    for _ in range(runs):
        off = {name: random.gauss(0.0, 1.0) for name in sources(given)}
        moved = [
            Uncertain(i.value + sum(off[name] * part for name, part in i.sources.items()), i.sources) for i in given
        ]
        found.append(compute(moved).value)
    return found


def summed(points: Sequence[Point]) -> tuple[float, float, float, float]:
    """(mass, x, y, yaw inertia about that centre) of points, by direct summation."""
    mass = sum(p.mass for p in points)
    x, y = sum(p.mass * p.x for p in points) / mass, sum(p.mass * p.y for p in points) / mass
    return mass, x, y, sum(p.mass * ((p.x - x) ** 2 + (p.y - y) ** 2) for p in points)
