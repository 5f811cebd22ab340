"""Take in a spreadsheet saved as CSV, or the file an app has exported.

A spreadsheet has one line for each thing that came off, went on, or was swapped.
Columns are found by their header, in any order: part, off, on, unit, quantity, stage, zone, hours, money, note.
Masses are of one piece, typed as you like ("6 3/8 oz", "3 lb 4.5 oz"); a bare number takes the unit column's.
A line that cannot be read is reported with its number, and the others go in. Importing a file again adds only
the lines that are new or corrected.

Of an app's export, records of a device that is not on the list are kept apart, set aside, until someone looks at them
in the app and takes them in, one by one or all at once; photos are proven by their hash.
"""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import TYPE_CHECKING

from tarebook.cli.arguments import add_car, add_data
from tarebook.cli.words import plain_lines

if TYPE_CHECKING:
    from tarebook.importing.app_export import Item
    from tarebook.importing.run import Bad, Taken

HELP = "take in a spreadsheet, or what an app has exported"
EXAMPLES = (
    "tarebook import parts.csv",
    "tarebook import --strict parts.csv      nothing at all when a line cannot be read",
    "tarebook import tarebook-export.json    what a phone could not send",
)


def add_options(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="commas, semicolons or tabs, UTF-8 or Western; or an app's export")
    parser.add_argument("--strict", action="store_true", help="take in nothing when any line cannot be read")
    add_car(parser)
    add_data(parser)


def run(options: Namespace) -> int:
    from tarebook.importing.app_export import is_app_export

    path = Path(options.file)
    return _app_export(options, path) if is_app_export(path) else _sheet(options, path)


def _app_export(options: Namespace, path: Path) -> int:
    from tarebook.cli.garage import prepared_garage
    from tarebook.importing.rescue import rescue
    from tarebook.store.photos import Photos

    with prepared_garage(options) as garage:
        photos = Photos(garage.settings, garage.database)
        done = rescue(garage.database, garage.id, photos, path, options.strict, _tell_bad)
    print(f"{done.used} records taken in, {done.aside} set aside, {done.known} known already.")
    print(f"{done.photos} photos taken in, {done.photos_known} known already. {done.bad} lines not readable.")
    if done.aside:
        print("What is set aside stands in the app under Records: look at it there, and take it in or leave it.")
    return int(done.bad > 0 and not done.used + done.aside + done.known)


def _tell_bad(item: Item) -> None:
    from tarebook.errors import describe

    said = describe(item.fault or "", item.data)
    print(plain_lines(f"line {item.line}: {said['sentence']} {said['do']}"), file=sys.stderr)


def _sheet(options: Namespace, path: Path) -> int:
    from tarebook.cli.garage import prepared_garage
    from tarebook.importing.records import place_for
    from tarebook.importing.run import take_in

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
        print(plain_lines(f"{where}: {bad.sentence} {bad.do}"), file=sys.stderr)

    def progress(self, taken: Taken) -> None:
        self.clear()
        if self._moving:
            print(f"{taken.lines} lines", end="", flush=True, file=sys.stderr)

    def clear(self) -> None:
        if self._moving:
            print("\r\033[K", end="", flush=True, file=sys.stderr)
