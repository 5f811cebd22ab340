"""How the car came from its start to what it weighs now: one sum that adds up.

The car of the first weigh-in, bare and before any job; what the jobs in it changed; what the weigh-ins say beside that;
and the fuel, the driver and the ballast that the weight counts. What the weigh-ins say beside the jobs is what nobody
wrote down, or an error: a line of its own, so that it is not hidden in another.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from tarebook.core.fusion.evidence import counted_of
from tarebook.core.garage.records import Garage
from tarebook.core.ledger.since import net_between
from tarebook.core.numbers.quantity import factor
from tarebook.core.numbers.shown import lay_out
from tarebook.core.numbers.uncertain import Uncertain, expanded, weighted_sum
from tarebook.core.standing.given import given_by
from tarebook.core.standing.standing import Standing
from tarebook.core.weighing.weighing import Masses
from tarebook.core.whole_car.aboard import Aboard
from tarebook.core.whole_car.condition import Condition
from tarebook.core.whole_car.weighed import Now, bare


@dataclass(frozen=True, slots=True)
class FromStart:
    """Masses in kg: `start` + `jobs` + `corrected` + `fuel` + `driver` + `ballast` are the weight now.

    `start`: without fuel, driver and ballast, by the `weigh_in`. `jobs`: the net of those in the car, below zero when
    it got lighter. What the class does not count is nothing.
    """

    weigh_in: str
    start: Uncertain
    jobs: Uncertain
    corrected: Uncertain
    fuel: Uncertain
    driver: Uncertain
    ballast: Uncertain


def from_start(garage: Garage, known: Masses, now: Standing) -> FromStart | None:
    """None without a weight, or where what was aboard at the start or is in the weight now is not known."""
    given = given_by(garage, known, now.condition.class_sheet)
    counted = now.fused.counted if now.fused else ()
    last = next((each for each in given.weighed if counted and each.record.id == counted[-1].weigh_in), None)
    if last is None or now.weight is None:
        return None
    aboard = _counted_aboard(last.aboard, given.now, given.condition)
    for each in given.weighed:
        alone = bare(each)
        if isinstance(alone, dict) or each.jobs is None or aboard is None:
            continue
        terms = (*alone, (net_between(each.jobs, (), given.nets), -1.0))
        start = weighted_sum([item for item, _ in terms], [sign for _, sign in terms])
        jobs = weighted_sum((now.removed,), (-1.0,))
        rest = weighted_sum((now.weight, start, jobs, *aboard), (1.0, -1.0, -1.0, *(-1.0 for _ in aboard)))
        return FromStart(each.record.id, start, jobs, rest, *aboard)
    return None


def adding_up(corrected: Uncertain, others: Sequence[Uncertain], weight: Uncertain, unit: str) -> Uncertain:
    """What the weigh-ins say beside the jobs, as it is shown: so that the rounded lines come to the rounded weight.

    What rounding leaves goes to this line, which is known the least; where that is more than its own doubt (a single
    weigh-in has none beside itself), it stays as it is. `others`: the lines beside it; `unit`: all are shown in.
    """
    rest = _as_shown(weight, unit) - sum(_as_shown(each, unit) for each in others)
    within = abs(float(rest) - corrected.value) <= expanded(corrected)
    return Uncertain(float(rest), corrected.sources) if within else corrected


def _as_shown(item: Uncertain, unit: str) -> Fraction:
    """The mass (kg) that is read off what is shown."""
    shown = lay_out("mass", item.value, unit, expanded(item))
    read = sum((Fraction(digits) * factor("mass", named) for digits, named in shown.parts), Fraction(0))
    return -read if shown.sign == "−" else read


def _counted_aboard(last: Aboard, now: Now, condition: Condition) -> tuple[Uncertain, Uncertain, Uncertain] | None:
    """The fuel, driver and ballast in the weight now, kg; None while one of them is in it and is not known."""
    fuel, driver, ballast = counted_of(last, now, condition)
    if condition.driver == "out":
        driver = Uncertain(0.0)
    return None if fuel is None or driver is None else (fuel, driver, ballast)
