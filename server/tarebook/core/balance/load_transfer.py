"""How much load moves between the sides in a turn and between the axles under power or brakes.

    lateral        m a h / t     kilograms from the inner to the outer wheels of both axles; a in g, t the mean track
    longitudinal   m a h / L     kilograms from one axle to the other
    stability      t / (2 h)     the lateral a, in g, at which the inner wheels of a rigid car carry nothing

How the lateral total is shared between the axles is a matter of roll stiffness and is not told here. Only what the
centre's height, the mass and the car's own lengths set is: that is what taking weight out changes.
[NHTSA static stability factor; R. N. Jazar, Vehicle Dynamics, eq. 2.87 and 2.88]
"""

from dataclasses import dataclass

from tarebook.core.balance.body import Body
from tarebook.core.garage.records import Car
from tarebook.core.numbers.uncertain import Uncertain, divide, multiply, scale

# Watts in one. hp: 550 foot-pounds force a second; PS: 75 metre-kilograms force a second; both exact.
POWER_UNITS = {"kW": 1000.0, "hp": 745.6998715822702, "PS": 735.49875}


@dataclass(frozen=True, slots=True)
class Transfer:
    """`lateral`, `longitudinal` in kg; `stability`: static stability factor; `per_power` in kg/W. None: not known.

    `wheels_lift`: of "lateral" and "longitudinal", those at which a whole side or axle would carry nothing.
    """

    lateral: Uncertain | None
    longitudinal: Uncertain | None
    stability: Uncertain | None
    per_power: Uncertain | None
    wheels_lift: tuple[str, ...]


def power_of(car: Car | None) -> tuple[float, str] | None:
    """The car's own power and its unit; None unless both are known and it is not nothing."""
    if car is None or not car.power or car.power_unit is None or car.power <= 0:
        return None
    return float(car.power), car.power_unit


def transfer(
    body: Body,
    track: Uncertain | None,
    wheelbase: Uncertain | None,
    lateral_g: float,
    longitudinal_g: float,
    power: float | None = None,
) -> Transfer:
    """Of a body whose `z` is its height above the ground. Lengths in m, accelerations in g, forward positive; W."""
    across = _moved(body, track, abs(lateral_g))
    along = _moved(body, wheelbase, abs(longitudinal_g))
    lifted = {
        "lateral": across is not None and across.value > 0.5 * body.mass.value,
        "longitudinal": along is not None and _unloads(body, wheelbase, along, longitudinal_g),
    }
    return Transfer(
        lateral=across,
        longitudinal=along,
        stability=divide(track, scale(body.z, 2.0)) if track and body.z and body.z.value > 0.0 else None,
        per_power=scale(body.mass, 1.0 / power) if power else None,
        wheels_lift=tuple(name for name, lifts in lifted.items() if lifts),
    )


def _moved(body: Body, length: Uncertain | None, g: float) -> Uncertain | None:
    """m a h / length."""
    if body.z is None or length is None:
        return None
    return divide(scale(multiply(body.mass, body.z), g), length)


def _unloads(body: Body, wheelbase: Uncertain | None, moved: Uncertain, g: float) -> bool:
    """Whether more would leave an axle than stands on it: the front under power, the rear under brakes."""
    if body.x is None or wheelbase is None:
        return False
    rear = body.x.value / wheelbase.value
    share = 1.0 - rear if g > 0.0 else rear
    return moved.value > share * body.mass.value
