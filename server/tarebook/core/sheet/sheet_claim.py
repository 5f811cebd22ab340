"""What a worked-out piece is written down as: the claim of a part, so that it counts until somebody weighs it.

A claim is a rectangle: a value and how far it may be off. The piece's doubt is a standard deviation u, so the
half-width is √3 u, the rectangle that has the same u; to it comes what the claim lost in being rounded, and then it is
rounded up. So what is written down never claims to be surer than what was worked out.

The phone writes it down; here stands the twin that its vectors are written from.
"""

from dataclasses import dataclass
from math import sqrt

from tarebook.core.numbers.quantity import read_mass
from tarebook.core.numbers.shown import show_area, show_claim, show_guard
from tarebook.core.sheet.sheet import Piece, SheetMass
from tarebook.core.sheet.sheet_stock import MATERIALS

_FINER = 10.0  # a claim is kept to this part of what it is sure to


@dataclass(frozen=True, slots=True)
class Claim:
    """Fields of a part, as typed: `claim` and `claim_within` in a unit of mass, `claim_from` in words."""

    claim: str
    claim_within: str
    claim_from: str


def claim_of(piece: Piece, found: SheetMass, mass_unit: str, length_unit: str) -> Claim:
    """The claim for a part that is this piece."""
    half_width = sqrt(3.0) * found.mass.u
    claim = show_claim(found.mass.value, mass_unit, half_width / _FINER)
    lost = abs(read_mass(claim).value - found.mass.value)
    within = half_width + lost
    area = show_area(found.area.value, length_unit)
    return Claim(claim, show_guard(within, mass_unit, within / _FINER), f"{stock_words(piece)}, {area}")


def stock_words(piece: Piece) -> str:
    """What it is cut from: "1.5 mm aluminium", "20 gauge steel"."""
    known = MATERIALS.get(piece.material)
    thickness = f"{piece.gauge[1]} gauge" if piece.gauge else piece.thickness.reads if piece.thickness else ""
    return f"{thickness} {known.name if known else piece.material.strip() or 'sheet'}".strip()
