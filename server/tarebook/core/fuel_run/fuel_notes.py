"""What a run on fuel says beside its figures: why one is missing, and what should be known of the litres."""

from tarebook.core.fuel_run.fuel_given import MOST_LAPS, RunGiven, RunQuestion
from tarebook.core.garage.records import Garage, Warned, warned


def reasons_of(given: RunGiven) -> dict[str, Warned]:
    """Why an answer is missing, by name."""
    litres, dry, fuel = given.litres, given.dry.reasons, given.condition.fuel
    found: dict[str, Warned] = {name: dry[name] for name in ("weight", "margin") if name in dry}
    if fuel != "as_it_is":
        found["margin"] = warned(f"fuel_class_{fuel}")
    if litres.start is None:
        found["start"] = warned("fuel_start_unknown")
    if litres.tank is None:
        found["full"] = warned("tank_size_unknown")
    if litres.per_lap is None:
        found["per_lap"] = warned("fuel_lap_unknown")
    if litres.per_lap is None or not litres.laps:
        found["least"] = warned("fuel_no_laps" if litres.per_lap else "fuel_lap_unknown")
    return {**found, **given.car.reasons}


def about_run(garage: Garage, given: RunGiven, question: RunQuestion, least: float | None) -> list[Warned]:
    """What should be known of the weight, then of the litres, then of the balance. `least`: m³ to start with."""
    weight = [*given.condition.warnings, *given.dry.warnings]
    if garage.car is None or garage.car.fuel_kind is None:
        weight.append(warned("fuel_kind_unknown"))
    said = [*weight, *_about_litres(given, question, least), *given.car.warnings]
    return [warning for at, warning in enumerate(said) if warning not in said[:at]]


def _about_litres(given: RunGiven, question: RunQuestion, least: float | None) -> list[Warned]:
    litres = given.litres
    tank, per_lap = litres.tank, litres.per_lap
    said: list[tuple[bool, Warned]] = [
        (bool(question.start and tank and question.start.exact > tank), warned("fuel_start_above_tank")),
        (bool(per_lap and tank and per_lap > tank), warned("fuel_lap_above_tank")),
        (not litres.laps, warned("fuel_no_laps")),
        (question.laps > MOST_LAPS, warned("fuel_many_laps", most=MOST_LAPS)),
        (_is_assumed(given, question), warned("fuel_run_assumed")),
        (litres.runs_dry is not None, warned("fuel_runs_dry", lap=litres.runs_dry)),
        (_may_run_dry(given), warned("fuel_may_run_dry")),
        (bool(least and tank and least > float(tank)), warned("fuel_least_above_tank")),
    ]
    return [warning for is_so, warning in said if is_so]


def _is_assumed(given: RunGiven, question: RunQuestion) -> bool:
    """Whether nobody said how closely the start or the laps are known."""
    litres = given.litres
    start_assumed = litres.start is not None and question.start_within is None
    return start_assumed or (bool(litres.per_lap and litres.laps) and question.per_lap_within is None)


def _may_run_dry(given: RunGiven) -> bool:
    """Whether the tank lasts to the flag, but not if start and laps are as far off as they may be."""
    litres = given.litres
    if litres.start is None or not litres.per_lap or not litres.laps or litres.runs_dry is not None:
        return False
    return float(litres.start - litres.laps * litres.per_lap) < litres.within
