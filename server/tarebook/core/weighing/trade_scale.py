"""A trade scale's legal tolerance, and what it says of the gain for a whole car.

A scale of a legal accuracy class may be off by so many divisions, more of them as the load grows. When the person
enters the class of a scale and its division, that is a better bound than an assumption by kind. Two traditions
disagree above 4000 divisions; the wider one, NIST Handbook 44 (2.20, Table 6, maintenance), is taken: it holds
everywhere the steps of OIML R 76 in service do. Home scales are certified to neither.

A platform nobody said the class of is taken to be no better than class III allows: knowing less never asks for less.
"""

from math import inf

from tarebook.core.garage.records import Garage
from tarebook.core.numbers.uncertain import Uncertain, rectangular
from tarebook.core.weighing.scale import ASSUMED_GAIN, ScaleModel

# Accuracy class → (up to so many divisions of load, off by so many divisions). Class IIII from memory.
STEPS: dict[str, tuple[tuple[float, float], ...]] = {
    "III": ((500, 1), (2000, 2), (4000, 3), (inf, 5)),
    "IIII": ((50, 1), (200, 2), (400, 3), (inf, 5)),
}
ASSUMED_DIVISION = 1.0  # kg, of a platform for cars nobody noted the step of: common practice, no source


def tolerance(accuracy_class: str, division: float, load: float) -> float:
    """How far (kg) a scale in service may be off at this load (kg)."""
    return next(steps for most, steps in STEPS[accuracy_class] if load <= most * division) * division


def whole_car_gain(garage: Garage, model: ScaleModel, load: float, division: float | None = None) -> Uncertain:
    """The gain to take for a whole car of about `load` kg: from checks, else the legal class, else as assumed.

    `division`: the scale's, kg, where somebody else than its record states it.
    """
    named, step = garage.scales.get(model.id), division or model.division
    if not model.assumed or named is None or load <= 0.0:
        return model.gain
    if named.accuracy_class and step:
        return Uncertain(0.0, {f"cal:{model.id}": _relative(named.accuracy_class, step, load)})
    return platform_gain(f"cal:{model.id}", load, step) if named.kind == "platform" else model.gain


def gain_by_class(garage: Garage, model: ScaleModel) -> bool:
    """Whether the gain of a whole car is taken from the legal class by the scale's own record."""
    named = garage.scales.get(model.id)
    return bool(model.assumed and named and named.accuracy_class and model.division)


def platform_gain(source: str, load: float, division: float | None = None) -> Uncertain:
    """The gain assumed of a platform of unknown class, from the named source: no tighter than class III in service."""
    assumed = ASSUMED_GAIN["platform"]
    legal = _relative("III", division or ASSUMED_DIVISION, load) if load > 0.0 else assumed
    return Uncertain(0.0, {source: max(assumed, legal)})


def _relative(accuracy_class: str, division: float, load: float) -> float:
    return rectangular(tolerance(accuracy_class, division, load)) / load
