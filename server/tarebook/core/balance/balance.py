"""Where the weight is: centre of gravity, axle and side shares, height and yaw inertia before and after any jobs.

The one thing known is the car of a weigh-in, as it stood on the scales: where its weight stands by that weigh-in, how
much it is by all of them (`core/balance/weighed_by_all`). Every other state of it differs by jobs, and a job is loads
at places (`core/balance/place`, `core/balance/moved`) put on a body or taken off it (`core/balance/body`):

    start     before any job: the jobs then in the car are taken back
    weighed   as it stood on the scales that day
    now       with the jobs in the car today
    after     and with the jobs asked for, by default those chosen

Loads on axles and sides follow from the statics of one rigid car: m (1 − x/L) on the front axle, m (½ − y/t) on the
left side, t the mean track. A car on four wheels has a fourth freedom, the cross weight, which spring seats and roll
stiffness set and no part's place tells: corner loads are given as weighed, and not invented for any other state.
The height above the ground is measured by lifting an axle or assumed from the track (`core/balance/height`).
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from tarebook.core.balance.balance_notes import CORNERS, about_car, about_jobs, about_levels, reasons_of
from tarebook.core.balance.body import Body, Load, changed
from tarebook.core.balance.height import Height, height_of
from tarebook.core.balance.moved import Change, Moved, Sizes, change_of, moved_between
from tarebook.core.balance.place import Place, place_of
from tarebook.core.balance.weighed_by_all import by_all
from tarebook.core.garage.records import Car, Garage, Warned, WeighIn, warned
from tarebook.core.ledger.net import JobNet, in_trim, job_nets, jobs_in_car, state_of
from tarebook.core.numbers.uncertain import Uncertain, divide, multiply, subtract, total, weighted_sum
from tarebook.core.standing.standing import Standing
from tarebook.core.weighing.weighing import Masses, masses
from tarebook.core.whole_car.weigh_in import Loads, length_of, loads_of
from tarebook.core.whole_car.weighed import in_order


@dataclass(frozen=True, slots=True)
class Question:
    """What to ask of a garage. `jobs`: ids of those beyond the present, None for all chosen ones of the trim.

    `weigh_in`: id of the one to rest on alone, by default the last that tells most, as heavy as all of them say.
    `height`: of the centre of gravity as weighed, m. `sizes`: part id → (length along x, width along y) in m, for its
    own inertia; else the part's record.
    """

    jobs: tuple[str, ...] | None = None
    weigh_in: str | None = None
    height: Uncertain | None = None
    sizes: Sizes = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class State:
    """One state of the car: mass and centre of gravity, and what stands where.

    `loads` in kg by front, rear, left, right and the corners, as far as they can be known; `shares`: front, rear, left
    and right as fractions of the mass. `reasons`: why "x", "y", "z" or "corners" is missing.
    """

    body: Body
    loads: dict[str, Uncertain]
    shares: dict[str, Uncertain]
    reasons: dict[str, Warned]


@dataclass(frozen=True, slots=True)
class Balance:
    """`states` by name; `changes`: "done" leads from start to now, "planned" from now to after.

    `jobs`: those asked for and not yet in the car. `places`: of every part moved by a job now in the car or asked for.
    `reasons`: by name of a state, why it is not there.
    """

    car: str | None
    trim: str
    weigh_in: str | None
    jobs: tuple[str, ...]
    states: dict[str, State]
    changes: dict[str, Change]
    places: tuple[Place, ...]
    reasons: dict[str, Warned]
    warnings: tuple[Warned, ...]


@dataclass(frozen=True, slots=True)
class _Base:
    """The car of the weigh-in everything rests on; `height`: what its height rests on, when nobody gave it."""

    record: WeighIn
    loads: Loads
    body: Body
    height: Warned | None


def balance(
    garage: Garage, question: Question | None = None, known: Masses | None = None, stand: Standing | None = None
) -> Balance:
    """The balance of the garage's car. Never raises over data: what cannot be told has a reason.

    `known`, `stand`: the garage's masses and its standing, when they are at hand already.
    """
    question, known = question or Question(), known or masses(garage)
    nets = job_nets(garage, known)
    base = _base(garage, question, nets, known, stand)
    now = tuple(job.id for job in jobs_in_car(garage))
    asked = _asked(garage, question, now)
    after = (*now, *asked)
    states, reasons = _states(garage, nets, base, {"start": (), "now": now, "after": after}, question.sizes)
    steps = {"done": ("start", (), now), "planned": ("now", now, after)}
    changes = {
        name: change_of(
            garage, states[of].body if of in states else None, moved_between(garage, nets, old, new, question.sizes)
        )
        for name, (of, old, new) in steps.items()
    }
    places = _places(garage, nets, after)
    about_base = about_car(garage, base.record, base.height) if base else []
    found = [*about_jobs(nets, after, places), *about_levels(changes.values()), *about_base]
    return Balance(
        car=garage.car.id if garage.car else None,
        trim=garage.trim,
        weigh_in=base.record.id if base else None,
        jobs=asked,
        states=states,
        changes=changes,
        places=places,
        reasons=reasons,
        warnings=(*(base.loads.warnings if base else ()), *_unknown_jobs(garage, question), *found),
    )


def _asked(garage: Garage, question: Question, now: Sequence[str]) -> tuple[str, ...]:
    if question.jobs is not None:
        return tuple(job for job in dict.fromkeys(question.jobs) if job in garage.jobs and job not in now)
    chosen = [job.id for job in garage.jobs.values() if state_of(job) == "chosen" and in_trim(job, garage.trim)]
    return tuple(chosen)


def _unknown_jobs(garage: Garage, question: Question) -> list[Warned]:
    unknown = [job for job in question.jobs or () if job not in garage.jobs]
    return [warned("balance_job_unknown", jobs=unknown)] if unknown else []


def _base(
    garage: Garage, question: Question, nets: Mapping[str, JobNet], known: Masses, stand: Standing | None
) -> _Base | None:
    """The weigh-in asked for; else the last with a confirmed list of jobs and an axle share; else the last of any."""
    records = in_order(garage) if question.weigh_in is None else [garage.weigh_ins.get(question.weigh_in)]
    weighed = [(record, loads_of(garage, record, known)) for record in records if record is not None]
    whole = [(record, loads) for record, loads in weighed if loads.total]
    best = [(record, loads) for record, loads in whole if record.jobs is not None and "front" in loads.loads]
    if not whole:
        return None
    record, loads = (best or whole)[-1]
    if question.weigh_in is None and len(weighed) > 1:
        loads = by_all(garage, record, loads, known, stand)
    given = Height(question.height, None)
    height = given if given.value else height_of(garage, record, nets, known, question.sizes)
    body = Body(loads.total or Uncertain(0.0), loads.x_cg, loads.y_cg, height.value)
    return _Base(record, loads, body, height.note)


def _states(
    garage: Garage, nets: Mapping[str, JobNet], base: _Base | None, lists: Mapping[str, tuple[str, ...]], sizes: Sizes
) -> tuple[dict[str, State], dict[str, Warned]]:
    """Every state that can be told, and why the others cannot."""
    if base is None:
        return {}, {name: warned("no_weigh_in") for name in ("weighed", *lists)}
    weighed = {"weighed": _state(garage.car, base, [])}
    then = base.record.jobs
    if then is None:
        return weighed, {name: warned("jobs_not_confirmed", weigh_in=base.record.id) for name in lists}
    found = {
        name: _state(garage.car, base, moved_between(garage, nets, then, jobs, sizes)) for name, jobs in lists.items()
    }
    lost = {name: warned("nothing_left") for name, state in found.items() if state.body.mass.value <= 0.0}
    return {**weighed, **{name: state for name, state in found.items() if name not in lost}}, lost


def _state(car: Car | None, base: _Base, moves: Sequence[Moved]) -> State:
    body = changed(base.body, [each.load for each in moves])
    loads = _loads(car, base, moves, body)
    sides = {name: divide(load, body.mass) for name, load in loads.items() if body.mass.value and name not in CORNERS}
    return State(body, loads, sides, reasons_of(car, base.record, base.loads, body, loads))


def _loads(car: Car | None, base: _Base, moves: Sequence[Moved], body: Body) -> dict[str, Uncertain]:
    """Front, rear, left, right by the lever's rule on top of what was weighed; the corners when nothing moved."""
    found: dict[str, Uncertain] = {}
    for one, other in (("front", "rear"), ("left", "right")):
        load = side_of(car, one, base.loads.loads.get(one), [each.load for each in moves])
        if load is not None:
            found |= {one: load, other: subtract(body.mass, load)}
    corners = {name: base.loads.loads[name] for name in CORNERS if name in base.loads.loads}
    return found if moves else {**found, **corners}


def side_of(car: Car | None, name: str, weighed: Uncertain | None, loads: Sequence[Load]) -> Uncertain | None:
    """What the front axle or the left side carries, kg, with these loads on top of what it weighed."""
    levers = [(load.mass, lever_of(car, name, load)) for load in loads]
    known = [multiply(mass, lever) for mass, lever in levers if lever is not None]
    return None if weighed is None or len(known) < len(levers) else total([weighed, *known])


def lever_of(car: Car | None, name: str, load: Load) -> Uncertain | None:
    """What share of the load the front axle or the left side carries: 1 − x/L, ½ − y/t, t the mean track."""
    is_front = name == "front"
    whole, arm, start = (length_of(car, "wheelbase"), load.x, 1.0) if is_front else (track_of(car), load.y, 0.5)
    return None if whole is None or arm is None else subtract(Uncertain(start), divide(arm, whole))


def track_of(car: Car | None) -> Uncertain | None:
    """The mean track, m, with the doubt of its last digits."""
    items = [each for name in ("track_front", "track_rear") if (each := length_of(car, name))]
    return weighted_sum(items, [1.0 / len(items)] * len(items)) if items else None


def _places(garage: Garage, nets: Mapping[str, JobNet], jobs: Sequence[str]) -> tuple[Place, ...]:
    counts = {line.part: line.count for job in jobs for line in nets[job].lines}
    return tuple(place_of(garage.car, garage.parts[part], counts[part]) for part in sorted(counts))
