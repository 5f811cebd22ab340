"""What one more weigh-in now would do to the doubt: on each scale a car can stand on, and on a platform.

A look that has not happened yet has no value, only doubts: the scale's gain, which other weigh-ins on it share, its
steps and how it repeats a car, the litres in the tank and the driver as at the last weigh-in. Put beside the looks that
are there it gives the uncertainty they would have together.
"""

from dataclasses import dataclass
from math import sqrt

from tarebook.core.fusion.fusion import Fusion
from tarebook.core.garage.records import Garage, Scale, WeighIn
from tarebook.core.numbers.uncertain import Uncertain, resolution, weighted_sum
from tarebook.core.weighing.scale import ScaleModel
from tarebook.core.weighing.trade_scale import ASSUMED_DIVISION, platform_gain, whole_car_gain
from tarebook.core.weighing.weighing import Masses
from tarebook.core.whole_car.aboard import driver_in, is_driver_said
from tarebook.core.whole_car.fuel import assumed_within, fuel_mass
from tarebook.core.whole_car.weigh_in import ASSUMED_REPEATABILITY, look_at, repeatability

CAR_LOOKS = {"corner_pads": 4, "axle_pads": 2, "platform": 1}


@dataclass(frozen=True, slots=True)
class Next:
    """One more weigh-in on this scale (None: a platform nobody knows): `u` of the weight now, and with it, kg."""

    scale: str | None
    u_now: float
    u_then: float


def weigh_next(garage: Garage, known: Masses, fusion: Fusion) -> tuple[Next, ...]:
    """What one more weigh-in would give, the best first."""
    last = fusion.evidence.counted[-1].record
    looks: list[tuple[str | None, Uncertain]] = [
        (scale.id, _look(garage, known.scales[scale.id], scale, fusion.weight.value))
        for scale in garage.scales.values()
        if scale.id not in garage.retired and (scale.kind in CAR_LOOKS or scale.id == last.scale)
    ]
    if not any(scale.kind == "platform" for scale in garage.scales.values()):
        looks.append((None, _platform(fusion.weight.value)))
    aboard = _aboard(garage, known, last)
    now = fusion.weight.u
    found = [Next(name, now, fusion.u_with(_at_target(fusion, look, aboard))) for name, look in looks]
    return tuple(sorted(found, key=lambda each: (each.u_then, each.scale is None, each.scale or "")))


def _look(garage: Garage, model: ScaleModel, scale: Scale, load: float) -> Uncertain:
    rounding = resolution(model.division or ASSUMED_DIVISION) * sqrt(CAR_LOOKS.get(scale.kind, 1))
    return look_at("next", load, whole_car_gain(garage, model, load), rounding, repeatability(garage, model))


def _platform(load: float) -> Uncertain:
    repeats = ASSUMED_REPEATABILITY["platform"]
    return look_at("next", load, platform_gain("cal:next", load), resolution(ASSUMED_DIVISION), repeats)


def _aboard(garage: Garage, known: Masses, last: WeighIn) -> Uncertain:
    """Fuel and driver as far as they were said at the last weigh-in, the litres read anew."""
    driver = driver_in(garage, last, known) if is_driver_said(last) else None
    driver = driver or Uncertain(0.0)
    if last.fuel is None:
        return driver
    within = last.fuel_within.value if last.fuel_within else assumed_within(last.fuel.value)
    fuel = fuel_mass(last.fuel.value, garage.car.fuel_kind if garage.car else None, within, "fuel:next")
    return weighted_sum((driver, fuel), (1.0, 1.0))


def _at_target(fusion: Fusion, look: Uncertain, aboard: Uncertain) -> Uncertain:
    """The look as one at the weight now: what is aboard out, what the class weighs with in."""
    doubts = weighted_sum((look, aboard, fusion.evidence.target), (1.0, -1.0, 1.0))
    return Uncertain(fusion.weight.value, doubts.sources)
