"""One value of one record, read as its field's type says.

Quantities are read by `core/numbers/quantity`, everything else is checked for its shape only. What does not fit raises
`QuantityError` (with its sentence) or `ValueError`; the reader of the garage makes warnings of both.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction
from functools import lru_cache
from typing import Any

from tarebook.core.numbers.quantity import Quantity, read, read_number
from tarebook.core.numbers.typed import QuantityError
from tarebook.core.numbers.units import Kind
from tarebook.journal.kinds import Field

# Zero is a reading a scale may show, but not a size these can have.
_POSITIVE = frozenset(
    (
        "division",
        "capacity",
        "known",
        "minimum",
        "scale_division",
        "claim",
        "wheelbase",
        "track_front",
        "track_rear",
        "tyre_radius_front",
        "tyre_radius_rear",
        "tank_size",
        "fuel_per_lap",
        "length",
        "width",
        "height",
        "diameter",
        "thickness",
        "block",
    )
)
# Places on an axis, which may lie in front of the front axle or left of the centreline.
_SIGNED = frozenset(("x", "y", "tank_x", "tank_y", "driver_x", "driver_y"))
# Metres that a car's own sizes keep within, wide enough for published ones; beyond them a unit has slipped.
_WHEELBASE, _TRACK, _RADIUS = (Fraction(1), Fraction(6)), (Fraction(1, 2), Fraction(3)), (Fraction(1, 10), Fraction(1))
_LIKELY = {
    "wheelbase": (*_WHEELBASE, "1 m to 6 m"),
    "track_front": (*_TRACK, "0.5 m to 3 m"),
    "track_rear": (*_TRACK, "0.5 m to 3 m"),
    "tyre_radius_front": (*_RADIUS, "100 mm to 1000 mm"),
    "tyre_radius_rear": (*_RADIUS, "100 mm to 1000 mm"),
}


def read_field(name: str, spec: Field, value: Any, unit: str | None) -> Any:
    """The value of a field. `unit` is what a bare mass was typed in. Raises `QuantityError` or `ValueError`."""
    if spec.type == "mass" or spec.type == "length" or spec.type == "volume":
        default = unit if spec.type == "mass" else None
        found = _read_once(spec.type, _as_typed(value), default, name in _POSITIVE, name in _SIGNED)
        if isinstance(found, QuantityError):
            raise QuantityError(found.code, **found.data)
        return likely(name, found)
    return _PLAIN[spec.type](value, spec)


def likely(name: str, size: Quantity) -> Quantity:
    """The size itself, if a car can have it as its `name`. Raises `QuantityError`."""
    if name in _LIKELY:
        least, most, span = _LIKELY[name]
        if not least <= size.exact <= most:
            raise QuantityError("size_unlikely", typed=size.text, kind=size.kind, span=span)
    return size


@lru_cache(maxsize=50_000)
def _read_once(kind: Kind, text: str, unit: str | None, positive: bool, signed: bool) -> Quantity | QuantityError:
    """A text met before is not read again: the garage is read anew after every change, and few texts in it are new."""
    try:
        return read(kind, text, unit, positive, signed)
    except QuantityError as error:
        return error


def _as_typed(value: Any) -> str:
    """A quantity as typed: a string, or `{value, unit}` with the value a string or a number."""
    if isinstance(value, str):
        return value
    if isinstance(value, Mapping) and isinstance(value.get("unit"), str):
        return f"{_number_text(value.get('value'))} {value['unit']}"
    raise ValueError


def _number_text(value: Any) -> str:
    if isinstance(value, str):
        return value
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise ValueError
    return str(int(value)) if isinstance(value, float) and value.is_integer() else str(value)


def _text(value: Any, spec: Field) -> str:
    if not isinstance(value, str):
        raise ValueError
    return value


def _decimal(value: Any, spec: Field) -> Fraction:
    """Exact: money is never a float."""
    return read_number(_text(value, spec))


def _hours(value: Any, spec: Field) -> Fraction:
    hours = _decimal(value, spec)
    if hours < 0:
        raise ValueError
    return hours


def _whole(value: Any, spec: Field) -> int:
    least = 1 if spec.type == "count" else 0
    if isinstance(value, float) and value.is_integer():
        value = int(value)  # JSON's 4.0 is 4
    if isinstance(value, bool) or not isinstance(value, int) or not least <= value <= spec.most:
        raise ValueError
    return value


def _flag(value: Any, spec: Field) -> bool:
    if not isinstance(value, bool):
        raise ValueError
    return value


def _choice(value: Any, spec: Field) -> str:
    if _text(value, spec) not in spec.of:
        raise ValueError
    return str(value)


def _references(value: Any, spec: Field) -> tuple[str, ...]:
    if not isinstance(value, list):
        raise ValueError
    return tuple(sorted({_text(to, spec) for to in value}))


_PLAIN: dict[str, Callable[[Any, Field], Any]] = {
    "text": _text,
    "moment": _text,
    "ref": _text,
    "money": _decimal,
    "hours": _hours,
    "fraction": _decimal,
    "count": _whole,
    "integer": _whole,
    "flag": _flag,
    "choice": _choice,
    "refs": _references,
}
