"""The door to the estimator: what the car weighs now, from what was weighed and what was done to it.

`estimate` is asked by `core/standing` and by nobody else; it may be replaced by a better estimator without any other
room noticing. This one takes the last weigh-in and the jobs since. "Since" is the difference of two lists, the jobs in
the car now and the jobs stored with the weigh-in; no clock decides it. The net of the jobs since is one sum over its
lines, so that a part put on after the weigh-in and one taken off share what their weighings share.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from tarebook.core.condition import Condition, at_condition, driver_in, fuel_in
from tarebook.core.net import JobNet, jobs_in_car
from tarebook.core.records import Garage, Warned, WeighIn, warned
from tarebook.core.uncertain import Uncertain, add, resolution, weighted_sum
from tarebook.core.weigh_in import Loads
from tarebook.core.weighing import Masses


@dataclass(frozen=True, slots=True)
class Weighed:
    """One weigh-in with its loads. `jobs`: those then in the car; None when nobody confirmed any list."""

    record: WeighIn
    loads: Loads
    jobs: tuple[str, ...] | None


@dataclass(frozen=True, slots=True)
class Since:
    """What was done since the weigh-in the weight rests on: jobs `put_in` (fitted) and `taken_out` (undone), by id.

    `changes`: kg by job, as it changed the car; `net`: their sum. `unweighed`: parts among them that count zero;
    `unweighed_out`: those of which the car has fewer than at the weigh-in, `unweighed_in`: more.
    """

    weigh_in: str
    put_in: tuple[str, ...]
    taken_out: tuple[str, ...]
    changes: dict[str, Uncertain]
    net: Uncertain
    unweighed: tuple[str, ...]
    unweighed_out: tuple[str, ...]
    unweighed_in: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Estimate:
    """`weight`: the car now at the condition, kg."""

    weight: Uncertain
    since: Since


@dataclass(frozen=True, slots=True)
class Gap:
    """What two weigh-ins say beside the jobs between them: `difference` kg more in the car than written down."""

    first: str
    second: str
    difference: Uncertain

    @property
    def significant(self) -> bool:
        """Beyond its own expanded uncertainty (k = 2)."""
        return abs(self.difference.value) > 2.0 * self.difference.u


def in_order(garage: Garage) -> list[WeighIn]:
    """Weigh-ins as they were made: by their stated time (those without one last), then by id."""
    return sorted(garage.weigh_ins.values(), key=lambda record: (record.at is None, record.at or "", record.id))


def estimate(
    garage: Garage, known: Masses, nets: Mapping[str, JobNet], weighed: list[Weighed], condition: Condition
) -> Estimate | Warned:
    """The weight now from the last of the weigh-ins given, or why there is none."""
    usable = [each for each in weighed if each.loads.total is not None]
    if not usable:
        return warned("weigh_in_incomplete") if weighed else warned("no_weigh_in")
    last = usable[-1]
    if last.jobs is None:
        return warned("jobs_not_confirmed", weigh_in=last.record.id)
    whole = at_condition(garage, last.record, last.loads.total or Uncertain(0.0), condition, known)
    if isinstance(whole, dict):
        return whole
    since = since_weigh_in(last.record.id, last.jobs, [job.id for job in jobs_in_car(garage)], nets)
    return Estimate(add(whole, since.net), since)


def since_weigh_in(weigh_in: str, then: tuple[str, ...], now: list[str], nets: Mapping[str, JobNet]) -> Since:
    """The difference of two lists of jobs, and what it weighs."""
    put_in = tuple(job for job in now if job not in then)
    taken_out = tuple(job for job in then if job not in now)
    signs = {**dict.fromkeys(put_in, 1.0), **dict.fromkeys(taken_out, -1.0)}
    changes = {job: weighted_sum((nets[job].total.mass.net,), (sign,)) for job, sign in signs.items()}
    moved = _unweighed_pieces(signs, nets)
    return Since(
        weigh_in=weigh_in,
        put_in=put_in,
        taken_out=taken_out,
        changes=changes,
        net=net_between(now, then, nets),
        unweighed=tuple(moved),
        unweighed_out=tuple(part for part, pieces in moved.items() if pieces < 0),
        unweighed_in=tuple(part for part, pieces in moved.items() if pieces > 0),
    )


def _unweighed_pieces(signs: Mapping[str, float], nets: Mapping[str, JobNet]) -> dict[str, int]:
    """Parts without a mass → how many pieces more of it the car has, in order of id; put off and back on, none."""
    pieces: dict[str, int] = {}
    lines = [(line, sign) for job, sign in signs.items() for line in nets[job].lines if line.mass is None]
    for line, sign in lines:
        more = line.count if (line.way == "on") == (sign > 0) else -line.count
        pieces[line.part] = pieces.get(line.part, 0) + more
    return dict(sorted(pieces.items()))


def net_between(now: Sequence[str], then: Sequence[str], nets: Mapping[str, JobNet]) -> Uncertain:
    """Net of the jobs of one list less that of the other, kg, as one sum: what the two have in common cancels."""
    jobs = {**{job: 1.0 for job in now if job not in then}, **{job: -1.0 for job in then if job not in now}}
    lines = [(line.mass, sign) for job, sign in jobs.items() for line in nets[job].lines if line.mass]
    return weighted_sum([mass for mass, _ in lines], [sign for _, sign in lines])


def bare(garage: Garage, weighed: Weighed, known: Masses) -> Uncertain | Warned:
    """The car of a weigh-in without fuel, driver or ballast, kg."""
    record, whole = weighed.record, weighed.loads.total
    if whole is None:
        return warned("weigh_in_incomplete", weigh_in=record.id)
    fuel, driver = fuel_in(garage, record), driver_in(record, known)
    if fuel is None:
        return warned("fuel_unknown", weigh_in=record.id)
    if driver is None:
        return warned("driver_unknown", weigh_in=record.id)
    return weighted_sum((whole, fuel, driver, ballast_in(record)), (1.0, -1.0, -1.0, -1.0))


def ballast_in(record: WeighIn) -> Uncertain:
    """The ballast on board at a weigh-in, kg, known to its last digit."""
    if record.ballast is None:
        return Uncertain(0.0)
    return Uncertain(record.ballast.value, {f"ballast:{record.id}": resolution(record.ballast.last_digit)})


def gap_between(
    garage: Garage, first: Weighed, second: Weighed, known: Masses, nets: Mapping[str, JobNet]
) -> Gap | Warned:
    """What the later of two weigh-ins found beside the jobs between them; more in the car is positive."""
    before, after = bare(garage, first, known), bare(garage, second, known)
    if isinstance(before, dict):
        return before
    if isinstance(after, dict):
        return after
    for each in (first, second):
        if each.jobs is None:
            return warned("jobs_not_confirmed", weigh_in=each.record.id)
    written = net_between(second.jobs or (), first.jobs or (), nets)
    difference = weighted_sum((after, before, written), (1.0, -1.0, -1.0))
    return Gap(first.record.id, second.record.id, difference)
