"""A piece of sheet as a form or a file gives it, read: typed lengths become quantities, drawn corners too.

A record: `{id, material, form, ...}` with `width` and `height`, `diameter`, or `corners` ([[x, y], ...]); `holes`, a
list of such shapes, each with a `count`; `thickness` and whether it was `measured`, or `gauge` with its `gauge_table`;
`density_low` and `density_high` (kg/m³) instead of the material's; `within`, how far a cut may be off.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from tarebook.core.fuel import Density
from tarebook.core.quantity import Quantity, read_length, read_number, read_position
from tarebook.core.sheet import Piece, Shape

_SIZES = {"rectangle": ("width", "height"), "circle": ("diameter",), "polygon": ()}


def read_piece(record: Mapping[str, Any]) -> Piece:
    """The piece of a record. Raises `QuantityError` for the first text that cannot be read."""
    return Piece(
        id=record["id"],
        material=record.get("material") or "",
        outline=_shape(record),
        holes=tuple(_shape(hole) for hole in record.get("holes") or ()),
        density=_density(record),
        thickness=_length(record, "thickness") if record.get("thickness") else None,
        measured=bool(record.get("measured")),
        gauge=(record.get("gauge_table") or "msg", record["gauge"]) if record.get("gauge") else None,
        within=_length(record, "within") if record.get("within") else None,
    )


def _shape(record: Mapping[str, Any]) -> Shape:
    form = record.get("form") or "rectangle"
    corners = record.get("corners") or () if form == "polygon" else ()
    return Shape(
        form=form,
        sizes=tuple(_length(record, name) for name in _SIZES[form]),
        corners=tuple((read_position(x), read_position(y)) for x, y in corners),
        count=record.get("count") or 1,
    )


def _length(record: Mapping[str, Any], name: str) -> Quantity:
    return read_length(record.get(name) or "", positive=True)


def _density(record: Mapping[str, Any]) -> Density | None:
    low, high = record.get("density_low"), record.get("density_high")
    if not low and not high:
        return None
    return Density(float(read_number(low or high or "")), float(read_number(high or low or "")))
