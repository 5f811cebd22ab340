"""A piece of sheet from its records: as the garage keeps them, or as a form or a file gives them.

A given record: `{id, material, form, ...}` with `width` and `height`, `diameter`, or `corners` (text as in
`core/sheet/sheet_corners`, or [[x, y], ...]); `holes`, a list of such shapes, each with a `count`; `thickness` and
whether it was `measured`, or `gauge` with its `gauge_table`; `density_low` and `density_high` (kg/m³) instead of the
material's; `within`, how far a cut may be off.
"""

from collections.abc import Mapping, Sequence
from fractions import Fraction
from typing import Any

from tarebook.core.garage.records import Sheet, SheetHole
from tarebook.core.numbers.quantity import Quantity, read_length, read_number
from tarebook.core.numbers.typed import QuantityError
from tarebook.core.sheet.sheet import Piece
from tarebook.core.sheet.sheet_corners import read_corners, write_corners
from tarebook.core.sheet.sheet_outline import Shape
from tarebook.core.whole_car.fuel import Density

_SIZES = {"rectangle": ("width", "height"), "circle": ("diameter",), "polygon": ()}


def piece_of(sheet: Sheet, holes: Sequence[SheetHole] = ()) -> Piece:
    """The piece that records make. Raises `QuantityError` for a size that is missing or a corner nobody can read."""
    return Piece(
        id=sheet.id,
        material=sheet.material or "",
        outline=_shape(sheet, 0, 1),
        holes=tuple(_shape(hole, at, hole.count or 1) for at, hole in enumerate(holes, start=1)),
        density=_density(sheet.density_low, sheet.density_high),
        thickness=sheet.thickness,
        measured=bool(sheet.measured),
        gauge=(sheet.gauge_table or "msg", sheet.gauge) if sheet.gauge else None,
        within=sheet.within,
    )


def read_piece(record: Mapping[str, Any]) -> Piece:
    """The piece of a given record. Raises `QuantityError` for the first text that cannot be read."""
    form = _form(record)
    holes = [
        SheetHole(f"{record['id']}:{at}", record["id"], **_form(hole), count=hole.get("count"))
        for at, hole in enumerate(record.get("holes") or (), start=1)
    ]
    sheet = Sheet(
        id=record["id"],
        part="",
        material=record.get("material"),
        **form,
        thickness=_length(record, "thickness"),
        measured=record.get("measured"),
        gauge=record.get("gauge"),
        gauge_table=record.get("gauge_table"),
        density_low=_number(record, "density_low"),
        density_high=_number(record, "density_high"),
        within=_length(record, "within"),
    )
    return piece_of(sheet, holes)


def _shape(record: Sheet | SheetHole, at: int, count: int) -> Shape:
    """`at`: 0 for the outline, else the number of the hole."""
    form = record.form or "rectangle"
    corners = read_corners(record.corners or "") if form == "polygon" else ()
    sizes = tuple(_size(name, getattr(record, name), at) for name in _SIZES[form])
    return Shape(form=form, sizes=sizes, corners=corners, count=count)


def _size(name: str, size: Quantity | None, at: int) -> Quantity:
    if size is None:
        raise QuantityError("sheet_size_missing", size=name, shape=at, typed="", kind="length", example="300 mm")
    return size


def _form(record: Mapping[str, Any]) -> dict[str, Any]:
    form = record.get("form") or "rectangle"
    sizes = {name: _length(record, name) for name in _SIZES[form]}
    corners = record.get("corners") or ""
    text = corners if isinstance(corners, str) else write_corners((x or "", y or "") for x, y in corners)
    return {"form": form, **dict.fromkeys(("width", "height", "diameter")), **sizes, "corners": text}


def _length(record: Mapping[str, Any], name: str) -> Quantity | None:
    return read_length(record[name], positive=True) if record.get(name) else None


def _number(record: Mapping[str, Any], name: str) -> Fraction | None:
    return read_number(record[name]) if record.get(name) else None


def _density(low: Fraction | None, high: Fraction | None) -> Density | None:
    if low is None:
        return None if high is None else Density(float(high), float(high))
    return Density(float(low), float(low if high is None else high))
