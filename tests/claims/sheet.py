"""What the vectors of core/sheet (with sheet_stock and polygon) run in Python."""

from dataclasses import asdict
from typing import Any

from tarebook.core import sheet_stock
from tarebook.core.sheet import sheet
from tarebook.core.sheet_piece import read_piece
from tests.plain import plain


def _tables(given: dict[str, Any]) -> Any:
    return {
        "materials": {name: asdict(material) for name, material in sheet_stock.MATERIALS.items()},
        "legal_ounces": plain(sheet_stock.LEGAL_OUNCES),
        "makers_inches": plain(sheet_stock.MAKERS_INCHES),
        "constants": [sheet_stock.OUNCES_FT2, sheet_stock.CONVENTION, sheet_stock.LEGAL_SHARE],
    }


CLAIMS = {"sheet.sheet": lambda given: plain(sheet(read_piece(given))), "sheet_stock.tables": _tables}
