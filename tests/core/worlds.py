"""True garages, and the records people would make of them: for asking the standing what the truth is.

Scales get a gain from the spread assumed for their kind, displays round, the car repeats as its scale does, fuel has a
density within its standard, litres are known to what is said. A secret rides along that nobody wrote down.
"""

from dataclasses import dataclass
from random import Random
from typing import Any

MINIMUM, CLASS_FUEL, LITRES_WITHIN = 1000.0, 10.0, 1.0
GAINS = {"pads": 0.002, "bench": 0.002, "floor": 0.01}  # as assumed by kind: corner pads, bench, bathroom
OFFICIAL_GAIN, OFFICIAL_REPEATS = 0.001, 0.5  # as assumed of a platform
DIVISIONS = {"pads": 0.2, "bench": 0.02, "floor": 0.1, "official": 0.5}
REPEATS = 0.4
BEFORE, SINCE = ("p0", "p1", "p2"), ("p3", "p4", "p5")  # parts taken off before the last weigh-in, and after it


@dataclass
class World:
    """What is true, kg. `weight`: as the class weighs. `density` in kg per litre; `gain` by scale."""

    weight: float
    secret: float
    driver: float
    density: float
    parts: dict[str, float]
    gain: dict[str, float]

    def shown(self, load: float, scale: str) -> str:
        return f"{rounded(load * (1 + self.gain[scale]), DIVISIONS[scale]):.3f} kg"

    def car(self, parts: tuple[str, ...], secret: float) -> float:
        """The car without fuel and driver, with these parts still in it."""
        end = self.weight - self.driver - CLASS_FUEL * self.density - self.secret
        return end + secret + sum(self.parts[name] for name in parts)


def rounded(load: float, division: float) -> float:
    return round(load / division) * division


def draw(random: Random) -> World:
    return World(
        weight=MINIMUM + random.uniform(-14, 14),
        secret=random.choice((0.0, 3.0)),
        driver=random.uniform(65, 90),
        density=random.uniform(0.720, 0.775),
        parts={name: random.uniform(1, 15) for name in (*BEFORE, *SINCE)},
        gain={name: random.gauss(0, u) for name, u in GAINS.items()},
    )


def shown_under(world: World, random: Random) -> bool:
    """Whether the official scale, met for the first time, shows less than the minimum."""
    load = world.weight * (1 + random.gauss(0, OFFICIAL_GAIN)) + random.gauss(0, OFFICIAL_REPEATS)
    return rounded(load, DIVISIONS["official"]) < MINIMUM


def records(world: World, random: Random) -> dict[str, Any]:
    """What somebody wrote down: every part weighed, the car weighed twice, the secret smuggled in between."""
    return {
        "trim": "event",
        "cars": [{"id": "car", "fuel_kind": "petrol"}],
        "scales": [
            {"id": "pads", "kind": "corner_pads", "division": "0.2 kg", "repeatability": f"{REPEATS} kg"},
            {"id": "bench", "kind": "bench", "division": "20 g"},
            {"id": "floor", "kind": "bathroom", "division": "0.1 kg"},
        ],
        "drivers": [{"id": "d"}],
        "parts": [{"id": name} for name in world.parts],
        "weighings": [*(_weighing(world, name) for name in world.parts), _weighing(world, "d")],
        "jobs": [{"id": f"j-{name}", "state": "fitted"} for name in world.parts],
        "job_parts": [{"id": f"q-{name}", "job": f"j-{name}", "part": name, "way": "off"} for name in world.parts],
        "weigh_ins": [
            _weigh_in(world, random, "k1", world.car((*BEFORE, *SINCE), 0.0), []),
            _weigh_in(world, random, "k2", world.car(SINCE, world.secret), [f"j-{name}" for name in BEFORE]),
        ],
        "class_sheets": [_sheet()],
    }


def _weighing(world: World, of: str) -> dict[str, Any]:
    scale, load = ("floor", world.driver) if of == "d" else ("bench", world.parts[of])
    return {"id": f"w-{of}", "of": of, "method": "direct", "scale": scale, "shown": world.shown(load, scale)}


def _weigh_in(world: World, random: Random, name: str, car: float, jobs: list[str]) -> dict[str, Any]:
    litres = random.uniform(4, 20)
    load = car + litres * world.density
    shares = {"lf": 0.28, "rf": 0.27, "lr": 0.23, "rr": 0.22}
    # Four pads share how well the whole car repeats.
    corners = {c: world.shown(load * share + random.gauss(0, REPEATS / 2), "pads") for c, share in shares.items()}
    said = litres + random.uniform(-LITRES_WITHIN, LITRES_WITHIN)
    fuel = {"fuel": f"{said:.4f} L", "fuel_within": f"{LITRES_WITHIN} L"}
    return {
        "id": name,
        "layout": "corners",
        "trim": "event",
        "scale": "pads",
        "at": name,
        "jobs": jobs,
        "driver_in": False,
        "ready": ["zeroed", "level", "rolled", "pressures", "clear"],
        **fuel,
        **corners,
    }


def _sheet() -> dict[str, Any]:
    fuel = {"fuel": "stated", "fuel_stated": f"{CLASS_FUEL} L"}
    scale = {"scale_division": f"{DIVISIONS['official']} kg", "scale_rounding": "nearest"}
    return {"id": "sheet", "minimum": f"{MINIMUM} kg", "driver": "in", **fuel, **scale}
