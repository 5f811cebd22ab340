"""Axle lifts of a garage: the height of the centre of gravity from a lift's record, or from readings as they are.

A lift belongs to a level weigh-in: the car stands as it stood there, and only one axle is raised. With corner pads each
axle is the sum of two looks, so the load that moved is the difference of four. The scale of the lift is that of the
weigh-in unless another is named; then its own gain no longer cancels, and counts. The sum itself is
`core/balance/axle_lift`.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from math import sqrt

from tarebook.core.balance.axle_lift import LIFT_WITHIN, Axles, LiftedCar, Outlook, axle_lift, refused
from tarebook.core.balance.axle_lift import outlook as outlook_of
from tarebook.core.balance.place import mean_track
from tarebook.core.garage.records import Car, Garage, Lift, Warned, WeighIn, warned
from tarebook.core.numbers.quantity import Quantity
from tarebook.core.numbers.uncertain import Uncertain, rectangular, resolution
from tarebook.core.weighing.scale import UNNAMED, ScaleModel
from tarebook.core.weighing.trade_scale import whole_car_gain
from tarebook.core.weighing.weighing import Masses, masses
from tarebook.core.whole_car.weigh_in import LOOKS, length_of, loads_of, look_at, model_for, repeatability

RAISED = ("rear", "front")
AXLES = ("front", "rear")
# Of the mean track, between which the centres of closed cars lie; common practice, no source.
LIKELY = (0.15, 0.6)
FULL = 0.95  # of a tank in which fuel has nowhere to run: common practice, no source
_PADS = {"corner_pads": 2, "bathroom": 2, "kitchen": 2, "bench": 2, "hanging": 2}  # under one axle; else one


Look = Callable[[str, float, Quantity], Uncertain]
"""One axle read, its scale's gain taken out. The quantity tells the division of a scale that has none noted."""


@dataclass(frozen=True, slots=True)
class LiftReadings:
    """As read: `front` and `rear` with the car level, `tilted` the axle on the ground, the other raised by `height`.

    `raised`: "rear" or "front". `height_within`: half-width of `height`. `scale`: id. Each load is of a whole axle.
    """

    front: Quantity | None = None
    rear: Quantity | None = None
    tilted: Quantity | None = None
    height: Quantity | None = None
    height_within: Quantity | None = None
    raised: str = "rear"
    scale: str | None = None


def lift(garage: Garage, readings: LiftReadings, known: Masses | None = None) -> LiftedCar:
    """The height of the garage's car from one lift. Never raises over data: what cannot be told has a reason."""
    axles = axles_of(garage.car)
    if not isinstance(axles, Axles):
        return refused(axles)
    front, rear, tilted, height = readings.front, readings.rear, readings.tilted, readings.height
    model = (known or masses(garage)).scales.get(readings.scale or UNNAMED)
    if front is None or rear is None or tilted is None or height is None or model is None:
        return refused(warned("lift_missing"))
    look = _reader(garage, model, whole_car_gain(garage, model, front.value + rear.value), _pads(garage, model))
    return axle_lift(
        axles,
        look("lift:front", front.value, front),
        look("lift:rear", rear.value, rear),
        look("lift:tilted", tilted.value, tilted),
        _rise(height, readings.height_within, "lift:height"),
        readings.raised,
    )


def lift_of(garage: Garage, record: Lift, known: Masses | None = None) -> LiftedCar:
    """The height from a lift of the garage and the axle loads of its weigh-in. Never raises over data."""
    weighed = garage.weigh_ins[record.weigh_in]
    level = _level(garage, weighed, record.scale, known or masses(garage))
    if not isinstance(level, _Level):
        return refused(level)
    tilted = level.look(f"{record.id}:tilted", record.tilted.value, record.tilted)
    rise = _rise(record.height, record.height_within, f"lift:{record.id}:height")
    found = axle_lift(level.axles, level.front, level.rear, tilted, rise, record.raised)
    return replace(found, warnings=(*found.warnings, *_unlikely(garage.car, found), *_about_car(garage, weighed)))


def lifts_in_order(garage: Garage) -> list[Lift]:
    """Lifts as they were made: by their stated time (those without one last), then by id."""
    return sorted(garage.lifts.values(), key=lambda record: (record.at is None, str(record.at), record.id))


def outlook(
    garage: Garage, weigh_in: str, raised: str = "rear", scale: str | None = None, known: Masses | None = None
) -> Outlook | Warned:
    """What lifting an axle of the car of this weigh-in would tell, before it is done; or why nothing would."""
    record = garage.weigh_ins.get(weigh_in)
    if record is None:
        return warned("lift_missing")
    level = _level(garage, record, scale, known or masses(garage))
    if not isinstance(level, _Level):
        return level
    on_ground, name = (level.front, 0) if raised == "rear" else (level.rear, -1)
    typed: Quantity = getattr(record, LOOKS[record.layout][name])
    reading = level.look("outlook", on_ground.value, typed)
    return outlook_of(level.axles, level.front, level.rear, reading, raised)


def axles_of(car: Car | None) -> Axles | Warned:
    """The lengths of the car, each known to its last digit; or which are missing."""
    wheelbase = length_of(car, "wheelbase")
    if wheelbase is None:
        return warned("wheelbase_unknown")
    front, rear = length_of(car, "tyre_radius_front"), length_of(car, "tyre_radius_rear")
    return Axles(wheelbase, front, rear) if front and rear else warned("radius_unknown")


def _rise(height: Quantity, within: Quantity | None, source: str) -> Uncertain:
    half = within.value if within else LIFT_WITHIN
    return Uncertain(height.value, {source: rectangular(max(half, 0.5 * height.last_digit))})


@dataclass(frozen=True, slots=True)
class _Level:
    """The car standing level, as weighed, and what reads the axle left on the ground."""

    axles: Axles
    front: Uncertain
    rear: Uncertain
    look: Look


def _reader(garage: Garage, model: ScaleModel, gain: Uncertain, pads: int) -> Look:
    """How a scale reads one axle of a car as the sum of `pads` looks."""
    steps, repeats = sqrt(float(pads)), repeatability(garage, model) / sqrt(2.0)

    def look(name: str, shown: float, typed: Quantity) -> Uncertain:
        rounding = steps * resolution(model.division_for(typed))
        return look_at(name, shown / (1.0 + gain.value), gain, rounding, repeats)

    return look


def _pads(garage: Garage, model: ScaleModel) -> int:
    named = garage.scales.get(model.id)
    return _PADS.get(named.kind, 1) if named else 1


def _level(garage: Garage, record: WeighIn, scale: str | None, known: Masses) -> _Level | Warned:
    """`scale`: id of the one that reads the lift; that of the weigh-in when None. Else why there is nothing to lift."""
    axles = axles_of(garage.car)
    if not isinstance(axles, Axles):
        return axles
    loads, same = loads_of(garage, record, known), scale is None or scale == record.scale
    model = model_for(record, known) if same else known.scales.get(scale or UNNAMED)
    if model is None:
        return warned("lift_missing")
    if loads.total is None or any(name not in loads.loads or loads.loads[name].value <= 0.0 for name in AXLES):
        return warned("axles_unknown", weigh_in=record.id)
    gain = loads.gain if same else whole_car_gain(garage, model, loads.total.value)
    pads = 2 if same and record.layout == "corners" else _pads(garage, model)
    return _Level(axles, loads.loads["front"], loads.loads["rear"], _reader(garage, model, gain, pads))


def _unlikely(car: Car | None, found: LiftedCar) -> list[Warned]:
    """A height no car has comes from a slipped reading, whatever its doubt."""
    track = mean_track(car)
    if found.height is None or track is None:
        return []
    low, high = LIKELY[0] * track, LIKELY[1] * track
    return [] if low <= found.height.value <= high else [warned("lift_unlikely")]


def _about_car(garage: Garage, record: WeighIn) -> list[Warned]:
    """What of the car's load makes a lift worse or dangerous: somebody in it, fuel that can run to the low end."""
    found = [warned("lift_driver_in", weigh_in=record.id)] if record.driver_in else []
    fuel, tank = record.fuel, garage.car.tank_size if garage.car else None
    still = fuel is not None and (fuel.value == 0.0 or (tank is not None and fuel.value >= FULL * tank.value))
    return found if still else [*found, warned("lift_fuel_moves", weigh_in=record.id)]
