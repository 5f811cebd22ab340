"""Invented weigh-ins, class sheets and drivers around the invented garages, for the tests of the whole car."""

from random import Random
from typing import Any

from tests.core import garages

Garage = dict[str, Any]

PADS = ("corner_pads", "axle_pads", "platform", "bathroom")
LAYOUTS = {"corners": ("lf", "rf", "lr", "rr"), "axles": ("front", "rear"), "total": ("total",)}


def garage(random: Random) -> Garage:
    """A garage whose car was weighed up to four times, in any layout, with holes in what was noted."""
    bare = garages.garage(random)
    scales = [_scale(random, n) for n in range(random.randrange(1, 3))]
    drivers = [_driver(random, n) for n in range(random.randrange(3))]
    jobs = [job["id"] for job in bare["jobs"]]
    weigh_ins = [_weigh_in(random, n, scales, drivers, jobs) for n in range(random.randrange(5))]
    again = garages.repeated(weigh_ins)
    return {
        **bare,
        **{name: [*bare[name], *again[name]] for name in again},
        "cars": [_car(random)],
        "scales": [*bare["scales"], *scales],
        "drivers": drivers,
        "weigh_ins": weigh_ins,
        "class_sheets": [_sheet(random)] if random.random() < 0.9 else [],
    }


def some(random: Random, chance: float, **fields: Any) -> Garage:
    """Each field with this chance."""
    return {name: value for name, value in fields.items() if random.random() < chance}


def _car(random: Random) -> Garage:
    kind = random.choice(("petrol", "e85", "diesel"))
    tracks = {"track_front": f"{random.randrange(1300, 1600)} mm", "track_rear": f"{random.randrange(50, 63)} in"}
    sizes = some(random, 0.8, tank_size=f"{random.randrange(30, 70)} L", fuel_kind=kind, book_weight="1010 kg")
    return {"id": "car", "wheelbase": f"{random.randrange(2200, 2800)} mm", **tracks, **sizes}


def _scale(random: Random, n: int) -> Garage:
    noted = some(random, 0.7, division=random.choice(("0.1 kg", "0.5 kg", "1 lb")), capacity="700 kg")
    rare = some(random, 0.3, repeatability="0.25 kg", accuracy_class=random.choice(("III", "IIII")))
    return {"id": f"big{n}", "kind": random.choice(PADS), **noted, **rare}


def _driver(random: Random, n: int) -> Garage:
    claim = some(random, 0.7, claim=f"{random.randrange(550, 1100) / 10} kg", claim_basis="worked_out")
    return {"id": f"d{n}", "name": f"driver {n}", **claim, **some(random, 0.1, deleted=True)}


def _weigh_in(random: Random, n: int, scales: list[Garage], drivers: list[Garage], jobs: list[str]) -> Garage:
    layout = random.choice(tuple(LAYOUTS))
    shown = {name: f"{random.randrange(9000, 11000) / 10 / len(LAYOUTS[layout])} kg" for name in LAYOUTS[layout]}
    fuel = some(random, 0.8, fuel=f"{random.randrange(60)} L", fuel_within="1.5 L")
    driver = {"driver_in": True, **({"driver": random.choice(drivers)["id"]} if drivers else {})}
    return {
        "id": f"k{n}",
        "layout": layout,
        "trim": random.choice(("road", "event")),
        **some(random, 0.97, **shown),
        **some(random, 0.9, scale=random.choice(scales)["id"], at=f"2026-0{random.randrange(1, 6)}-1{n}"),
        **fuel,
        **(driver if random.random() < 0.4 else {}),
        **some(random, 0.9, jobs=random.sample(jobs, random.randrange(len(jobs) + 1))),
        **some(random, 0.3, official=True, ballast="7.5 kg"),
    }


def lifted(random: Random, given: Garage) -> Garage:
    """The same garage with the radii of its wheels, and lifts of its weigh-ins, most of which could be."""
    radii = some(random, 0.9, tyre_radius_front="285 mm", tyre_radius_rear="11 1/4 in")
    lifts = [_lift(random, n, given) for n in range(random.randrange(4))] if given["weigh_ins"] else []
    return {**given, "cars": [{**given["cars"][0], **radii}], "lifts": lifts}


def _lift(random: Random, n: int, given: Garage) -> Garage:
    weigh_in = random.choice(given["weigh_ins"])
    moved = random.uniform(-5, 90)
    looks = [weigh_in[name] for name in ("lf", "rf", "front") if name in weigh_in]
    level = sum(float(look.removesuffix(" kg")) for look in looks)
    scale = random.choice(given["scales"])["id"]
    return {
        "id": f"l{n}",
        "weigh_in": weigh_in["id"],
        "raised": random.choice(("rear", "rear", "front")),
        "tilted": f"{level + moved:.1f} kg",
        "height": f"{random.randrange(20, 900)} mm",
        **some(random, 0.5, height_within="2 mm", at=f"2026-0{random.randrange(1, 6)}-1{n}"),
        **some(random, 0.2, scale=scale),
    }


def _sheet(random: Random) -> Garage:
    rules = some(random, 0.9, driver=random.choice(("in", "out")))
    fuel = some(random, 0.9, fuel=random.choice(("as_it_is", "empty", "full", "stated")), fuel_stated="10 L")
    scale = some(random, 0.7, scale_division="1 kg", scale_rounding=random.choice(("nearest", "unknown")))
    more = some(random, 0.3, adders="12 kg", risk=random.choice(("0.01", "0.1", "0.5")))
    return {"id": "sheet", "minimum": f"{random.randrange(930, 1070)} kg", **rules, **fuel, **scale, **more}
