"""A day as a sheet has it, as the day that is kept: 2026-09-12.

`12.9.2026` names the day first wherever it is written. `12/9/26` is read only where some date of the column, with a
number above 12, shows which comes first; otherwise it stays what was typed, in the note.
"""

import re
from collections.abc import Iterable
from datetime import date
from typing import Literal

Order = Literal["day", "month", ""]
_WRITTEN = re.compile(r"(\d{1,4})([-./])(\d{1,2})\2(\d{1,4})")


def order_in(cells: Iterable[str]) -> Order:
    """Which number comes first in the dates with slashes: what the sure ones say, where they agree."""
    found: set[Order] = set()
    for cell in cells:
        written = _WRITTEN.fullmatch(cell)
        if written and written[2] in "/-" and len(written[1]) < 3:
            first, second = int(written[1]), int(written[3])
            found |= {"day"} if first > 12 else {"month"} if second > 12 else set()
    return found.pop() if len(found) == 1 else ""


def day_of(text: str, order: Order) -> str | None:
    """The day in ISO 8601, or None when it is no date or could be two."""
    written = _WRITTEN.fullmatch(text)
    if written is None:
        return None
    numbers = int(written[1]), int(written[3]), int(written[4])
    if len(written[1]) == 4:
        year, month, day = numbers
    elif written[2] == "." or order == "day":
        day, month, year = numbers
    elif order == "month":
        month, day, year = numbers
    else:
        return None
    try:
        return date(year + 2000 if year < 100 else year, month, day).isoformat()
    except ValueError:
        return None
