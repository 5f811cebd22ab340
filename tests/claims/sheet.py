"""What the vectors of core/sheet (with the rooms about it, and worked_out) run in Python."""

from dataclasses import asdict
from typing import Any

from tarebook.core.garage.garage import read_garage
from tarebook.core.sheet import sheet_stock
from tarebook.core.sheet.sheet import SheetMass, sheet
from tarebook.core.sheet.sheet_claim import claim_of
from tarebook.core.sheet.sheet_corners import read_corners
from tarebook.core.sheet.sheet_piece import piece_of, read_piece
from tarebook.core.weighing.weighing import masses
from tarebook.core.weighing.worked_out import against, against_sentence
from tests.plain import plain


def _tables(given: dict[str, Any]) -> Any:
    return {
        "materials": {name: asdict(material) for name, material in sheet_stock.MATERIALS.items()},
        "legal_ounces": plain(sheet_stock.LEGAL_OUNCES),
        "makers_inches": plain(sheet_stock.MAKERS_INCHES),
        "constants": [sheet_stock.OUNCES_FT2, sheet_stock.CONVENTION, sheet_stock.LEGAL_SHARE],
    }


def _claim_of(given: dict[str, Any]) -> Any:
    piece = read_piece(given["piece"])
    found = sheet(piece)
    assert isinstance(found, SheetMass)
    return plain(claim_of(piece, found, given["mass_unit"], given["length_unit"]))


def _of_records(given: dict[str, Any]) -> Any:
    """Every sheet of a garage, as it is read from the records."""
    garage = read_garage(given)
    of = {each.id: sheet(piece_of(each, garage.holes_of.get(each.id, []))) for each in garage.sheets.values()}
    return plain({"sheets": of, "warnings": garage.warnings})


def _against(given: dict[str, Any]) -> Any:
    garage = read_garage(given["garage"])
    known = masses(garage)
    found = {part.id: against(part, known.of[part.id]) for part in garage.parts.values()}
    return {
        name: {**plain(each), "said": against_sentence(each, given["unit"])} if each else None
        for name, each in found.items()
    }


CLAIMS = {
    "sheet.sheet": lambda given: plain(sheet(read_piece(given))),
    "sheet_piece.of_records": _of_records,
    "sheet_corners.read_corners": lambda given: plain(read_corners(given["text"])),
    "sheet_claim.claim_of": _claim_of,
    "sheet_stock.tables": _tables,
    "worked_out.against": _against,
}
