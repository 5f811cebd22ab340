"""The garage somebody would have written down of a simulated build: plain records in the dialect of `core/garage`.

Only displays, labels and guesses go in, as text with their units; nothing of what is true.
"""

from __future__ import annotations

from typing import Any

from tests.simulated_build.garages import BLOCK
from tests.simulated_build.readings import car_looks, check_looks, driver_looks, part_looks
from tests.simulated_build.world import CAR_SCALES, CLASS_FUEL, JOBS, PART_SCALES, Part, World

Record = dict[str, Any]
MINIMUM = 950.0
TANK_SIZE = 40.0
READY = ("zeroed", "level", "rolled", "pressures", "clear")
_FIELDS = {1: ("total",), 2: ("front", "rear"), 4: ("lf", "rf", "lr", "rr")}
_LAYOUTS = {1: "total", 2: "axles", 4: "corners"}


def records(world: World) -> dict[str, Any]:
    """All lists of the garage, in the trim of the event."""
    lines = [(f"p{n:02}", part) for n, part in enumerate(world.parts)]
    parts = [(name, part) for name, part in lines if part.same_as is None]
    weighings = [_weighing(world, name, part) for name, part in parts if part.guess is None]
    return {
        "trim": "event",
        "cars": [{"id": "car", "fuel_kind": "petrol", "tank_size": f"{TANK_SIZE} L"}],
        "drivers": [{"id": _driver(n)} for n in range(len(world.drivers))],
        "scales": [*_part_scales(), *_car_scales(world)],
        "scale_checks": [check for name in world.known for check in _checks(world, name)],
        "parts": [{"id": name, "name": part.name, **_claim(part)} for name, part in parts],
        "weighings": [*weighings, *_of_drivers(world)],
        "jobs": [{"id": _job(n), "state": "fitted" if n in world.lists[-1] else "undone"} for n in range(_jobs(world))],
        "job_parts": [_job_part(name, part) for name, part in lines],
        "weigh_ins": [_weigh_in(world, k) for k in range(world.count)],
        "ballast_places": [{"id": "floor", "block": kg(BLOCK), "most": 20, "fitted": 0}] if world.ballast else [],
        "class_sheets": [_sheet()],
    }


def weigh_in_id(k: int) -> str:
    return f"k{k:02}"


def kg(mass: float) -> str:
    return f"{mass:.3f} kg"


def _job(n: int) -> str:
    return f"j{n:02}"


def _jobs(world: World) -> int:
    """Sixty, and one more where a job was entered twice."""
    return max(JOBS, 1 + max(part.job for part in world.parts))


def _driver(n: int) -> str:
    return f"driver{n}" if n else "driver"


def _part_scales() -> list[Record]:
    return [{"id": name, "kind": scale.kind, "division": kg(scale.division)} for name, scale in PART_SCALES.items()]


def _car_scales(world: World) -> list[Record]:
    stated = world.setting.stated
    noted = {} if stated is None else {"repeatability": kg(stated)}
    return [
        {"id": name, "kind": scale.kind, "division": kg(scale.division), **noted} for name, scale in CAR_SCALES.items()
    ]


def _checks(world: World, name: str) -> list[Record]:
    pairs = zip(world.checks(name), check_looks(world, name), strict=True)
    return [
        {
            "id": f"c-{name}-{n}",
            "scale": name,
            "known_name": f"{name} {n}",
            "known": kg(known),
            "known_within": kg(within),
            "shown": kg(look),
        }
        for n, ((known, within), look) in enumerate(pairs)
    ]


def _claim(part: Part) -> Record:
    return {} if part.guess is None else {"claim": kg(part.guess), "claim_basis": "guessed"}


def _weighing(world: World, name: str, part: Part) -> Record:
    full, empty = part_looks(world, part)
    held = {"method": "difference", "shown_empty": kg(empty)} if empty else {"method": "direct"}
    return {"id": f"w-{name}", "of": name, "scale": part.scale, "shown": kg(full), **held}


def _of_drivers(world: World) -> list[Record]:
    return [
        {"id": f"w-{_driver(n)}", "of": _driver(n), "scale": "floor", "method": "direct", "shown": kg(look)}
        for n, look in enumerate(driver_looks(world))
    ]


def _job_part(name: str, part: Part) -> Record:
    of = name if part.same_as is None else f"p{part.same_as:02}"
    return {"id": f"q-{name}", "job": _job(part.job), "part": of, "way": part.way, "count": part.count}


def _weigh_in(world: World, k: int) -> Record:
    scale = CAR_SCALES[world.on[k]]
    looks = zip(_FIELDS[scale.looks], car_looks(world, k), strict=True)
    seated = {"driver_in": True, "driver": _driver(world.seated.get(k, 0))}
    driver: Record = seated if world.driver_in(k) else {"driver_in": False}
    ballast = {"ballast": kg(world.ballast[k])} if k in world.ballast else {}
    ready = [point for point in READY if point != "zeroed" or k not in world.zeros]
    return {
        "id": weigh_in_id(k),
        "layout": _LAYOUTS[scale.looks],
        "trim": "event",
        "scale": world.noted_scales[k],
        "official": world.noted_scales[k] == "platform",
        "at": f"2026-{k + 1:02}-01",
        "jobs": [_job(n) for n in sorted(world.lists[k])],
        "fuel": f"{world.noted[k]:.4f} L",
        "fuel_within": f"{world.setting.fuel_within:.4f} L",
        **{field: kg(look) for field, look in looks},
        **driver,
        **ballast,
        **({"ready": ready} if world.setting.asked else {}),
    }


def _sheet() -> Record:
    fuel = {"fuel": "stated", "fuel_stated": f"{CLASS_FUEL} L"}
    return {"id": "sheet", "minimum": kg(MINIMUM), "scale_rounding": "nearest", "driver": "in", **fuel}
