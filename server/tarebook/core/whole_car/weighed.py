"""The weigh-ins of a car in order, each with its loads, the jobs then in the car, and what else was on board.

A weigh-in weighs the car with fuel, driver and ballast as they were that day. What two of them can be compared by is
the car without these; what was on board is known as well as it was noted.
"""

from dataclasses import dataclass

from tarebook.core.garage.records import Garage, Warned, WeighIn, warned
from tarebook.core.ledger.net import jobs_in_car
from tarebook.core.numbers.uncertain import Uncertain, resolution
from tarebook.core.whole_car.aboard import Aboard
from tarebook.core.whole_car.weigh_in import Loads

Terms = tuple[tuple[Uncertain, float], ...]
"""Items and what each counts: a sum that is taken once, at the end."""


@dataclass(frozen=True, slots=True)
class Weighed:
    """One weigh-in with its loads. `jobs`: those then in the car; None when nobody confirmed any list."""

    record: WeighIn
    loads: Loads
    jobs: tuple[str, ...] | None
    aboard: Aboard


@dataclass(frozen=True, slots=True)
class Now:
    """The car now: the `jobs` in it, and the `ballast` at its places, kg; None while nobody notes it."""

    jobs: tuple[str, ...]
    ballast: Uncertain | None


def in_order(garage: Garage) -> list[WeighIn]:
    """Weigh-ins as they were made: by their stated time (those without one last), then by id."""
    return sorted(garage.weigh_ins.values(), key=lambda record: (record.at is None, str(record.at), record.id))


def bare(weighed: Weighed) -> Terms | Warned:
    """The car of a weigh-in without fuel, driver or ballast, kg, or why that cannot be told."""
    whole, then = weighed.loads.total, weighed.aboard
    if whole is None:
        return warned("reading_missing", weigh_in=then.weigh_in)
    if then.fuel is None:
        return warned("fuel_unknown", weigh_in=then.weigh_in)
    if then.driver is None:
        return warned("driver_unknown", weigh_in=then.weigh_in)
    return ((whole, 1.0), (then.fuel, -1.0), (then.driver, -1.0), (then.ballast, -1.0))


def now_of(garage: Garage) -> Now:
    return Now(tuple(job.id for job in jobs_in_car(garage)), ballast_now(garage))


def ballast_now(garage: Garage) -> Uncertain | None:
    """The blocks fitted at the car's ballast places, kg, each known to its last digit; None while nobody notes them."""
    noted = [place for place in garage.ballast_places.values() if place.fitted is not None]
    if not noted:
        return None
    value, sources = 0.0, {}
    for place in noted:
        if place.fitted and place.block:
            value += place.fitted * place.block.value
            sources[f"ballast:{place.id}"] = place.fitted * resolution(place.block.last_digit)
    return Uncertain(value, sources)
