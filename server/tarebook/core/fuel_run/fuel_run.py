"""Fuel over a run: what the car weighs and how it balances at the start and after every lap.

Where a class weighs a car as it leaves the course, the fuel burnt is weight lost, and the last lap decides. Fuel is put
on top of the car with an empty tank (`core/fuel_run/fuel_given`). The density is one error source for all laps and for
every weigh-in: with as much fuel as the car was weighed with it cancels. What a lap takes is one source too, for a
heavy foot is heavy on every lap, so that lap k is unsure by k of it. Near an empty tank the doubt of the litres is kept
as it is, though no tank holds less than nothing: on the cautious side for a minimum.

The start that keeps the weight in hand at the flag is found by stepping: the fuel still lacking there is added until
nothing is lacking. The doubt hardly depends on it, so every step brings it some ten times nearer.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from tarebook.core.balance.laden import Trimmed, with_fuel
from tarebook.core.fuel_run.fuel_given import RunGiven, RunQuestion, run_given
from tarebook.core.fuel_run.fuel_notes import about_run, reasons_of
from tarebook.core.garage.records import Garage, Warned
from tarebook.core.ledger.since import Since
from tarebook.core.numbers.uncertain import Uncertain, add, rectangular, scale, subtract
from tarebook.core.standing.official import chance_under, in_hand
from tarebook.core.weighing.weighing import Masses, masses
from tarebook.core.whole_car.condition import Condition, chosen_sheet, condition_of
from tarebook.core.whole_car.fuel import density_of, mass_of

_PASSES = 20


@dataclass(frozen=True, slots=True)
class Judged:
    """Against the minimum: `margin` in kg, the chance of being shown under it, and what to keep above it, kg."""

    margin: Uncertain
    chance_under: float
    in_hand: float


@dataclass(frozen=True, slots=True)
class Moment:
    """The car after `lap` laps; None where it just stands there with a full or an empty tank.

    `fuel`: m³ still in the tank, `fuel_mass`: kg; `burnt`: kg since the start. `weight`: kg with this fuel and the
    driver as the class weighs. `judged`: None where the class does not count this fuel, or has no minimum.
    `balance`: as it runs.
    """

    lap: int | None
    fuel: Uncertain
    fuel_mass: Uncertain
    burnt: Uncertain | None
    weight: Uncertain | None
    judged: Judged | None
    balance: Trimmed


@dataclass(frozen=True, slots=True)
class Least:
    """`fuel`: m³ to start with. `decided_by`: "minimum", or "distance" when reaching the flag takes more than that.

    `lacking`: kg that a full tank leaves too little in hand at the flag; None when it is enough or does not get there.
    """

    fuel: float
    decided_by: str
    lacking: float | None


@dataclass(frozen=True, slots=True)
class FuelRun:
    """`laps`: from the start to the flag, or to the lap in which the tank `runs_dry`. `full`, `empty`: the tank so.

    `worst`: the lap after which it is likeliest shown under the minimum. `per_lap`: m³. `since`: the weigh-in the
    weight rests on, and what was done since. `reasons`: why something is missing, by name: start, per_lap, weight,
    margin, least, full, x, y, z, front, left.
    """

    car: str | None
    trim: str
    condition: Condition
    minimum: float | None
    risk: float
    per_lap: Uncertain | None
    laps: tuple[Moment, ...]
    full: Moment | None
    empty: Moment
    worst: int | None
    runs_dry: int | None
    since: Since | None
    least: Least | None
    reasons: dict[str, Warned]
    warnings: tuple[Warned, ...]


def fuel_run(garage: Garage, question: RunQuestion | None = None, known: Masses | None = None) -> FuelRun:
    """The run of the garage's car in the garage's trim. Never raises over data: what cannot be told has a reason."""
    question, known = question or RunQuestion(), known or masses(garage)
    sheet = chosen_sheet(garage, question.class_sheet)
    given = run_given(garage, question, sheet, condition_of(garage, sheet, known), known)
    litres, laps, least = given.litres, _laps(given), _least(given)
    return FuelRun(
        car=garage.car.id if garage.car else None,
        trim=garage.trim,
        condition=given.condition,
        minimum=given.dry.minimum,
        risk=given.dry.risk,
        per_lap=litres.lap() if litres.per_lap else None,
        laps=laps,
        full=_moment(given, None, Uncertain(float(litres.tank)), None) if litres.tank else None,
        empty=_moment(given, None, Uncertain(0.0), None),
        worst=_worst(laps),
        runs_dry=litres.runs_dry,
        since=given.dry.since,
        least=least,
        reasons=reasons_of(given),
        warnings=tuple(about_run(garage, given, question, least.fuel if least else None)),
    )


def _laps(given: RunGiven) -> tuple[Moment, ...]:
    litres, filled = given.litres, given.litres.filled()
    if filled is None:
        return ()
    start = mass_of(filled, given.kind)
    last = (litres.runs_dry or litres.laps) if litres.per_lap else 0
    return tuple(_moment(given, lap, litres.after(filled, lap), start) for lap in range(last + 1))


def _moment(given: RunGiven, lap: int | None, fuel: Uncertain, start: Uncertain | None) -> Moment:
    """`start`: kg of fuel at the start."""
    mass = mass_of(fuel, given.kind)
    return Moment(
        lap=lap,
        fuel=fuel,
        fuel_mass=mass,
        burnt=subtract(start, mass) if start else None,
        weight=add(given.weight, mass) if given.weight else None,
        judged=_judged(given, mass),
        balance=with_fuel(given.car, mass),
    )


def _judged(given: RunGiven, fuel: Uncertain) -> Judged | None:
    """The car with so much fuel (kg) against the minimum."""
    minimum, scale_then = given.dry.minimum, given.scale
    if given.weight is None or given.against is None or minimum is None or scale_then is None:
        return None
    weight = add(given.against, fuel)
    return Judged(
        margin=subtract(add(given.weight, fuel), Uncertain(minimum)),
        chance_under=chance_under(weight, minimum, scale_then, given.spread),
        in_hand=in_hand(weight, minimum, scale_then, given.dry.risk, given.spread),
    )


def _worst(laps: Sequence[Moment]) -> int | None:
    """Of equal chances the lap with the least margin."""
    judged = [(-each.judged.chance_under, each.judged.margin.value, each.lap) for each in laps if each.judged]
    return min(judged)[2] if judged else None


def _least(given: RunGiven) -> Least | None:
    """The least start that reaches the flag for sure and keeps the weight in hand there."""
    litres = given.litres
    if not litres.per_lap or not litres.laps:
        return None
    spent = float(litres.laps * litres.per_lap)
    reach = spent + litres.within
    if given.scale is None:
        return Least(reach, "distance", None)
    left = 0.0
    for _ in range(_PASSES):
        left = max(0.0, left + _lacking(given, left) / density_of(given.kind).middle)
    most = float(litres.tank) - spent if litres.tank else None
    lacking = _lacking(given, most) if most is not None and most >= 0.0 else 0.0
    by = "minimum" if spent + left > reach else "distance"
    return Least(max(reach, spent + left), by, lacking if lacking > 0.0 else None)


def _lacking(given: RunGiven, left: float) -> float:
    """What is lacking in hand at the flag, kg, with so much fuel (m³) left there."""
    litres = given.litres
    doubt = {**scale(litres.lap(), -float(litres.laps)).sources, "run:start": rectangular(litres.start_within)}
    judged = _judged(given, mass_of(Uncertain(left, doubt), given.kind))
    return judged.in_hand - judged.margin.value if judged else 0.0
