"""The kinds of record a garage is made of, and the fields each may carry.

This table is the one contract: the journal validates against it, `calc` reads it, the OpenAPI
document and the phone's own table (`webapp/src/generated/kinds.ts`) are made from it. To add a
field, add a line here and run `python -m tarebook.contract`.

A *fact* (a weighing, a weigh-in, a scale check, a photo) is set once by its first entry. It is
corrected by a new record that `replaces` it, or withdrawn by `deleted`; it is never edited.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

FieldType = Literal[
    "text",
    "mass",
    "length",
    "volume",
    "money",
    "hours",
    "fraction",
    "count",
    "flag",
    "choice",
    "choices",
    "ref",
    "refs",
    "moment",
    "hash",
    "integer",
]

# Bumped when an older program could misread a newer journal; newer entries are then set aside, whole.
SCHEMA = 1


@dataclass(frozen=True)
class Field:
    """One field of a kind.

    `mass`, `length` and `volume` are typed strings with a unit ("6 3/8 oz"), kept as typed.
    `money`, `hours` and `fraction` are plain decimal strings ("12.50"). `moment` is an ISO 8601 date or time
    as the person stated it. `of` names the choices, or the kinds a reference may point to.
    """

    type: FieldType
    of: tuple[str, ...] = ()
    most: int = 200  # characters of a text, items of a list, or the largest integer
    required: bool = False  # must be set by the record's first entry


@dataclass(frozen=True)
class Kind:
    name: str
    fact: bool
    fields: dict[str, Field] = field(default_factory=dict)


MASS = Field("mass")
LENGTH = Field("length")
VOLUME = Field("volume")
FLAG = Field("flag")
NAME = Field("text", most=120, required=True)
NOTE = Field("text", most=4000)
MOMENT = Field("moment")


def _ref(*kinds: str, required: bool = False) -> Field:
    return Field("ref", kinds, required=required)


def _choice(*choices: str, required: bool = False) -> Field:
    return Field("choice", choices, required=required)


# fmt: off
MASS_UNITS = ("kg", "g", "lb", "oz", "lb oz")
POWER_UNITS = ("kW", "hp", "PS")
ZONES = (
    "nose", "engine bay", "bulkhead", "dash", "cabin front", "cabin rear", "left door", "right door", "roof",
    "glass", "floor", "boot", "tail", "front wheels", "rear wheels", "underneath front", "underneath rear",
)
HAZARDS = (
    "airbags and tensioners", "seats and belts", "lifting", "fuel", "battery", "cutting structure", "glass and edges",
    "ballast", "refrigerant", "dust and fibre", "road legality",
)
_CLAIM = {
    "claim": MASS,
    "claim_basis": _choice("guessed", "quoted", "worked_out"),
    "claim_within": MASS,
    "claim_from": Field("text", most=200),
}

_SHAPE = {
    "form": _choice("rectangle", "circle", "polygon"), "width": LENGTH, "height": LENGTH, "diameter": LENGTH,
    "corners": Field("text", most=4000),
}

_KINDS = (
    Kind("garage", False, {
        "name": NAME, "mass_unit": _choice(*MASS_UNITS), "length_unit": _choice("mm", "in"),
        "volume_unit": _choice("L", "gal_us", "gal_imp"), "currency": Field("text", most=8),
    }),
    Kind("car", False, {
        "name": NAME, "wheelbase": LENGTH, "track_front": LENGTH, "track_rear": LENGTH,
        "tyre_radius_front": LENGTH, "tyre_radius_rear": LENGTH, "tank_size": VOLUME, "tank_x": LENGTH,
        "fuel_kind": _choice("petrol", "e85", "diesel"), "driver_x": LENGTH, "driver_y": LENGTH, "beltline": LENGTH,
        "tank_y": LENGTH, "tank_z": LENGTH, "driver_z": LENGTH, "fuel_per_lap": VOLUME,
        "length": LENGTH, "width": LENGTH, "height": LENGTH, "front_overhang": LENGTH,
        "power": Field("fraction"), "power_unit": _choice(*POWER_UNITS), "roll_front": Field("fraction"),
        "front_from": Field("fraction"), "front_to": Field("fraction"),
        "left_from": Field("fraction"), "left_to": Field("fraction"),
        "ballast_for": _choice("mass", "centre", "cross"), "ballast_more": MASS,
        "book_weight": MASS, "book_weight_from": Field("text"), "note": NOTE,
    }),
    Kind("scale", False, {
        "name": NAME,
        "kind": _choice(
            "kitchen", "hanging", "bathroom", "bench", "corner_pads", "axle_pads", "platform", required=True),
        "division": MASS, "capacity": MASS, "unit": _choice(*MASS_UNITS), "repeatability": MASS,
        "accuracy_class": _choice("III", "IIII"), "note": NOTE,
    }),
    Kind("scale_check", True, {
        "scale": _ref("scale", required=True), "known_name": Field("text", most=120),
        "known": Field("mass", required=True), "known_within": MASS, "shown": Field("mass", required=True),
        "at": MOMENT, "note": NOTE, "replaces": _ref("scale_check"),
    }),
    Kind("part", False, {
        "car": _ref("car"), "name": NAME, "zone": _choice(*ZONES), "x": LENGTH, "y": LENGTH, "z": LENGTH,
        "place_within": LENGTH, "length": LENGTH, "width": LENGTH,
        "count": Field("count", most=1000),
        "whereabouts": _choice("car", "shelf", "yard", "left", "sold", "scrapped"),
        "box": Field("text", most=80), "yard": Field("text", most=120), "row": Field("text", most=80),
        "asking": Field("money"), "sold_for": Field("money"), "instead_of": _ref("part"),
        "unsprung": FLAG, "rotating": FLAG, "with_bolts": FLAG, **_CLAIM, "note": NOTE,
    }),
    Kind("weighing", True, {
        "of": _ref("part", "driver"), "what": Field("text", most=120),
        "method": _choice("direct", "difference", "batch", "container", "ends", required=True),
        "shown": Field("mass", required=True), "shown_empty": MASS, "shown_far": MASS,
        "pieces": Field("count", most=1000), "scale": _ref("scale"), "with_bolts": FLAG, "at": MOMENT,
        "place": _choice("garage", "yard", "paddock", "elsewhere"), "note": NOTE, "replaces": _ref("weighing"),
    }),
    Kind("driver", False, {"name": NAME, **_CLAIM, "note": NOTE}),
    Kind("stage", False, {"car": _ref("car"), "name": NAME, "rank": Field("integer", most=10_000)}),
    Kind("job", False, {
        "car": _ref("car"), "name": NAME, "state": _choice("idea", "chosen", "fitted", "undone"),
        "stage": _ref("stage"), "trim": _choice("both", "event"), "hours": Field("hours"), "money": Field("money"),
        "fitted_on": MOMENT, "ruling": _choice("allowed", "allowed_if", "not_allowed", "unclear"),
        "clause": Field("text", most=200), "hazards": Field("choices", HAZARDS, most=len(HAZARDS)), "note": NOTE,
    }),
    Kind("job_part", False, {
        "job": _ref("job", required=True), "part": _ref("part", required=True),
        "way": _choice("off", "on", required=True), "count": Field("count", most=1000),
    }),
    Kind("loose_end", False, {
        "job": _ref("job", required=True), "sort": _choice("plug", "wire", "hole", "bolts", "other"),
        "text": Field("text", most=400, required=True), "closed": FLAG,
    }),
    Kind("weigh_in", True, {
        "car": _ref("car"), "layout": _choice("corners", "axles", "total", required=True),
        "lf": MASS, "rf": MASS, "lr": MASS, "rr": MASS, "front": MASS, "rear": MASS, "total": MASS,
        "scale": _ref("scale"), "fuel": VOLUME, "fuel_within": VOLUME, "driver_in": FLAG, "driver": _ref("driver"),
        "ballast": MASS, "trim": _choice("road", "event", required=True), "official": FLAG,
        "jobs": Field("refs", ("job",), most=1000), "at": MOMENT, "place": Field("text", most=120), "note": NOTE,
        "replaces": _ref("weigh_in"),
    }),
    Kind("lift", True, {
        "car": _ref("car"), "weigh_in": _ref("weigh_in", required=True),
        "raised": _choice("front", "rear", required=True), "tilted": Field("mass", required=True),
        "height": Field("length", required=True), "height_within": LENGTH,
        "scale": _ref("scale"), "at": MOMENT, "note": NOTE, "replaces": _ref("lift"),
    }),
    Kind("ballast_place", False, {
        "car": _ref("car"), "name": NAME, "x": LENGTH, "y": LENGTH, "z": LENGTH, "block": MASS,
        "most": Field("integer", most=1000), "fitted": Field("integer", most=1000), "note": NOTE,
    }),
    Kind("sheet", False, {
        "part": _ref("part", required=True), "material": Field("text", most=80), **_SHAPE, "thickness": LENGTH,
        "measured": FLAG, "gauge": Field("integer", most=50), "gauge_table": Field("text", most=40),
        "density_low": Field("fraction"), "density_high": Field("fraction"), "within": LENGTH,
    }),
    Kind("sheet_hole", False, {"sheet": _ref("sheet", required=True), **_SHAPE, "count": Field("count", most=1000)}),
    Kind("class_sheet", False, {
        "car": _ref("car"), "name": NAME, "minimum": MASS, "driver": _choice("in", "out"),
        "fuel": _choice("as_it_is", "empty", "full", "stated"), "fuel_stated": VOLUME, "adders": MASS,
        "scale_division": MASS, "scale_rounding": _choice("nearest", "unknown"), "risk": Field("fraction"),
        "finish": NOTE, "note": NOTE,
    }),
    Kind("clause", False, {
        "class_sheet": _ref("class_sheet", required=True), "reference": Field("text", most=80),
        "text": Field("text", most=4000, required=True),
    }),
    Kind("photo", True, {
        "of": _ref(
            "part", "weighing", "weigh_in", "job", "loose_end", "scale", "scale_check", "lift", required=True),
        "sha256": Field("hash", required=True), "size": Field("integer", most=2_000_000),
        "type": _choice("image/jpeg", "image/png", "image/webp"),
        "width": Field("integer", most=20_000), "height": Field("integer", most=20_000),
    }),
    Kind("verdict", True, {"entry": Field("text", most=80, required=True), "take": Field("flag", required=True)}),
)

# fmt: on
KINDS: dict[str, Kind] = {kind.name: kind for kind in _KINDS}
"""Every kind by name. Each also accepts the field `deleted`, a flag: the tombstone."""
