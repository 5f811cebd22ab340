"""Take in a spreadsheet saved as CSV: one line for each thing that came off, went on, or was swapped.

Columns are found by their header, in any order: part, off, on, unit, quantity, stage, zone, hours, money, note.
Masses are of one piece, typed as you like ("6 3/8 oz", "3 lb 4.5 oz"); a bare number takes the unit column's.
A line that cannot be read is reported with its number, and the others go in. Importing a file again adds only
the lines that are new or corrected.
"""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import TYPE_CHECKING

from tarebook.cli.arguments import add_car, add_data

if TYPE_CHECKING:
    from tarebook.importing.run import Bad, Taken

HELP = "take in a spreadsheet saved as CSV"
EXAMPLES = (
    "tarebook import parts.csv",
    "tarebook import --strict parts.csv      nothing at all when a line cannot be read",
)


def add_options(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE.csv", help="commas, semicolons or tabs; UTF-8 or Western")
    parser.add_argument("--strict", action="store_true", help="take in nothing when any line cannot be read")
    add_car(parser)
    add_data(parser)


def run(options: Namespace) -> int:
    from tarebook.cli.garage import prepared_garage
    from tarebook.importing.records import place_for
    from tarebook.importing.run import take_in

    path = Path(options.file)
    with prepared_garage(options) as garage:
        place = place_for(garage.records(deleted=True), options.car, path.name)
        teller = _Teller()
        taken = take_in(garage.database, garage.id, path, place, options.strict, teller)
    teller.clear()
    nothing = taken.bad > 0 and not taken.added + taken.known
    print(
        f"{taken.added} of {taken.lines} lines taken in, {taken.known} known already, {taken.bad} not readable."
        + (" Nothing was taken in." if nothing else "")
    )
    return int(nothing)


class _Teller:
    """Bad lines on stderr as they are met; on a terminal, how far it has got."""

    def __init__(self) -> None:
        self._moving = sys.stderr.isatty()

    def bad_line(self, bad: Bad) -> None:
        self.clear()
        where = f"line {bad.number}, {bad.column}" if bad.column else f"line {bad.number}"
        print(f"{where}: {bad.sentence} {bad.do}", file=sys.stderr)

    def progress(self, taken: Taken) -> None:
        self.clear()
        if self._moving:
            print(f"{taken.lines} lines", end="", flush=True, file=sys.stderr)

    def clear(self) -> None:
        if self._moving:
            print("\r\033[K", end="", flush=True, file=sys.stderr)
