"""What a run on fuel is made from: the question, the litres with their doubt, and the car with an empty tank.

The weight with an empty tank comes from `core/standing`, asked as if the class weighed so, whatever its own rule is. Of
its error sources only those are kept by name that fuel or the official scale share; all others are one.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from tarebook.core.balance.laden import Laden, laden
from tarebook.core.fusion.mixture import CERTAIN, Spread
from tarebook.core.garage.records import ClassSheet, Garage
from tarebook.core.numbers.quantity import Quantity
from tarebook.core.numbers.uncertain import Uncertain, rectangular, weighted_sum
from tarebook.core.standing.official import OfficialScale, weight_behind
from tarebook.core.standing.standing import Standing, standing
from tarebook.core.weighing.weighing import Masses
from tarebook.core.whole_car.condition import Condition
from tarebook.core.whole_car.fuel import LITRE

START_WITHIN = 0.5 * LITRE  # half-width of what is filled in by can or pump: common practice, no source
LAP_WITHIN = 0.1  # half-width of what a lap takes, as a share of it: common practice, no source
MOST_LAPS = 500
_NO_SHEET = ClassSheet("", None, None, None, "out", "empty", None, None, None, None, None)


@dataclass(frozen=True, slots=True)
class RunQuestion:
    """The run. `start`: by default a full tank; `per_lap`: by default the car's own; with their half-widths."""

    start: Quantity | None = None
    start_within: Quantity | None = None
    per_lap: Quantity | None = None
    per_lap_within: Quantity | None = None
    laps: int = 0
    class_sheet: str | None = None


@dataclass(frozen=True, slots=True)
class Litres:
    """The run in m³, exactly: the `tank`, the `start` (no more than the tank) and a lap's; with their half-widths."""

    tank: Fraction | None
    start: Fraction | None
    start_within: float
    per_lap: Fraction | None
    per_lap_within: float
    laps: int

    @property
    def runs_dry(self) -> int | None:
        """The lap in which nothing is left, when that is before the flag."""
        if self.start is None or not self.per_lap or self.start >= self.laps * self.per_lap:
            return None
        return int(self.start // self.per_lap) + 1

    @property
    def within(self) -> float:
        """How far start and all laps together may be off."""
        return self.laps * self.per_lap_within + self.start_within

    def filled(self) -> Uncertain | None:
        """What the run starts with."""
        if self.start is None:
            return None
        return Uncertain(float(self.start), {"run:start": rectangular(self.start_within)})

    def lap(self) -> Uncertain:
        """What a lap takes; nothing when that is not known."""
        return Uncertain(float(self.per_lap or 0), {"run:lap": rectangular(self.per_lap_within)})

    def after(self, filled: Uncertain, lap: int) -> Uncertain:
        """What is left of a filling after so many laps; where nothing is, it keeps its doubt."""
        left = weighted_sum((filled, self.lap()), (1.0, -float(lap)))
        return Uncertain(max(0.0, left.value), left.sources)


@dataclass(frozen=True, slots=True)
class RunGiven:
    """`dry`: the standing with an empty tank, `weight` of it (kg) with few sources; `against`: the same with the doubt
    of what the official scale would show. `against`, `scale`: None without a minimum, or where the class does not count
    the fuel that is in the tank. `spread`: of what it would show.
    `car`: to be balanced."""

    kind: str | None
    litres: Litres
    condition: Condition
    dry: Standing
    weight: Uncertain | None
    against: Uncertain | None
    scale: OfficialScale | None
    spread: Spread
    car: Laden


def run_given(
    garage: Garage, question: RunQuestion, sheet: ClassSheet | None, condition: Condition, known: Masses
) -> RunGiven:
    """Everything a run of the garage's car is made from. `sheet`, `condition`: of the class asked about."""
    dry = _dry(garage, sheet, known)
    official = dry.official if condition.fuel == "as_it_is" else None
    gain: Mapping[str, float] = official.scale.gain.sources if official else {}
    return RunGiven(
        kind=garage.car.fuel_kind if garage.car else None,
        litres=_litres(garage, question),
        condition=condition,
        dry=dry,
        weight=_gathered(dry.weight, gain) if dry.weight else None,
        against=_gathered(weight_behind(official), gain) if official else None,
        scale=official.scale if official else None,
        spread=official.spread if official else CERTAIN,
        car=laden(garage, condition, known, dry),
    )


def _dry(garage: Garage, sheet: ClassSheet | None, known: Masses) -> Standing:
    empty = replace(sheet, fuel="empty") if sheet else _NO_SHEET
    return standing(replace(garage, class_sheets={**garage.class_sheets, empty.id: empty}), known, empty.id)


def _gathered(weight: Uncertain, gain: Mapping[str, float]) -> Uncertain:
    shared = {name: part for name, part in weight.sources.items() if name in gain or name == "fuel-density"}
    others = {name: part for name, part in weight.sources.items() if name not in shared}
    return Uncertain(weight.value, {**shared, "run:car": Uncertain(0.0, others).u})


def _litres(garage: Garage, question: RunQuestion) -> Litres:
    tank = garage.car.tank_size if garage.car else None
    start = question.start or tank
    if start and tank and start.exact > tank.exact:
        start = tank
    per_lap = question.per_lap or (garage.car.fuel_per_lap if garage.car else None)
    if per_lap and not per_lap.exact:
        per_lap = None
    if question.per_lap_within:
        lap_within = question.per_lap_within.value
    else:
        lap_within = LAP_WITHIN * per_lap.value if per_lap else 0.0
    return Litres(
        tank=tank.exact if tank else None,
        start=start.exact if start else None,
        start_within=question.start_within.value if question.start_within else START_WITHIN,
        per_lap=per_lap.exact if per_lap else None,
        per_lap_within=lap_within,
        laps=max(0, min(question.laps, MOST_LAPS)),
    )
