"""What was in the car at a weigh-in beside the car itself: fuel, a driver, ballast; each as well as it was noted."""

from dataclasses import dataclass

from tarebook.core.garage.records import Garage, WeighIn
from tarebook.core.numbers.uncertain import Uncertain, resolution
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
    return Aboard(record.id, fuel_in(garage, record), driver_in(record, known), ballast_in(record))


def fuel_in(garage: Garage, record: WeighIn) -> Uncertain | None:
    """The fuel in the tank at a weigh-in, kg; None when nobody noted it."""
    if record.fuel is None:
        return None
    volume = record.fuel.value
    within = record.fuel_within.value if record.fuel_within else assumed_within(volume)
    return fuel_mass(volume, garage.car.fuel_kind if garage.car else None, within, f"fuel:{record.id}")


def driver_in(record: WeighIn, known: Masses) -> Uncertain | None:
    """The driver on board at a weigh-in, kg: nothing for an empty seat, None when who or how heavy is not known."""
    if not record.driver_in:
        return Uncertain(0.0)
    return known.of[record.driver].mass if record.driver else None


def ballast_in(record: WeighIn) -> Uncertain:
    """The ballast on board at a weigh-in, kg, known to its last digit."""
    if record.ballast is None:
        return Uncertain(0.0)
    return Uncertain(record.ballast.value, {f"ballast:{record.id}": resolution(record.ballast.last_digit)})
