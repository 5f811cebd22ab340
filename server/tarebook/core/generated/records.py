"""A garage's records as the core sees them, written by `python -m tarebook.contract`, not edited."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from tarebook.core.numbers.quantity import Quantity


@dataclass(frozen=True, slots=True)
class Garage:
    id: str
    claims: str | None


@dataclass(frozen=True, slots=True)
class Car:
    id: str
    name: str | None
    wheelbase: Quantity | None
    track_front: Quantity | None
    track_rear: Quantity | None
    tyre_radius_front: Quantity | None
    tyre_radius_rear: Quantity | None
    tank_size: Quantity | None
    tank_x: Quantity | None
    tank_y: Quantity | None
    tank_z: Quantity | None
    fuel_kind: str | None
    fuel_per_lap: Quantity | None
    driver_x: Quantity | None
    driver_y: Quantity | None
    driver_z: Quantity | None
    beltline: Quantity | None
    power: Fraction | None
    power_unit: str | None
    length: Quantity | None
    width: Quantity | None
    height: Quantity | None
    front_overhang: Quantity | None
    roll_front: Fraction | None
    front_from: Fraction | None
    front_to: Fraction | None
    left_from: Fraction | None
    left_to: Fraction | None
    ballast_for: str | None
    ballast_more: Quantity | None
    book_weight: Quantity | None
    book_weight_from: str | None


@dataclass(frozen=True, slots=True)
class Driver:
    id: str
    name: str | None
    claim: Quantity | None
    claim_basis: str | None
    claim_within: Quantity | None


@dataclass(frozen=True, slots=True)
class Scale:
    id: str
    name: str | None
    kind: str
    division: Quantity | None
    capacity: Quantity | None
    unit: str | None
    repeatability: Quantity | None
    accuracy_class: str | None


@dataclass(frozen=True, slots=True)
class ScaleCheck:
    """A mass known from elsewhere, and what the scale showed for it."""

    id: str
    scale: str
    known_name: str | None
    known: Quantity
    known_within: Quantity | None
    shown: Quantity
    at: str | None


@dataclass(frozen=True, slots=True)
class Stage:
    id: str
    car: str | None
    name: str | None
    rank: int | None


@dataclass(frozen=True, slots=True)
class Part:
    """`count` is how many pieces the record stands for; every mass of it, weighed or claimed, is of one piece."""

    id: str
    car: str | None
    name: str | None
    zone: str | None
    x: Quantity | None
    y: Quantity | None
    z: Quantity | None
    place_within: Quantity | None
    length: Quantity | None
    width: Quantity | None
    count: int | None
    whereabouts: str | None
    asking: Fraction | None
    sold_for: Fraction | None
    instead_of: str | None
    unsprung: bool | None
    rotating: bool | None
    with_bolts: bool | None
    claim: Quantity | None
    claim_basis: str | None
    claim_within: Quantity | None


@dataclass(frozen=True, slots=True)
class Weighing:
    id: str
    of: str | None
    method: str
    shown: Quantity
    shown_empty: Quantity | None
    shown_far: Quantity | None
    pieces: int | None
    scale: str | None
    with_bolts: bool | None
    at: str | None


@dataclass(frozen=True, slots=True)
class Job:
    id: str
    car: str | None
    name: str | None
    state: str | None
    stage: str | None
    trim: str | None
    hours: Fraction | None
    money: Fraction | None
    fitted_on: str | None
    ruling: str | None


@dataclass(frozen=True, slots=True)
class JobPart:
    id: str
    job: str
    part: str
    way: str
    count: int | None


@dataclass(frozen=True, slots=True)
class LooseEnd:
    id: str
    job: str
    sort: str | None
    text: str | None
    closed: bool | None


@dataclass(frozen=True, slots=True)
class WeighIn:
    """The whole car weighed. `foretold`: what official scales were to show, told by all that was known before."""

    id: str
    car: str | None
    layout: str
    lf: Quantity | None
    rf: Quantity | None
    lr: Quantity | None
    rr: Quantity | None
    front: Quantity | None
    rear: Quantity | None
    total: Quantity | None
    scale: str | None
    ready: tuple[str, ...] | None
    fuel: Quantity | None
    fuel_within: Quantity | None
    driver_in: bool | None
    driver: str | None
    ballast: Quantity | None
    trim: str
    official: bool | None
    jobs: tuple[str, ...] | None
    foretold: Quantity | None
    foretold_within: Quantity | None
    at: str | None


@dataclass(frozen=True, slots=True)
class Repeat:
    """Lifted or rolled off and on, and read again, all of it or a part; whatever else was so is told by `of`."""

    id: str
    of: str
    shown: Quantity | None
    shown_empty: Quantity | None
    shown_far: Quantity | None
    lf: Quantity | None
    rf: Quantity | None
    lr: Quantity | None
    rr: Quantity | None
    front: Quantity | None
    rear: Quantity | None
    total: Quantity | None


@dataclass(frozen=True, slots=True)
class Omission:
    """One of several readings of a thing that a person left out; deleted, it counts again."""

    id: str
    of: str
    reading: str


@dataclass(frozen=True, slots=True)
class Lift:
    """One axle of the car of a weigh-in raised by `height`; `tilted`: what the other then carried."""

    id: str
    car: str | None
    weigh_in: str
    raised: str
    tilted: Quantity
    height: Quantity
    height_within: Quantity | None
    scale: str | None
    at: str | None


@dataclass(frozen=True, slots=True)
class BallastPlace:
    """Where ballast may be fixed: `fitted` blocks of `block` each are there now, `most` is what the place takes."""

    id: str
    car: str | None
    name: str | None
    x: Quantity | None
    y: Quantity | None
    z: Quantity | None
    block: Quantity | None
    most: int | None
    fitted: int | None


@dataclass(frozen=True, slots=True)
class Sheet:
    """A part cut from sheet, as it was drawn or typed. `corners`: text, read by `core/sheet/sheet_corners`."""

    id: str
    part: str
    material: str | None
    form: str | None
    width: Quantity | None
    height: Quantity | None
    diameter: Quantity | None
    corners: str | None
    thickness: Quantity | None
    measured: bool | None
    gauge: int | None
    gauge_table: str | None
    density_low: Fraction | None
    density_high: Fraction | None
    within: Quantity | None


@dataclass(frozen=True, slots=True)
class SheetHole:
    id: str
    sheet: str
    form: str | None
    width: Quantity | None
    height: Quantity | None
    diameter: Quantity | None
    corners: str | None
    count: int | None


@dataclass(frozen=True, slots=True)
class ClassSheet:
    id: str
    car: str | None
    name: str | None
    minimum: Quantity | None
    driver: str | None
    fuel: str | None
    fuel_stated: Quantity | None
    adders: Quantity | None
    scale_division: Quantity | None
    scale_rounding: str | None
    risk: Fraction | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Records:
    """Every record by plural kind: dicts by id, in order of id."""

    garages: dict[str, Garage]
    cars: dict[str, Car]
    drivers: dict[str, Driver]
    scales: dict[str, Scale]
    scale_checks: dict[str, ScaleCheck]
    stages: dict[str, Stage]
    parts: dict[str, Part]
    weighings: dict[str, Weighing]
    jobs: dict[str, Job]
    job_parts: dict[str, JobPart]
    loose_ends: dict[str, LooseEnd]
    weigh_ins: dict[str, WeighIn]
    repeats: dict[str, Repeat]
    omissions: dict[str, Omission]
    lifts: dict[str, Lift]
    ballast_places: dict[str, BallastPlace]
    sheets: dict[str, Sheet]
    sheet_holes: dict[str, SheetHole]
    class_sheets: dict[str, ClassSheet]


SHAPES: dict[str, type[Any]] = {
    "garage": Garage,
    "car": Car,
    "driver": Driver,
    "scale": Scale,
    "scale_check": ScaleCheck,
    "stage": Stage,
    "part": Part,
    "weighing": Weighing,
    "job": Job,
    "job_part": JobPart,
    "loose_end": LooseEnd,
    "weigh_in": WeighIn,
    "repeat": Repeat,
    "omission": Omission,
    "lift": Lift,
    "ballast_place": BallastPlace,
    "sheet": Sheet,
    "sheet_hole": SheetHole,
    "class_sheet": ClassSheet,
}
