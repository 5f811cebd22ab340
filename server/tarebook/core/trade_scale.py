"""A trade scale's legal tolerance, and what it says of the gain for a whole car.

A scale of a legal accuracy class may be off by so many divisions, more of them as the load grows. When the person
enters the class of a scale and its division, that is a better bound than an assumption by kind. Two traditions
disagree above 4000 divisions; the wider one, NIST Handbook 44 (2.20, Table 6, maintenance), is taken: it holds
everywhere the steps of OIML R 76 in service do. Home scales are certified to neither.
"""

from __future__ import annotations

from math import inf

from tarebook.core.records import Garage
from tarebook.core.scale import ScaleModel
from tarebook.core.uncertain import Uncertain, rectangular

# Accuracy class → (up to so many divisions of load, off by so many divisions). Class IIII from memory.
STEPS: dict[str, tuple[tuple[float, float], ...]] = {
    "III": ((500, 1), (2000, 2), (4000, 3), (inf, 5)),
    "IIII": ((50, 1), (200, 2), (400, 3), (inf, 5)),
}


def tolerance(accuracy_class: str, division: float, load: float) -> float:
    """How far (kg) a scale in service may be off at this load (kg)."""
    return next(steps for most, steps in STEPS[accuracy_class] if load <= most * division) * division


def whole_car_gain(garage: Garage, model: ScaleModel, load: float) -> Uncertain:
    """The gain to take for a whole car of about `load` kg: from checks, else the legal class, else as assumed."""
    named = garage.scales.get(model.id)
    if not model.assumed or named is None or not named.accuracy_class or not model.division or load <= 0.0:
        return model.gain
    off = rectangular(tolerance(named.accuracy_class, model.division, load))
    return Uncertain(0.0, {f"cal:{model.id}": off / load})
