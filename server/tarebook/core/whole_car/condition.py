"""The condition a class weighs a car in: with a driver or without, with what fuel; ballast stays where it is.

A weigh-in happens in whatever condition the car was in that day. To compare it with a minimum, the fuel then in the
tank goes out of the sum and the class's goes in, and so with the driver. What both have in common cancels: a full tank
weighed for a class that weighs full tanks says nothing of the density of fuel. When the driver counts, the lightest who
will drive decides. Where the class sheet is silent, the driver is out and the fuel is as it is, and a warning says so.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from tarebook.core.garage.records import ClassSheet, Garage, Warned, WeighIn, warned
from tarebook.core.numbers.uncertain import Uncertain, weighted_sum
from tarebook.core.weighing.weighing import Masses
from tarebook.core.whole_car.aboard import Aboard, is_driver_said
from tarebook.core.whole_car.fuel import fuel_mass


@dataclass(frozen=True, slots=True)
class Condition:
    """`driver`: "in" or "out"; `fuel`: "as_it_is", "empty", "full" or "stated".

    `lightest`: id of the driver who decides, with `driver_mass` (kg); both None when the driver is out or nobody's mass
    is known. `fuel_mass` (kg): of the fuel the class asks for; None when it is as it is or, as `no_fuel` says, unknown.
    """

    class_sheet: str | None
    driver: str
    fuel: str
    lightest: str | None
    driver_mass: Uncertain | None
    fuel_mass: Uncertain | None
    no_fuel: Warned | None
    warnings: tuple[Warned, ...]


def chosen_sheet(garage: Garage, asked: str | None = None) -> ClassSheet | None:
    """The class sheet asked for by id, else the newest of the car (the last by id)."""
    sheets = garage.class_sheets
    return sheets.get(asked) if asked is not None else next(reversed(sheets.values()), None)


def condition_of(garage: Garage, sheet: ClassSheet | None, known: Masses) -> Condition:
    """The condition of a class sheet, or of none."""
    driver = (sheet.driver if sheet else None) or "out"
    fuel = (sheet.fuel if sheet else None) or "as_it_is"
    lightest = _lightest(garage, known) if driver == "in" else None
    fuel_now = _class_fuel(garage, sheet, fuel)
    return Condition(
        class_sheet=sheet.id if sheet else None,
        driver=driver,
        fuel=fuel,
        lightest=lightest,
        driver_mass=known.of[lightest].mass if lightest else None,
        fuel_mass=fuel_now if isinstance(fuel_now, Uncertain) else None,
        no_fuel=None if fuel_now is None or isinstance(fuel_now, Uncertain) else fuel_now,
        warnings=(*_unsaid(sheet), *(_unweighed_drivers(garage, known) if driver == "in" else ())),
    )


def _unsaid(sheet: ClassSheet | None) -> list[Warned]:
    """What the class sheet leaves open and was taken the cautious way."""
    if sheet is None:
        return []
    unsaid = [rule for rule in ("driver", "fuel") if getattr(sheet, rule) is None]
    return [warned(f"{rule}_rule_unsaid", class_sheet=sheet.id) for rule in unsaid]


def _drivers(garage: Garage) -> list[str]:
    """Everyone who may still drive."""
    return [driver for driver in garage.drivers if driver not in garage.retired]


def _lightest(garage: Garage, known: Masses) -> str | None:
    """The lightest driver whose mass is known; the first by id of two equal ones."""
    weighed = [(mass.value, driver) for driver in _drivers(garage) if (mass := known.of[driver].mass)]
    return min(weighed)[1] if weighed else None


def _unweighed_drivers(garage: Garage, known: Masses) -> list[Warned]:
    unweighed = [driver for driver in _drivers(garage) if known.of[driver].mass is None]
    return [warned("driver_without_mass", drivers=unweighed)] if unweighed else []


def _class_fuel(garage: Garage, sheet: ClassSheet | None, rule: str) -> Uncertain | Warned | None:
    """The fuel the class asks for, exactly so many litres; or why it is not known; None for fuel as it is."""
    if rule == "as_it_is":
        return None
    if rule == "empty":
        return Uncertain(0.0)
    volume = sheet.fuel_stated if sheet and rule == "stated" else garage.car.tank_size if garage.car else None
    if volume is None:
        return warned("fuel_stated_missing" if rule == "stated" else "tank_unknown")
    return fuel_mass(volume.value, garage.car.fuel_kind if garage.car else None)


def at_condition(whole: Uncertain | None, then: Aboard, condition: Condition) -> Uncertain | Warned:
    """The weight of the car of a weigh-in at the class's condition, kg, or why it cannot be told."""
    if whole is None:
        return warned("reading_missing", weigh_in=then.weigh_in)
    fuel, driver = _fuel_change(then, condition), driver_change(then, condition)
    for change in (fuel, driver):
        if isinstance(change, dict):
            return change
    changes: Sequence[Uncertain] = [change for change in (fuel, driver) if isinstance(change, Uncertain)]
    return weighted_sum((whole, *changes), [1.0] * (1 + len(changes)))


def _fuel_change(then: Aboard, condition: Condition) -> Uncertain | Warned | None:
    if condition.fuel == "as_it_is":
        return None
    if then.fuel is None:
        return warned("fuel_unknown", weigh_in=then.weigh_in)
    if condition.fuel_mass is None:
        return condition.no_fuel
    return weighted_sum((condition.fuel_mass, then.fuel), (1.0, -1.0))


def driver_change(then: Aboard, condition: Condition) -> Uncertain | Warned | None:
    """What exchanging the driver of a weigh-in for the one who counts adds, kg, or why that cannot be told."""
    if condition.driver == "in":
        # Nobody can be put in the place of a driver of unknown mass; the car then counts with that driver.
        if then.driver is None:
            return None
        if condition.driver_mass is None:
            return warned("no_driver")
        return weighted_sum((condition.driver_mass, then.driver), (1.0, -1.0))
    if then.driver is None:
        return warned("driver_unknown", weigh_in=then.weigh_in)
    return weighted_sum((then.driver,), (-1.0,))


def condition_warnings(garage: Garage, record: WeighIn, then: Aboard, condition: Condition) -> list[Warned]:
    """What should be known of the condition the car was in at a weigh-in."""
    found = _fuel_warnings(garage, record, then, condition)
    if not is_driver_said(record) and then.driver is not None:
        found.append(warned("driver_unsaid", weigh_in=record.id))
    if then.driver is None:
        code = "driver_as_weighed" if condition.driver == "in" else "driver_unknown"
        found.append(warned(code, weigh_in=record.id))
    return found


def _fuel_warnings(garage: Garage, record: WeighIn, then: Aboard, condition: Condition) -> list[Warned]:
    if record.fuel is None:
        return [warned("fuel_unsaid" if then.fuel else "fuel_unknown", weigh_in=record.id)]
    tank = garage.car.tank_size if garage.car else None
    found = []
    if tank is not None and record.fuel.exact > tank.exact:
        found.append(warned("fuel_above_tank", weigh_in=record.id))
    if condition.fuel == "as_it_is":
        return found
    if record.fuel_within is None:
        found.append(warned("fuel_within_assumed", weigh_in=record.id))
    if garage.car is None or garage.car.fuel_kind is None:
        found.append(warned("fuel_kind_unknown"))
    return found
