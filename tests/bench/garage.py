"""An invented garage of any size, always the same for the same size: as changes, as entries and as records."""

from __future__ import annotations

import json
import random
import uuid
from collections.abc import Iterator
from typing import Any

from tarebook.core.garage.garage import read_garage
from tarebook.core.ledger.net import job_nets
from tarebook.core.weighing.weighing import masses
from tarebook.garage.records import Records, plural
from tarebook.journal.kinds import KINDS

Change = dict[str, Any]
"""`{kind, record, set}`, as the phone's `save` and the server's `author.write` take it."""

ZONES = tuple(KINDS["part"].fields["zone"].of)
PARTS_OF_A_JOB = 20
SCALES = {"kitchen": ("1 g", "5 kg", "g"), "hanging": ("0.05 lb", "110 lb", "lb"), "bench": ("0.02 kg", "60 kg", "kg")}
KNOWN = {"kitchen": "1000 g", "hanging": "20 lb", "bench": "25 kg"}
CAR_SCALES = ("corner_pads", "axle_pads", "platform")
CORNERS = {"lf": "251 kg", "rf": "248.5 kg", "lr": "212 kg", "rr": "207.5 kg"}


def garage(parts: int, weighings: int) -> list[Change]:
    """A car with its class sheet, scales, stages, jobs and weigh-in; `parts` moved; `weighings` spread over them."""
    return list(_Maker(random.Random(parts)).garage(parts, weighings))


class _Maker:
    def __init__(self, chance: random.Random) -> None:
        self.chance = chance
        self.made = 0

    def name(self) -> str:
        """Names as a phone gives them: 36 characters, rising."""
        self.made += 1
        low = 0b10 << 62 | self.chance.getrandbits(62)
        return str(uuid.UUID(int=(1_780_000_000_000 + self.made) << 80 | 0x7 << 76 | low))

    def change(self, kind: str, fields: dict[str, Any]) -> Change:
        return {"kind": kind, "record": self.name(), "set": fields}

    def garage(self, parts: int, weighings: int) -> Iterator[Change]:
        car = self.change("car", {"name": "The bench car", "fuel_kind": "petrol", "tank_size": "45 L"})
        yield car
        yield self.change("class_sheet", {
            "car": car["record"], "name": "The bench class", "minimum": "860 kg", "driver": "out", "fuel": "empty",
        })  # fmt: skip
        scales = {kind: self.scale(kind) for kind in SCALES}
        for kind, scale in scales.items():
            yield scale
            yield self.change("scale_check", {"scale": scale["record"], "known": KNOWN[kind], "shown": KNOWN[kind]})
        made = [self.part(car, number) for number in range(parts)]
        yield from self.jobs(car, made)
        yield from self.weighings(made, {kind: scale["record"] for kind, scale in scales.items()}, weighings)

    def scale(self, kind: str) -> Change:
        division, capacity, unit = SCALES[kind]
        fields = {"name": f"The {kind} scale", "kind": kind, "division": division, "capacity": capacity, "unit": unit}
        return self.change("scale", fields)

    def part(self, car: Change, number: int) -> Change:
        zone = ZONES[number % len(ZONES)]
        where = {"zone": zone, "whereabouts": "shelf"}
        return self.change("part", {"car": car["record"], "name": f"Part {number}", **where})

    def jobs(self, car: Change, parts: list[Change]) -> Iterator[Change]:
        """Each job with its parts, every fourth of them put on; the weigh-in knows the first half of the jobs."""
        stages = [self.change("stage", {"car": car["record"], "name": f"Stage {n}", "rank": n}) for n in range(1, 7)]
        yield from stages
        jobs: list[Change] = []
        for at in range(0, len(parts), PARTS_OF_A_JOB):
            jobs.append(self.job(car, stages[len(jobs) % len(stages)], len(jobs)))
            yield jobs[-1]
            for number, part in enumerate(parts[at : at + PARTS_OF_A_JOB]):
                yield part
                moved = {"job": jobs[-1]["record"], "part": part["record"], "way": "off" if number % 4 else "on"}
                yield self.change("job_part", moved)
        known = [job["record"] for job in jobs[: len(jobs) // 2]]
        then = {"layout": "corners", **CORNERS, "fuel": "10 L", "driver_in": False, "trim": "event", "jobs": known}
        yield self.change("weigh_in", {"car": car["record"], **then, "at": "2026-05-02T10:00"})

    def job(self, car: Change, stage: Change, number: int) -> Change:
        effort = {"hours": f"{self.chance.uniform(0.2, 9):.1f}", "money": f"{self.chance.uniform(0, 300):.2f}"}
        state = "chosen" if number % 10 == 9 else "fitted"
        of = {"car": car["record"], "stage": stage["record"]}
        return self.change("job", {**of, "name": f"Job {number}", "state": state, "trim": "both", **effort})

    def weighings(self, parts: list[Change], scales: dict[str, str], many: int) -> Iterator[Change]:
        kilograms = [self.chance.lognormvariate(0, 1.2) for _part in parts]
        for number in range(many):
            at = number % len(parts)
            kind = "kitchen" if kilograms[at] < 5 else self.chance.choice(("hanging", "bench"))
            shown = shown_on(kind, kilograms[at] * self.chance.gauss(1, 0.002))
            when = f"2026-04-{self.chance.randint(1, 30):02}T14:{self.chance.randint(0, 59):02}"
            fields = {"of": parts[at]["record"], "method": "direct", "shown": shown, "scale": scales[kind]}
            yield self.change("weighing", {**fields, "at": when, "place": "garage"})


def shown_on(kind: str, kilograms: float) -> str:
    """What a scale of `SCALES` shows."""
    if kind == "kitchen":
        return f"{kilograms * 1000:.0f} g"
    if kind == "bench":
        return f"{round(kilograms * 50) / 50:.2f} kg"
    return f"{round(kilograms * 44.0925) / 20:.2f} lb"


def entry_texts(changes: list[Change]) -> list[str]:
    """Each change as one entry's text, as a phone writes it."""
    maker = _Maker(random.Random(len(changes)))
    wrote = {"device": maker.name(), "writer": maker.name()}
    rest = {"base": [], "photos": [], "made_at": "2026-05-02T10:00:00.000Z", "schema": 1}
    entries = ({"id": maker.name(), **wrote, "n": n, **change, **rest} for n, change in enumerate(changes, 1))
    return [json.dumps(entry, separators=(",", ":")) for entry in entries]


def records(changes: list[Change]) -> Records:
    """The changes as records, in the core's dialect."""
    lists: Records = {plural(kind): [] for kind in KINDS}
    for change in changes:
        lists[plural(change["kind"])].append({"id": change["record"], **change["set"]})
    return lists


def weighed_often(lists: Records, times: int) -> Records:
    """The same records with so many weigh-ins on three scales, each after some more of the jobs, and off by chance."""
    chance = random.Random(times)
    book = read_garage(lists)
    nets = job_nets(book, masses(book))
    jobs = [job["id"] for job in lists["jobs"]]
    scales = [{"id": kind, "kind": kind, "division": "0.2 kg", "repeatability": "0.5 kg"} for kind in CAR_SCALES]
    weigh_ins = []
    for at in range(times):
        then = jobs[: len(jobs) * at // times]
        load = 947.5 - sum(nets[job].total.mass.net.value for job in jobs[len(then) :]) + chance.gauss(0.0, 0.5)
        weigh_ins.append({
            "id": f"k{at:03}", "layout": "total", "total": f"{load:.1f} kg", "scale": CAR_SCALES[at % 3],
            "fuel": "10 L", "fuel_within": "0.5 L", "driver_in": False, "trim": "event", "jobs": then,
            "at": f"{2001 + at}-05-01",
        })  # fmt: skip
    return {**lists, "scales": [*lists["scales"], *scales], "weigh_ins": weigh_ins}
