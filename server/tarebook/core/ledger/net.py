"""The net of a job: what goes on less what comes off, piece by piece.

A line is one part going on or off in one job: its mass of one piece × pieces, signed (on +, off −). A total is a sum of
lines with every error source kept, so that what two lines share adds or cancels as it should: a part taken off and put
back nets to nothing, with no doubt. Every total names the lines and jobs it was made from.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from tarebook.core.garage.records import Garage, Job, JobPart
from tarebook.core.numbers.uncertain import Uncertain, scale, subtract, total, weighted_sum
from tarebook.core.weighing.weighing import Masses

STATES = ("fitted", "chosen", "idea", "undone")
TRIMS = ("both", "event")


@dataclass(frozen=True, slots=True)
class Line:
    """One `job_part`. `mass` (kg) is signed and of all `count` pieces; None when the part has no mass (counts zero)."""

    id: str
    job: str
    part: str
    way: str
    count: int
    mass: Uncertain | None
    basis: str | None
    weighings: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class MassTotal:
    """`net` = on − off, kg; `off` and `on` are both counted positive. `lines`: ids of the lines with a mass."""

    net: Uncertain
    off: Uncertain
    on: Uncertain
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Effort:
    """Hours and money of some jobs, exact; a job that says nothing counts zero."""

    hours: Fraction
    money: Fraction
    jobs: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Total:
    """What some jobs come to."""

    mass: MassTotal
    effort: Effort


@dataclass(frozen=True, slots=True)
class JobNet:
    """One job. `in_car`: fitted, and part of the trim asked for. `unweighed`: parts that have no mass, count zero."""

    job: str
    state: str
    trim: str
    stage: str | None
    in_car: bool
    total: Total
    lines: tuple[Line, ...]
    unweighed: tuple[str, ...]


def state_of(job: Job) -> str:
    return job.state or "idea"


def in_trim(job: Job, trim: str) -> bool:
    """Whether the job is part of the car in this trim; the event trim has everything the road trim has."""
    return job.trim != "event" or trim == "event"


def jobs_in_car(garage: Garage, trim: str | None = None) -> list[Job]:
    """The jobs in the car now, for the garage's trim or the one given, in order of fitting (undated ones last)."""
    wanted = trim or garage.trim
    fitted = [job for job in garage.jobs.values() if state_of(job) == "fitted" and in_trim(job, wanted)]
    return sorted(fitted, key=lambda job: (job.fitted_on is None, str(job.fitted_on), job.id))


def job_nets(garage: Garage, known: Masses) -> dict[str, JobNet]:
    """Every job of the car, whatever its state, by id."""
    return {job.id: _job_net(garage, job, known) for job in garage.jobs.values()}


def _job_net(garage: Garage, job: Job, known: Masses) -> JobNet:
    lines = tuple(_line(garage, job_part, known) for job_part in garage.parts_of.get(job.id, []))
    return JobNet(
        job=job.id,
        state=state_of(job),
        trim=job.trim or "both",
        stage=job.stage,
        in_car=state_of(job) == "fitted" and in_trim(job, garage.trim),
        total=Total(mass_total(lines), effort_of([job])),
        lines=lines,
        unweighed=tuple(sorted({line.part for line in lines if line.mass is None})),
    )


def _line(garage: Garage, job_part: JobPart, known: Masses) -> Line:
    mass = known.of[job_part.part]
    count = job_part.count or garage.parts[job_part.part].count or 1
    signed = float(count if job_part.way == "on" else -count)
    return Line(
        id=job_part.id,
        job=job_part.job,
        part=job_part.part,
        way=job_part.way,
        count=count,
        mass=scale(mass.mass, signed) if mass.mass is not None else None,
        basis=mass.basis,
        weighings=mass.weighings,
    )


def mass_total(lines: Iterable[Line]) -> MassTotal:
    """The sum of the lines that have a mass."""
    weighed = [(line, line.mass) for line in lines if line.mass is not None]
    taken = [mass for line, mass in weighed if line.way == "off"]
    off = weighted_sum(taken, [-1.0] * len(taken))
    on = total([mass for line, mass in weighed if line.way == "on"])
    return MassTotal(subtract(on, off), off, on, tuple(line.id for line, _ in weighed))


def effort_of(jobs: Sequence[Job]) -> Effort:
    hours = sum((job.hours or Fraction(0) for job in jobs), Fraction(0))
    money = sum((job.money or Fraction(0) for job in jobs), Fraction(0))
    return Effort(hours, money, tuple(job.id for job in jobs))
