"""The corners of an outline as one text, as the journal keeps them: "0 mm, 0 mm; 300 mm, 0 mm; 300 mm, 200 mm".

A corner is how far across and how far up, with a comma between; corners are parted by semicolons or stand on lines of
their own. Each number is read exactly and has its unit, for no unit can be understood of a text that outlives it.
"""

import re
from collections.abc import Iterable

from tarebook.core.numbers.quantity import Quantity, read_position
from tarebook.core.numbers.typed import LONGEST, QuantityError

Corner = tuple[Quantity, Quantity]

_BETWEEN = re.compile("[;\n]")


def read_corners(text: str) -> tuple[Corner, ...]:
    """The corners in the order they are drawn. Raises `QuantityError` that names the first one it cannot read."""
    texts = [each.strip() for each in _BETWEEN.split(text)]
    return tuple(_corner(at, each) for at, each in enumerate((each for each in texts if each), start=1))


def write_corners(corners: Iterable[tuple[str, str]]) -> str:
    """The text of typed corners (across, up)."""
    return "; ".join(f"{across.strip()}, {up.strip()}" for across, up in corners)


def _corner(number: int, text: str) -> Corner:
    sizes = text.split(",")
    try:
        across, up = (read_position(size) for size in sizes)
    except (QuantityError, ValueError):
        raise QuantityError(
            "sheet_corner", corner=number, typed=text[:LONGEST], kind="length", example="300 mm, 200 mm"
        ) from None
    return across, up
