"""Small garages with one slip in their records, or none: for asking whether the odds of causes are what they say.

Truth is linear and drawn here with numpy alone: parts, a car on two scales, fuel, drivers, ballast, and what somebody
did wrong, each kind as often as `MIX` says. Nothing of the product makes it. `python -m tests.core.slip_worlds` counts.
"""

from __future__ import annotations

import argparse
import sys
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Any

import numpy as np

Record = dict[str, Any]
MIX = {
    "unwritten": 0.22, "misread": 0.06, "wrong_side": 0.10, "unit": 0.10, "fuel": 0.09, "tare": 0.07, "twice": 0.07,
    "put_back": 0.06, "person": 0.05, "ballast": 0.05, "zero": 0.04, "guess": 0.04, "other_driver": 0.03,
    "other_scale": 0.03, "wet": 0.04, "chance": 1.0,
}  # fmt: skip
GAINS = {"pads": 0.002, "platform": 0.002}
REPEATS, BENCH_GAIN, DENSITY, TANK = 0.3, 0.002, 0.7475, 45.0
FACTORS = {0.45359237: 3, 1 / 0.45359237: 3, 16.0: 1, 1 / 16: 1, 28.349523125: 1, 1 / 28.349523125: 1, 10.0: 2, 0.1: 2}
DRIVERS = {"anna": 64.0, "ben": 81.0, "carl": 93.0}
BLOCK, CRATE = 5.0, 2.3


@dataclass
class World:
    """What is true, and what is written: `noted` masses, `lists` of jobs at each weigh-in and now, as written."""

    random: np.random.Generator
    slip: str
    weigh_ins: int
    masses: dict[str, float]
    noted: dict[str, float]
    fitted: dict[str, int]  # job (and part) → the weigh-in it is first there at, as written
    errors: np.ndarray  # kg in each look beside the records
    names: dict[str, str] = field(default_factory=dict)
    guessed: frozenset[str] = frozenset()
    crated: frozenset[str] = frozenset()  # weighed in the crate
    again: dict[str, int] = field(default_factory=dict)
    shift: dict[str, Any] = field(default_factory=dict)


def draw(seed: int) -> tuple[World, Record]:
    """A world, and the records somebody made of it."""
    random = np.random.default_rng(seed)
    slip = str(random.choice(list(MIX), p=np.array(list(MIX.values())) / sum(MIX.values())))
    count, parts = int(random.integers(5, 9)), int(random.integers(8, 13))
    ids = [f"p{at:02}" for at in range(parts)]
    masses = {part: float(np.exp(random.uniform(np.log(0.8), np.log(25.0)))) for part in ids}
    masses[ids[1]] = masses[ids[0]] * float(random.uniform(0.95, 1.05))  # a pair of one name
    fitted = {part: int(random.integers(1, count)) for part in ids}
    bench = 1.0 + float(random.normal(0.0, BENCH_GAIN))
    noted = {part: kg * bench for part, kg in masses.items()}
    world = World(random, slip, count, masses, noted, fitted, np.zeros(count))
    world.names = {part: f"thing {part}" for part in ids} | {ids[1]: f"thing {ids[0]}"}
    world.guessed, world.crated = frozenset(ids[2:4]), frozenset(ids[4:6])
    for part in world.guessed:
        world.noted[part] = masses[part] * float(np.clip(random.normal(1.0, 0.1), 0.7, 1.3))
    return world, _records(world)


def _records(world: World) -> Record:
    random, count = world.random, world.weigh_ins
    scales = [["pads", "platform"][at % 2] for at in range(count)]
    driver = [str(random.choice(list(DRIVERS))) if random.random() < 0.5 else None for _ in range(count)]
    litres = random.uniform(5.0, 40.0, count)
    ballast = [10.0 if random.random() < 0.3 else 0.0 for _ in range(count)]
    truly: Record = {
        "driver": list(driver),
        "litres": list(litres + random.uniform(-1, 1, count)),
        "scales": list(scales),
        "ballast": list(ballast),
        "fitted": dict(world.fitted),
    }
    if world.slip in ("wet", "zero", "misread", "unwritten", "put_back"):
        _unnoted(world)
    if world.slip in ("unit", "tare", "guess", "twice", "wrong_side"):
        _misnoted(world, truly)
    if world.slip in ("other_driver", "person", "fuel", "ballast", "other_scale"):
        _otherwise(world, truly, driver)
    gains = {name: 1.0 + float(random.normal(0.0, u)) for name, u in GAINS.items()}
    shown = []
    for at in range(count):
        out = sum(kg for part, kg in world.masses.items() if truly["fitted"][part] <= at)
        aboard = (DRIVERS.get(truly["driver"][at], 0.0)) + truly["litres"][at] * DENSITY + truly["ballast"][at]
        load = 1000.0 - out + aboard + world.errors[at] + truly.get("extra", {}).get(at, 0.0)
        look = load * gains[truly["scales"][at]] + float(random.normal(0.0, REPEATS))
        shown.append(round(look * truly.get("factor", {}).get(at, 1.0), 1))
    return _written(world, scales, driver, litres, ballast, shown)


def _unnoted(world: World) -> None:
    random, at = world.random, int(world.random.integers(0, world.weigh_ins))
    if world.slip in ("wet", "zero", "misread"):
        world.errors[at] += {
            "wet": random.uniform(0.3, 6.0),
            "zero": random.normal(0.0, 3.0),
            "misread": random.normal(0.0, random.choice([2.0, 20.0])),
        }[world.slip]
        return
    gap = int(random.integers(1, world.weigh_ins))
    if world.slip == "unwritten":
        world.errors[gap:] += float(random.normal(0.0, random.choice([3.0, 15.0])))
    elif random.random() < 0.5:  # a part in or out at one weigh-in only
        part = str(random.choice(list(world.fitted)))
        world.errors[at] += world.masses[part] if world.fitted[part] <= at else -world.masses[part]
    else:
        may = [(part, since) for part, since in world.fitted.items() for _ in range(world.weigh_ins - since)]
        part, since = may[int(random.integers(len(may)))]
        world.errors[int(random.integers(since, world.weigh_ins)) :] += world.masses[part]


def _misnoted(world: World, truly: Record) -> None:
    random = world.random
    part = str(random.choice([each for each in world.noted if (each in world.guessed) == (world.slip == "guess")]))
    if world.slip == "wrong_side":
        part = str(random.choice(list(world.fitted)))
        since = world.fitted[part]
        truly["fitted"][part] = since + int(random.choice([-1, 1]))
    elif world.slip == "unit":
        factors = np.array(list(FACTORS.values())) / sum(FACTORS.values())
        world.noted[part] /= float(random.choice(list(FACTORS), p=factors))
    elif world.slip == "tare":
        part = str(random.choice([each for each in world.noted if each not in world.guessed | world.crated]))
        world.noted[part] += CRATE if random.random() < 0.9 else float(random.uniform(0.1, 5.0))
    elif world.slip == "guess":
        world.masses[part] = max(0.1, world.noted[part] * (1.0 + float(random.normal(0.0, 0.6))))
    else:
        world.again[part] = int(random.integers(1, world.weigh_ins))


def _otherwise(world: World, truly: Record, driver: list[str | None]) -> None:
    random, at = world.random, int(world.random.integers(0, world.weigh_ins))
    others = [each for each in DRIVERS if each != driver[at]]
    if world.slip == "other_driver":
        seated = [each for each in range(world.weigh_ins) if driver[each]] or [at]
        at = int(random.choice(seated))
        truly["driver"][at] = str(random.choice([each for each in DRIVERS if each != driver[at]]))
    elif world.slip == "person":
        ways: list[Any] = [float(random.normal(78.0, 15.0)), *(DRIVERS[each] for each in others)]
        ways += ["out"] if driver[at] else []
        way = ways[int(random.integers(len(ways)))]
        truly["driver"][at] = None if way == "out" else driver[at]
        truly["extra"] = {at: 0.0 if way == "out" else way}
    elif world.slip == "fuel":
        truly["litres"][at] = float(random.uniform(0.0, TANK))
    elif world.slip == "ballast":
        here = truly["ballast"][at]
        before = {0.0, *truly["ballast"]} - {here}
        truly["ballast"][at] = float(random.choice([here + BLOCK, here + 2 * BLOCK, *before, *before]))
    else:
        truly["scales"][at] = "platform" if truly["scales"][at] == "pads" else "pads"


def _written(world: World, scales: list[str], driver: list[str | None], litres: Any, ballast: list[float],
             shown: list[float]) -> Record:  # fmt: skip
    jobs = dict(world.fitted) | {f"{part}-again": at for part, at in world.again.items()}
    doubled = [part for part in jobs if part.endswith("-again")]
    noted = world.noted | {part: world.noted[part.removesuffix("-again")] * 1.01 for part in doubled}
    names = world.names | {part: world.names[part.removesuffix("-again")] for part in doubled}
    of = {**{part: kg for part, kg in noted.items() if part not in world.guessed}, **DRIVERS}
    return {
        "trim": "event",
        "cars": [{"id": "car", "fuel_kind": "petrol", "tank_size": f"{TANK} L"}],
        "scales": [
            {"id": "pads", "kind": "corner_pads", "division": "0.1 kg", "repeatability": f"{REPEATS} kg"},
            {"id": "platform", "kind": "axle_pads", "division": "0.1 kg", "repeatability": f"{REPEATS} kg"},
            {"id": "bench", "kind": "bench", "division": "10 g"},
        ],
        "scale_checks": [
            {"id": "check", "scale": "platform", "known": "500 kg", "known_within": "1.73 kg", "shown": "500 kg"}
        ],
        "drivers": [{"id": name} for name in DRIVERS],
        "parts": [
            {"id": part, "name": names[part],
             **({"claim": f"{noted[part]:.3f} kg", "claim_basis": "guessed"} if part in world.guessed else {})}
            for part in jobs
        ],
        "weighings": [
            {"id": f"w-{name}", "of": name, "scale": "bench",
             **({"method": "container", "shown": f"{kg + CRATE:.3f} kg", "shown_empty": f"{CRATE} kg"}
                if name in world.crated else {"method": "direct", "shown": f"{kg:.3f} kg"})}
            for name, kg in of.items()
        ],
        "jobs": [{"id": f"j-{part}", "state": "fitted"} for part in jobs],
        "job_parts": [{"id": f"q-{part}", "job": f"j-{part}", "part": part, "way": "off"} for part in jobs],
        "ballast_places": [{"id": "floor", "block": f"{BLOCK} kg", "most": 2}],
        "weigh_ins": [
            {
                "id": f"k{at}", "layout": "total", "scale": scales[at], "trim": "event", "at": f"2026-0{at + 1}-01",
                "total": f"{shown[at]:.1f} kg", "jobs": [f"j-{part}" for part, since in jobs.items() if since <= at],
                "fuel": f"{litres[at]:.2f} L", "fuel_within": "1 L", "ballast": f"{ballast[at]:.0f} kg",
                "driver_in": driver[at] is not None, "driver": driver[at],
            }
            for at in range(world.weigh_ins)
        ],
    }  # fmt: skip


@dataclass
class Count:
    """How often causes told with such odds were true; how often the true one was first, and among those told."""

    told: list[tuple[float, bool]]
    first: int = 0
    among: int = 0
    named: int = 0

    def bins(self, edges: tuple[float, ...] = (0.05, 0.2, 0.4, 0.6, 0.8, 1.0)) -> list[tuple[float, float, int]]:
        """By odds: their mean, the share that was true, and how many."""
        found = []
        for low, high in pairwise(edges):
            inside = [(odds, true) for odds, true in self.told if low <= odds < high or high == 1.0 == odds]
            if inside:
                odds, true = np.array(inside, dtype=float).T
                found.append((float(odds.mean()), float(true.mean()), len(inside)))
        return found


def count(runs: int, first: int = 0) -> Count:
    """What the product tells of so many worlds in which it names one thing that does not fit."""
    from tarebook.core.garage.garage import read_garage
    from tarebook.core.standing.standing import standing

    found = Count([])
    for seed in range(first, first + runs):
        world, records = draw(seed)
        fused = standing(read_garage(records)).fused
        changes = fused.changes if fused else ()
        if len(changes) != 1:
            continue
        found.named += 1
        causes = changes[0].causes
        found.told += [(cause.odds, cause.code == world.slip) for cause in causes]
        found.first += bool(causes) and causes[0].code == world.slip
        found.among += any(cause.code == world.slip for cause in causes)
    return found


def main() -> int:
    parser = argparse.ArgumentParser(prog="python -m tests.core.slip_worlds")
    parser.add_argument("--runs", type=int, default=2000)
    found = count(parser.parse_args().runs)
    first, among = found.first / found.named, found.among / found.named
    print(f"{found.named} named once; the true one first in {first:.0%}, told in {among:.0%}")
    for odds, true, number in found.bins():
        print(f"told at {odds:.0%}: true in {true:.0%} of {number}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
