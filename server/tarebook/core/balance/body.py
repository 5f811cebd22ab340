"""A rigid body and what loads put on it or taken off it do: mass, centre of gravity, yaw inertia.

    centre      (M c + Σ m r) / (M + Σ m), m counted negative where it comes off; in each axis alike
    yaw         ΔI = Σ m (|ρ|² + k) − |Σ m ρ|² / M',  ρ = r − c horizontally, M' = M + Σ m

The yaw inertia is about the body's own centre, before about the old one, after about the new one. For a single point
mass this is ∓ m M / (M ∓ m) d², which m d² alone (about the old centre) is not. k is the load's own radius of gyration
squared: (l² + w²) / 12 of a plate. The absolute inertia of a car is unknown; the change needs only its mass and centre.

The doubt of every mass, place and of the body itself is carried to first order, with what they share. The derivatives
are short about the new centre: with D = Σ m ρ / M', ∂ΔI/∂m = |ρ − D|² + k, ∂ΔI/∂r = 2 m (ρ − D), ∂ΔI/∂M = |D|² and
∂ΔI/∂c = −2 M D.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from tarebook.core.numbers.uncertain import Uncertain, derived, divide, multiply, total


@dataclass(frozen=True, slots=True)
class Load:
    """`mass` in kg, negative where it comes off; its centre in m, an axis None when unknown. `own`: k in m²."""

    mass: Uncertain
    x: Uncertain | None
    y: Uncertain | None
    z: Uncertain | None
    own: float = 0.0


@dataclass(frozen=True, slots=True)
class Body:
    """`mass` in kg and the centre of gravity in m, an axis None when unknown."""

    mass: Uncertain
    x: Uncertain | None
    y: Uncertain | None
    z: Uncertain | None


def own_of(length: float, width: float) -> float:
    """Radius of gyration squared, m², of a plate of this length (along x) and width (along y) about its centre."""
    return (length * length + width * width) / 12.0


def changed(body: Body, loads: Sequence[Load]) -> Body:
    """The body with the loads on it. Nothing has a centre where nothing is left: then every axis is None."""
    mass = total([body.mass, *(load.mass for load in loads)])
    if mass.value <= 0.0:
        return Body(mass, None, None, None)
    masses = [body.mass, *(load.mass for load in loads)]
    along = [
        _centre(masses, [getattr(body, axis), *(getattr(load, axis) for load in loads)], mass)
        for axis in ("x", "y", "z")
    ]
    return Body(mass, *along)


def _centre(masses: Sequence[Uncertain], arms: Sequence[Uncertain | None], mass: Uncertain) -> Uncertain | None:
    known = [arm for arm in arms if arm is not None]
    if len(known) < len(arms):
        return None
    return divide(total([multiply(each, arm) for each, arm in zip(masses, known, strict=True)]), mass)


def yaw_change(body: Body, loads: Sequence[Load]) -> Uncertain | None:
    """How the loads change the body's yaw inertia, kg m²; None when an x or y is unknown or nothing is left."""
    places = [(load, load.x, load.y) for load in loads]
    known = [(load, x, y) for load, x, y in places if x is not None and y is not None]
    mass = total([body.mass, *(load.mass for load in loads)]).value
    if body.x is None or body.y is None or len(known) < len(places) or mass <= 0.0:
        return None
    arms = [(load.mass.value, x.value - body.x.value, y.value - body.y.value, load.own) for load, x, y in known]
    shift_x = total([Uncertain(m * x) for m, x, _, _ in arms]).value / mass
    shift_y = total([Uncertain(m * y) for m, _, y, _ in arms]).value / mass
    about_old = total([Uncertain(m * (x * x + y * y + own)) for m, x, y, own in arms]).value
    value = about_old - mass * (shift_x * shift_x + shift_y * shift_y)
    items: list[Uncertain] = [body.mass, body.x, body.y]
    partials = [
        shift_x * shift_x + shift_y * shift_y,
        -2.0 * body.mass.value * shift_x,
        -2.0 * body.mass.value * shift_y,
    ]
    for (load, x, y), (m, arm_x, arm_y, own) in zip(known, arms, strict=True):
        far_x, far_y = arm_x - shift_x, arm_y - shift_y
        items += [load.mass, x, y]
        partials += [far_x * far_x + far_y * far_y + own, 2.0 * m * far_x, 2.0 * m * far_y]
    return derived(value, items, partials)
