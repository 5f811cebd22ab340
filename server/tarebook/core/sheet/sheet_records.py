"""The records of parts cut from sheet and of their holes, as `core/garage/records` has all others."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from tarebook.core.numbers.quantity import Quantity


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
