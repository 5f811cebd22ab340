"""Height of the centre of gravity from axle loads, level and with one axle raised [ISO 10392:2011].

With one axle raised by H the car is tilted by θ, sin θ = H / L, and load moves to the axle left on the ground:

    h = (R_f b + R_r a) / L + L ΔF / (m tan θ)        a = x_cg, b = L − a, R the heights of the axle centres

ΔF is what the axle on the ground gained. Loads are scale readings, so g cancels; all are of one scale, so its gain
cancels too (ΔF / m). H is how far the centre of the raised axle rose; tan θ divides, and H / L in its place biases the
answer. Brakes off, gearbox in neutral, suspension blocked, tank full or empty, nobody in the car.

A small lift moves little load: one kilogram of error is about 9 mm of height at 0.6 m lift of a 1250 kg car. Where the
answer would be no better than knowing nothing of the car, it is refused, and `outlook` tells which rise would do. A
common error of printed examples is to misplace the tangent: this is checked by building the tilted car, not by such a
print.
"""

from dataclasses import dataclass
from math import sqrt

from tarebook.core.garage.records import Warned, warned
from tarebook.core.numbers.uncertain import Uncertain, derived, expanded, rectangular, scale, subtract

WIDEST = 0.06  # m; U (95 %), half of what the track alone tells (core/balance/height): common practice, no source
WIDE = 0.025  # m; U beyond which more lift is worth the trouble: common practice, no source
TRIED = 20  # rises an outlook tries in every metre
HIGHEST = 1.5  # m, to which it looks however long the car: no axle is raised further
ABOVE_AXLES = 0.22  # m, of the centre, where only the doubt of a lift is foreseen: common practice, no source
LIFT_WITHIN = 0.003  # m, half-width of the rise as measured with a tape: common practice, no source


@dataclass(frozen=True, slots=True)
class Axles:
    """The car's own lengths, m: wheelbase and the heights of its axle centres above the ground."""

    wheelbase: Uncertain
    radius_front: Uncertain
    radius_rear: Uncertain


@dataclass(frozen=True, slots=True)
class LiftedCar:
    """`height` (m) of the centre of gravity above the ground, level; None for `reason`. `tilt`: tan θ.

    `moved`: load that moved to the axle on the ground, kg. `least`, `enough`: as of `Outlook`.
    """

    height: Uncertain | None
    tilt: float | None
    moved: Uncertain | None
    least: float | None
    enough: float | None
    reason: Warned | None
    warnings: tuple[Warned, ...]


@dataclass(frozen=True, slots=True)
class Outlook:
    """How well lifts of a car would tell its height: for every rise (m) the U (m, 95 %), to half the wheelbase at most.

    `least`: the first rise that tells it at all (± `WIDEST`); `enough`: the first within ± `WIDE`; None: none does.
    """

    rises: tuple[tuple[float, float], ...]
    least: float | None
    enough: float | None


def axle_lift(
    axles: Axles, front: Uncertain, rear: Uncertain, tilted: Uncertain, rise: Uncertain, raised: str = "rear"
) -> LiftedCar:
    """The height from axle loads (any unit of force or mass, one for all) and the rise (m) of the raised axle."""
    wheelbase, mass = axles.wheelbase.value, front.value + rear.value
    if rise.value >= wheelbase:
        return refused(warned("lift_above_wheelbase"))
    if rise.value <= 0.0 or mass <= 0.0 or tilted.value <= 0.0:
        return refused(warned("lift_missing"))
    tilt = rise.value / sqrt(wheelbase * wheelbase - rise.value * rise.value)
    moved = subtract(tilted, front if raised == "rear" else rear)
    if moved.value < -expanded(moved):
        return LiftedCar(None, tilt, moved, None, None, warned("lift_wrong_way"), ())
    height = _height(axles, front, rear, moved, rise, tilt)
    margin, ahead = expanded(height), outlook(axles, front, rear, tilted, raised)
    if moved.value <= expanded(moved) or margin > WIDEST:
        return LiftedCar(None, tilt, moved, ahead.least, ahead.enough, warned("lift_too_small"), ())
    wide = (warned("lift_wide"),) if margin > WIDE else ()
    return LiftedCar(height, tilt, moved, ahead.least, ahead.enough, None, wide)


def refused(reason: Warned) -> LiftedCar:
    return LiftedCar(None, None, None, None, None, reason, ())


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


def outlook(axles: Axles, front: Uncertain, rear: Uncertain, tilted: Uncertain, raised: str = "rear") -> Outlook:
    """What rises would tell. `tilted`: how the axle on the ground is read, at any load (not zero)."""
    highest = min(0.5 * axles.wheelbase.value, HIGHEST)
    rises = [n / TRIED for n in range(1, int(highest * TRIED) + 1)]
    told = tuple((rise, _foreseen(axles, front, rear, tilted, rise, raised)) for rise in rises)
    least, enough = (next((rise for rise, margin in told if margin <= most), None) for most in (WIDEST, WIDE))
    return Outlook(told, least, enough)


def _foreseen(axles: Axles, front: Uncertain, rear: Uncertain, tilted: Uncertain, rise: float, raised: str) -> float:
    """U (m) of the height by a lift not made yet. The doubt of the reading grows with the load, so its gain cancels."""
    wheelbase, on_ground = axles.wheelbase.value, front if raised == "rear" else rear
    tilt = rise / sqrt(wheelbase * wheelbase - rise * rise)
    load = on_ground.value + (front.value + rear.value) * ABOVE_AXLES * tilt / wheelbase
    moved = subtract(scale(tilted, load / tilted.value), on_ground)
    risen = Uncertain(rise, {"lift:height": rectangular(LIFT_WITHIN)})
    return expanded(_height(axles, front, rear, moved, risen, tilt))
