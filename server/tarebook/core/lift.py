"""Height of the centre of gravity from weighing one axle with the other raised [ISO 10392:2011].

With one axle raised by H the car is tilted by θ, sin θ = H / L, and load moves to the axle left on the ground:

    h = (R_f b + R_r a) / L + L ΔF / (m tan θ)        a = x_cg, b = L − a, R the heights of the axle centres

ΔF is what the axle on the ground gained. Loads are scale readings, so g cancels; all are of one scale, so its gain
cancels too (ΔF / m). H is how far the centre of the raised axle rose; tan θ divides, and H / L in its place biases the
answer. Brakes off, gearbox in neutral, suspension blocked, tank full or empty.

Each reading is the sum of so many looks: with two pads, four looks for the difference. A small lift moves little load:
one kilogram of error is about 9 mm of height at 0.6 m lift of a 1250 kg car. Where the answer would be no better than
knowing nothing of the car, it is refused. A common error of printed examples is to misplace the tangent: this is
checked by building the tilted car, not by such a print.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt

from tarebook.core.quantity import Quantity
from tarebook.core.records import Car, Garage, Warned, warned
from tarebook.core.scale import UNNAMED, ScaleModel
from tarebook.core.trade_scale import whole_car_gain
from tarebook.core.uncertain import Uncertain, derived, expanded, rectangular, resolution, subtract
from tarebook.core.weigh_in import repeatability
from tarebook.core.weighing import Masses, masses

RAISED = ("rear", "front")
WIDEST = 0.06  # m; U (95 %), half of what the track alone tells (core/balance): common practice, no source
WIDE = 0.025  # m; U beyond which more lift is worth the trouble: common practice, no source
LIFT_WITHIN = 0.003  # m, half-width of the rise as measured with a tape: common practice, no source
_PADS = {"corner_pads": 2, "bathroom": 2, "kitchen": 2, "bench": 2, "hanging": 2}  # under one axle; else one


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


@dataclass(frozen=True, slots=True)
class Axles:
    """The car's own lengths, m: wheelbase and the heights of its axle centres above the ground."""

    wheelbase: Uncertain
    radius_front: Uncertain
    radius_rear: Uncertain


@dataclass(frozen=True, slots=True)
class Lift:
    """`height` (m) of the centre of gravity above the ground, level; None for `reason`. `tilt`: tan θ.

    `moved`: load that moved to the axle on the ground, kg. `enough`: a rise (m) that would tell the height within
    ± `WIDE` if the loads alone were in doubt; None when no rise below half the wheelbase would.
    """

    height: Uncertain | None
    tilt: float | None
    moved: Uncertain | None
    enough: float | None
    reason: Warned | None
    warnings: tuple[Warned, ...]


def lift(garage: Garage, readings: LiftReadings, known: Masses | None = None) -> Lift:
    """The height of the garage's car from one lift. Never raises over data: what cannot be told has a reason."""
    axles = axles_of(garage.car)
    if not isinstance(axles, Axles):
        return _refused(axles)
    shown = (readings.front, readings.rear, readings.tilted)
    if readings.height is None or any(look is None for look in shown):
        return _refused(warned("lift_missing"))
    model = (known or masses(garage)).scales.get(readings.scale or UNNAMED)
    if model is None:
        return _refused(warned("lift_missing"))
    front, rear, tilted = _loads(garage, model, readings)
    within = readings.height_within.value if readings.height_within else LIFT_WITHIN
    rise = Uncertain(readings.height.value, {"lift:height": rectangular(max(within, 0.5 * readings.height.last_digit))})
    return axle_lift(axles, front, rear, tilted, rise, readings.raised)


def axles_of(car: Car | None) -> Axles | Warned:
    """The lengths of the car, each known to its last digit; or which are missing."""
    if car is None or car.wheelbase is None:
        return warned("wheelbase_unknown")
    if car.tyre_radius_front is None or car.tyre_radius_rear is None:
        return warned("radius_unknown")
    return Axles(
        _length(car, "wheelbase", car.wheelbase),
        _length(car, "tyre_radius_front", car.tyre_radius_front),
        _length(car, "tyre_radius_rear", car.tyre_radius_rear),
    )


def _length(car: Car, field: str, length: Quantity) -> Uncertain:
    return Uncertain(length.value, {f"round:{car.id}:{field}": resolution(length.last_digit)})


def _loads(garage: Garage, model: ScaleModel, readings: LiftReadings) -> list[Uncertain]:
    """Front, rear and tilted, each of a whole axle, with the scale's gain taken out."""
    shown = [("front", readings.front), ("rear", readings.rear), ("tilted", readings.tilted)]
    looks = [(name, look) for name, look in shown if look is not None]
    level = sum(look.value for name, look in looks if name != "tilted")
    gain = whole_car_gain(garage, model, level)
    named = garage.scales.get(model.id)
    pads = _PADS.get(named.kind, 1) if named else 1
    repeats = repeatability(garage, model) / sqrt(2.0)
    return [_load(model, gain, name, look, sqrt(float(pads)), repeats) for name, look in looks]


def _load(model: ScaleModel, gain: Uncertain, name: str, shown: Quantity, looks: float, repeats: float) -> Uncertain:
    through = 1.0 + gain.value
    load = shown.value / through
    sources = {source: -load * part / through for source, part in gain.sources.items()}
    sources[f"round:lift:{name}"] = looks * resolution(model.division_for(shown)) / through
    sources[f"rep:lift:{name}"] = repeats
    return Uncertain(load, sources)


def axle_lift(
    axles: Axles, front: Uncertain, rear: Uncertain, tilted: Uncertain, rise: Uncertain, raised: str = "rear"
) -> Lift:
    """The height from axle loads (any unit of force or mass, one for all) and the rise (m) of the raised axle."""
    wheelbase, mass = axles.wheelbase.value, front.value + rear.value
    if rise.value >= wheelbase:
        return _refused(warned("lift_above_wheelbase"))
    if rise.value <= 0.0 or mass <= 0.0:
        return _refused(warned("lift_missing"))
    tilt = rise.value / sqrt(wheelbase * wheelbase - rise.value * rise.value)
    moved = subtract(tilted, front if raised == "rear" else rear)
    if moved.value < -expanded(moved):
        return Lift(None, tilt, moved, None, warned("lift_wrong_way"), ())
    height = _height(axles, front, rear, moved, rise, tilt)
    margin = expanded(height)
    enough = _enough(wheelbase, moved, mass)
    if moved.value <= expanded(moved) or margin > WIDEST:
        return Lift(None, tilt, moved, enough, warned("lift_too_small"), ())
    wide = (warned("lift_wide"),) if margin > WIDE else ()
    return Lift(height, tilt, moved, enough, None, wide)


def _refused(reason: Warned) -> Lift:
    return Lift(None, None, None, None, reason, ())


def _height(
    axles: Axles, front: Uncertain, rear: Uncertain, moved: Uncertain, rise: Uncertain, tilt: float
) -> Uncertain:
    """The formula, with its derivatives. The shares of both axles weigh their radii: (R_f F_f + R_r F_r) / m."""
    long, mass = axles.wheelbase.value, front.value + rear.value
    radius_front, radius_rear = axles.radius_front.value, axles.radius_rear.value
    line = (radius_front * front.value + radius_rear * rear.value) / mass
    above = long * moved.value / (mass * tilt)
    # d(L / tan θ)/dL and /dH, with L / tan θ = L √(L² − H²) / H.
    flat = sqrt(long * long - rise.value * rise.value)
    by_long = moved.value / mass * (flat / rise.value + long * long / (rise.value * flat))
    by_rise = -moved.value / mass * (long / flat + long * flat / (rise.value * rise.value))
    items = (axles.wheelbase, axles.radius_front, axles.radius_rear, front, rear, moved, rise)
    partials = (
        by_long,
        front.value / mass,
        rear.value / mass,
        (radius_front - line - above) / mass,
        (radius_rear - line - above) / mass,
        long / (mass * tilt),
        by_rise,
    )
    return derived(line + above, items, partials)


def _enough(wheelbase: float, moved: Uncertain, mass: float) -> float | None:
    """The rise at which the doubt of the moved load alone leaves ± WIDE."""
    needed = expanded(moved) * wheelbase / (mass * WIDE)
    rise = wheelbase * needed / sqrt(1.0 + needed * needed)
    return rise if rise < 0.5 * wheelbase else None
