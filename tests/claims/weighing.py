"""What the vectors of core/weighing (with scale and mean) run in Python."""

from typing import Any

from tarebook.core.garage.garage import read_garage
from tarebook.core.weighing.weighing import masses
from tests.plain import plain


def _masses(given: dict[str, Any]) -> Any:
    garage = read_garage(given)
    known = masses(garage)
    return plain({"scales": known.scales, "of": known.of, "warnings": garage.warnings})


CLAIMS = {"weighing.masses": _masses}
