"""Where what a car carries sits: the fuel at its tank, the driver at the seat, as far as their places are entered.

Ballast of a weigh-in is a mass without a place.

A place is an error source of its own for each axis (`place:tank:z`), so that fuel that comes out and goes in again
shares it. Half-widths are common practice, no source: fuel sinks as it is used and runs to a side.
"""

from tarebook.core.balance.body import Load
from tarebook.core.garage.records import Car
from tarebook.core.numbers.quantity import Quantity
from tarebook.core.numbers.uncertain import Uncertain, rectangular

WITHIN = {"tank": (0.05, 0.05, 0.08), "driver": (0.05, 0.03, 0.08)}  # m, along, across and up


def place_aboard(car: Car | None, what: str) -> Load:
    """Nothing yet, at the place of the "tank", "driver" or "ballast"; an axis nobody entered is None."""
    if what not in WITHIN:
        return Load(Uncertain(0.0), None, None, None)
    x, y, z = (_arm(car, what, axis, half) for axis, half in zip("xyz", WITHIN[what], strict=True))
    return Load(Uncertain(0.0), x, y, z)


def _arm(car: Car | None, what: str, axis: str, half: float) -> Uncertain | None:
    typed: Quantity | None = getattr(car, f"{what}_{axis}") if car else None
    if typed is None:
        return None
    return Uncertain(typed.value, {f"place:{what}:{axis}": rectangular(max(half, 0.5 * typed.last_digit))})
