"""What was in the car at a weigh-in beside the car itself: fuel, a driver, ballast; each as well as it was noted.

What was not said is a doubt and no nothing: a tank anywhere between empty and full, a seat with anyone known in it or
nobody. Each is evenly spread between its ends.
"""

from dataclasses import dataclass

from tarebook.core.garage.records import Garage, WeighIn
from tarebook.core.numbers.uncertain import Uncertain, rectangular, resolution, weighted_sum
from tarebook.core.weighing.weighing import Masses
from tarebook.core.whole_car.fuel import assumed_within, fuel_mass


@dataclass(frozen=True, slots=True)
class Aboard:
    """What was on board at a weigh-in, kg; `fuel` and `driver` None where that is not known."""

    weigh_in: str
    fuel: Uncertain | None
    driver: Uncertain | None
    ballast: Uncertain


def aboard(garage: Garage, record: WeighIn, known: Masses) -> Aboard:
    return Aboard(record.id, fuel_in(garage, record), driver_in(garage, record, known), ballast_in(record))


def fuel_in(garage: Garage, record: WeighIn) -> Uncertain | None:
    """The fuel in the tank at a weigh-in, kg; None when nobody noted it and the tank's size is not known either."""
    if record.fuel is not None:
        volume = record.fuel.value
        within = record.fuel_within.value if record.fuel_within else assumed_within(volume)
    elif garage.car and garage.car.tank_size:
        volume = within = 0.5 * garage.car.tank_size.value
    else:
        return None
    return fuel_mass(volume, garage.car.fuel_kind if garage.car else None, within, f"fuel:{record.id}")


def is_driver_said(record: WeighIn) -> bool:
    """Whether somebody said who sat in the car, or that nobody did."""
    return record.driver_in is False or record.driver is not None


def driver_in(garage: Garage, record: WeighIn, known: Masses) -> Uncertain | None:
    """The driver on board at a weigh-in, kg: nothing for an empty seat, None when how heavy is not known at all."""
    if record.driver_in is False:
        return Uncertain(0.0)
    if record.driver is not None:
        return known.of[record.driver].mass
    nobody = [] if record.driver_in else [Uncertain(0.0)]
    masses = [*nobody, *(mass for driver in garage.drivers if (mass := known.of[driver].mass))]
    return _any_of(masses, f"driver:{record.id}") if masses else None


def _any_of(masses: list[Uncertain], source: str) -> Uncertain:
    least, most = min(masses, key=lambda mass: mass.value), max(masses, key=lambda mass: mass.value)
    apart = Uncertain(0.0, {source: rectangular(0.5 * (most.value - least.value))} if most.value > least.value else {})
    return weighted_sum((least, most, apart), (0.5, 0.5, 1.0))


def ballast_in(record: WeighIn) -> Uncertain:
    """The ballast on board at a weigh-in, kg, known to its last digit."""
    if record.ballast is None:
        return Uncertain(0.0)
    return Uncertain(record.ballast.value, {f"ballast:{record.id}": resolution(record.ballast.last_digit)})
