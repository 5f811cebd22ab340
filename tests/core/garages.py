"""Invented garages of any shape for the property tests, in the dialect of `core/garage`."""

from random import Random
from typing import Any

from hypothesis import strategies as st

from tarebook.journal.kinds import ZONES

Garage = dict[str, Any]

SCALES = (("kitchen", "1 g", 5), ("bench", "2 g", 15), ("hanging", "20 g", 50), ("bathroom", "0.1 kg", 150))
KNOWN = (("small weight", 5), ("plate", 20), ("drum", 60))


RANDOMS = st.integers(0, 2**32 - 1).map(Random)


def garage(random: Random, parts: int = 8) -> Garage:
    """Scales checked or not, parts weighed by any method, claimed or neither, moved by jobs of every state."""
    names = [f"p{n}" for n in range(random.randrange(1, parts + 1))]
    scales = [_scale(random, n) for n in range(random.randrange(1, 5))]
    jobs = [_job(random, n) for n in range(random.randrange(1, 6))]
    made: Garage = {
        "scales": scales,
        "scale_checks": [_check(random, n, scales) for n in range(random.randrange(5))],
        "parts": [_part(random, name) for name in names],
        "weighings": [weighing(random, f"w{n}", random.choice(names), scales) for n in range(random.randrange(12))],
        "stages": [{"id": "s1", "name": "first", "rank": 1}, {"id": "s2", "name": "second"}],
        "jobs": jobs,
        "job_parts": [_job_part(random, n, jobs, names) for n in range(random.randrange(10))],
        "trim": random.choice(("road", "event")),
    }
    return {**made, **repeated(made["weighings"])}


def repeated(records: list[Garage]) -> Garage:
    """Some of them read again, all of it or a part, near or far; a few readings left out."""
    random = Random(str(records))  # of its own, so that the garage around it stays as it was
    looks = ("shown", "shown_empty", "shown_far", "lf", "rf", "lr", "rr", "front", "rear", "total")
    repeats: list[Garage] = []
    for of in random.choices(records, k=random.randrange(7)) if records else []:
        again = [(look, of[look]) for look in looks if of.get(look) and random.random() < 0.9]
        read = {look: _near(random, shown) for look, shown in again}
        repeats.append({"id": f"r-{of['id']}-{len(repeats)}", "of": of["id"], **read})
    among = [(each["id"], look) for each in (*records, *repeats) for look in looks if each.get(look)]
    out = random.sample(among, min(len(among), random.choice((0, 0, 1, 3))))
    left = [{"id": f"o-{of}-{n}", "of": of, "reading": look} for n, (of, look) in enumerate(out)]
    return {"repeats": repeats, "omissions": left}


def _near(random: Random, shown: str) -> str:
    number, unit = shown.split()
    moved = float(number) + random.choice((0, 1, -1, 2, 25)) * (1 if unit == "g" else 0.1)
    return f"{max(moved, 0.1):.4f} {unit}"


def shuffled(random: Random, given: Garage) -> Garage:
    """The same records, every list in another order."""
    lists = {name: random.sample(items, len(items)) for name, items in given.items() if isinstance(items, list)}
    return {**given, **lists}


JUNK: tuple[Any, ...] = (
    None, True, 0, -1, 2.0, 2.5, "", "1,5 kg", "12 psi", "-3 kg", "52", "9 t", "nobody", [], ["j0", "nobody"], {},
    {"value": 1.5, "unit": "kg"}, {"value": "3/8", "unit": "oz"}, {"value": None, "unit": "kg"},
)  # fmt: skip


def spoiled(random: Random, given: Garage) -> Garage:
    """The same garage with junk in some fields, fields nobody knows, records deleted, replaced, doubled or nameless."""
    return {
        name: [one for item in items for one in _spoil(random, item, items)] if isinstance(items, list) else items
        for name, items in given.items()
    }


def _spoil(random: Random, record: Garage, among: list[Garage]) -> list[Any]:
    field = random.choice([*record, "colour", "deleted", "replaces"])
    junk = random.choice((*JUNK, random.choice(among)["id"]))
    bad: list[Any] = [{**record, field: junk}, {**record, "deleted": True}, record, "no record"]
    return [random.choice(bad), record][: random.choice((1, 2))] if random.random() < 0.3 else [record]


def grams(random: Random, most: int) -> str:
    return f"{random.randrange(1, most * 1000)} g"


def _scale(random: Random, n: int) -> Garage:
    kind, division, capacity = random.choice(SCALES)
    repeats = {"repeatability": "0.05 kg"} if random.random() < 0.2 else {}
    noted = {"division": division} if random.random() < 0.8 else {}
    return {"id": f"s{n}", "kind": kind, "capacity": f"{capacity} kg", **noted, **repeats}


def _check(random: Random, n: int, scales: list[Garage]) -> Garage:
    name, known = random.choice(KNOWN)
    within = {"known_within": f"{random.randrange(1, 60)} g"} if random.random() < 0.8 else {}
    shown = f"{known * random.randrange(988, 1013)} g"
    return {
        "id": f"c{n}", "scale": random.choice(scales)["id"], "known_name": name, "known": f"{known} kg", "shown": shown,
        **within,
    }  # fmt: skip


def _part(random: Random, name: str) -> Garage:
    claim = {"claim": grams(random, 30), "claim_basis": random.choice(("guessed", "quoted", "worked_out"))}
    sold = {"whereabouts": "sold", "sold_for": f"{random.randrange(1000) / 100:.2f}"}
    return {
        "id": name, "zone": random.choice((None, *ZONES[:4])), "count": random.choice((None, 1, 2, 4)),
        "unsprung": random.random() < 0.3, "rotating": random.random() < 0.3,
        **(claim if random.random() < 0.5 else {}), **(sold if random.random() < 0.2 else {}),
    }  # fmt: skip


def weighing(random: Random, name: str, of: str, scales: list[Garage]) -> Garage:
    method = random.choice(("direct", "direct", "direct", "difference", "container", "batch", "ends"))
    shown = random.randrange(2000, 20_000)
    own: dict[str, Garage] = {
        "difference": {"shown_empty": f"{shown - random.randrange(1, 2000)} g"},
        "container": {"shown_empty": f"{random.randrange(1, 2000)} g"},
        "batch": {"pieces": random.randrange(1, 9)},
        "ends": {"shown_far": f"{random.randrange(1, 9000)} g"},
    }
    scale = random.choice((None, *[scale["id"] for scale in scales]))
    return {
        "id": name, "of": of, "method": method, "shown": f"{shown} g", "scale": scale,
        "with_bolts": random.choice((None, None, True)), **own.get(method, {}),
    }  # fmt: skip


def _job(random: Random, n: int) -> Garage:
    return {
        "id": f"j{n}", "name": f"job {n}", "state": random.choice(("fitted", "fitted", "chosen", "idea", "undone")),
        "stage": random.choice((None, "s1", "s2")), "trim": random.choice((None, "both", "event")),
        "hours": f"{random.randrange(100) / 4}", "money": f"{random.randrange(100_000) / 100:.2f}",
        "fitted_on": random.choice((None, "2026-03-01", "2026-04-09", "2026-04-09T10:00")),
    }  # fmt: skip


def _job_part(random: Random, n: int, jobs: list[Garage], names: list[str]) -> Garage:
    return {
        "id": f"jp{n}", "job": random.choice(jobs)["id"], "part": random.choice(names),
        "way": random.choice(("off", "on")), "count": random.choice((None, None, 1, 2)),
    }  # fmt: skip
