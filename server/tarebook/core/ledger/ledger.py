"""The ledger: where the weight went, by job, stage, zone, state and trim, and how well that is known.

Nothing here is rounded and every sum is made of lines, not of other sums, so a total is the same whichever way it is
cut. A part without a mass counts zero and is named. `shares` says how much of what was moved in the car now is weighed
and how much is claimed; money and hours are exact.
"""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import fsum
from typing import TypeVar

from tarebook.core.garage.records import Garage, Job, Warned, warned
from tarebook.core.ledger.net import (
    STATES,
    TRIMS,
    Effort,
    JobNet,
    Line,
    MassTotal,
    Total,
    effort_of,
    in_trim,
    job_nets,
    jobs_in_car,
    mass_total,
)
from tarebook.core.ledger.running import Running
from tarebook.core.weighing.scale import UNNAMED
from tarebook.core.weighing.weighing import BASES, Masses, masses

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class StageTotal:
    """One stage (None: jobs without one) and what its jobs of each state come to in the trim asked for."""

    stage: str | None
    states: dict[str, Total]


@dataclass(frozen=True, slots=True)
class ZoneTotal:
    """One zone (None: parts without one) and what moved there, of the jobs in the car now."""

    zone: str | None
    mass: MassTotal


@dataclass(frozen=True, slots=True)
class Step:
    """The net of the car after this job was fitted, kg, with its standard uncertainty."""

    job: str
    fitted_on: str | None
    value: float
    u: float


@dataclass(frozen=True, slots=True)
class Brought:
    """What sold parts brought, exact, and the parts."""

    money: Fraction
    parts: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Ledger:
    """`now`: all jobs in the car, for `trim`; `in_car` names them in order of fitting, and `cumulative` follows it.

    `by_state` and `by_stage` count jobs of the trim; `by_trim` splits all fitted jobs into what stays for the road
    ("both") and what is put in for the event. `by_zone`, `unsprung`, `rotating`, `shares` (basis → share of the
    kilograms moved, 0 to 1) and `unweighed` (part ids) are of the jobs in the car now. `spent`: fitted and undone jobs
    of either trim.
    """

    trim: str
    now: Total
    jobs: dict[str, JobNet]
    in_car: tuple[str, ...]
    by_stage: tuple[StageTotal, ...]
    by_state: dict[str, Total]
    by_trim: dict[str, Total]
    by_zone: tuple[ZoneTotal, ...]
    unsprung: MassTotal
    rotating: MassTotal
    cumulative: tuple[Step, ...]
    shares: dict[str, float]
    unweighed: tuple[str, ...]
    spent: Effort
    brought: Brought
    warnings: tuple[Warned, ...]


def ledger(garage: Garage, known: Masses | None = None) -> Ledger:
    """The ledger of the garage's car in the garage's trim. `known`: its masses, when they are at hand already."""
    known = known or masses(garage)
    nets = job_nets(garage, known)
    inside = jobs_in_car(garage)
    lines = [line for job in inside for line in nets[job.id].lines]
    of_trim = [job for job in garage.jobs.values() if in_trim(job, garage.trim)]
    fitted = jobs_in_car(garage, "event")
    states = _by_state(nets, of_trim)
    unweighed = tuple(sorted({line.part for line in lines if line.mass is None}))
    about_parts = [warned("unweighed", parts=list(unweighed))] if unweighed else []
    return Ledger(
        trim=garage.trim,
        jobs=nets,
        in_car=tuple(job.id for job in inside),
        now=states["fitted"],
        by_stage=_by_stage(garage, nets, of_trim),
        by_state=states,
        by_trim={trim: _total(nets, [job for job in fitted if nets[job.id].trim == trim]) for trim in TRIMS},
        by_zone=_by_zone(garage, lines),
        unsprung=mass_total(line for line in lines if garage.parts[line.part].unsprung),
        rotating=mass_total(line for line in lines if garage.parts[line.part].rotating),
        cumulative=_cumulative(nets, inside),
        shares=_shares(lines),
        unweighed=unweighed,
        spent=effort_of([job for job in garage.jobs.values() if nets[job.id].state in ("fitted", "undone")]),
        brought=_brought(garage),
        warnings=(*garage.warnings, *_warnings(nets, known), *_counted_twice(garage, lines), *about_parts),
    )


def _total(nets: dict[str, JobNet], jobs: Sequence[Job]) -> Total:
    return Total(mass_total(line for job in jobs for line in nets[job.id].lines), effort_of(jobs))


def _by_state(nets: dict[str, JobNet], jobs: Sequence[Job]) -> dict[str, Total]:
    return {state: _total(nets, [job for job in jobs if nets[job.id].state == state]) for state in STATES}


def _by_stage(garage: Garage, nets: dict[str, JobNet], jobs: Sequence[Job]) -> tuple[StageTotal, ...]:
    """Stages by rank (unranked last), then id; jobs without a stage at the end."""
    groups = _grouped(jobs, lambda job: job.stage)
    stages = sorted(garage.stages.values(), key=lambda stage: (stage.rank is None, stage.rank or 0, stage.id))
    keys: list[str | None] = [stage.id for stage in stages]
    return tuple(StageTotal(key, _by_state(nets, groups.get(key, []))) for key in [*keys, None])


def _by_zone(garage: Garage, lines: Sequence[Line]) -> tuple[ZoneTotal, ...]:
    groups = _grouped(lines, lambda line: garage.parts[line.part].zone)
    keys = sorted(groups, key=lambda zone: (zone is None, str(zone)))
    return tuple(ZoneTotal(zone, mass_total(groups[zone])) for zone in keys)


def _grouped(items: Iterable[T], key: Callable[[T], str | None]) -> dict[str | None, list[T]]:
    groups: dict[str | None, list[T]] = {}
    for item in items:
        groups.setdefault(key(item), []).append(item)
    return groups


def _cumulative(nets: dict[str, JobNet], jobs: Sequence[Job]) -> tuple[Step, ...]:
    running = Running()
    steps = []
    for job in jobs:
        for line in nets[job.id].lines:
            if line.mass is not None:
                running.add(line.mass)
        steps.append(Step(job.id, job.fitted_on, running.value, running.u))
    return tuple(steps)


def _shares(lines: Iterable[Line]) -> dict[str, float]:
    """Basis → share of the kilograms moved, on and off alike; all zero when nothing was."""
    moved: dict[str, list[float]] = {basis: [] for basis in BASES}
    for line in lines:
        if line.mass is not None and line.basis is not None:
            moved[line.basis].append(abs(line.mass.value))
    whole = fsum(kilograms for group in moved.values() for kilograms in group)
    return {basis: fsum(group) / whole if whole else 0.0 for basis, group in moved.items()}


def _brought(garage: Garage) -> Brought:
    sold = [part for part in garage.parts.values() if part.whereabouts == "sold" and part.sold_for is not None]
    of_car = [part for part in sold if part.car is None or garage.car is None or part.car == garage.car.id]
    money = sum((part.sold_for or Fraction(0) for part in of_car), Fraction(0))
    return Brought(money, tuple(part.id for part in of_car))


def _warnings(nets: dict[str, JobNet], known: Masses) -> list[Warned]:
    """What is to be said of the masses used in any job, then of the scales they were weighed on."""
    parts = sorted({line.part for net in nets.values() for line in net.lines})
    found = [warning for part in parts for warning in known.of[part].warnings]
    for scale in sorted({reading.scale for part in parts for reading in known.of[part].readings}):
        found.extend(known.scales[scale].warnings)
        if scale == UNNAMED:
            found.append(warned("scale_unnamed"))
        elif known.scales[scale].assumed:
            found.append(warned("gain_assumed", scale=scale))
    return found


def _counted_twice(garage: Garage, lines: Iterable[Line]) -> list[Warned]:
    """Parts of which more pieces came off, or went on, than there are."""
    pieces: dict[str, int] = {}
    for line in lines:
        pieces[line.part] = pieces.get(line.part, 0) + (line.count if line.way == "on" else -line.count)
    beyond = sorted(part for part, count in pieces.items() if abs(count) > (garage.parts[part].count or 1))
    return [warned("counted_twice", part=part) for part in beyond]
