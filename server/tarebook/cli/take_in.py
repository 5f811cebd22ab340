"""Take in a spreadsheet saved as CSV, or a file that an app or tarebook export has written.

A spreadsheet has one line for each thing that came off, went on, or was swapped.
Columns are found by their headings, in any order: part, off, on, unit, quantity, stage, zone, hours, money, note, date,
scale, basis, and what people usually call them; a column "weight" is what came off. Masses are of one piece, typed as
you like ("6 3/8 oz", "3 lb 4.5 oz"); a bare number takes the unit of its heading or of the unit column. What the sheet
calls weighed comes in as weighed. First it says what it would do with every line, and asks; a backup stands before it.
A line that cannot be read is named with its number, and the others go in. A file that comes again brings only what is
new or corrected, and --undo takes back what one import brought.

Of an app's export, records of a device that is not on the list are kept apart, set aside, until someone looks at them
in the app and takes them in, one by one or all at once; photos are proven by their hash.
"""

from __future__ import annotations

import shlex
import sys
from argparse import ArgumentParser, Namespace
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from tarebook.cli.arguments import add_car, add_data
from tarebook.cli.words import plain_lines

if TYPE_CHECKING:
    from tarebook.cli.garage import OpenGarage
    from tarebook.importing.app_export import Item
    from tarebook.importing.line import Way
    from tarebook.importing.run import Plan
    from tarebook.importing.sheet import Sheet

HELP = "take in a spreadsheet, or what an app has exported"
EXAMPLES = (
    "tarebook import parts.csv               what it would do; then it asks",
    "tarebook import --yes parts.csv         without asking",
    "tarebook import --undo parts.csv        take back what the last import of parts.csv brought",
    "tarebook import tarebook-export.json    what a phone could not send",
)

_QUESTION = "Take this in? [y/N] "


def add_options(parser: ArgumentParser) -> None:
    kinds = "commas, semicolons, tabs or bars between cells, UTF-8, UTF-16 or Western; or an export"
    parser.add_argument("file", metavar="FILE", help=kinds)
    parser.add_argument("--yes", action="store_true", help="take it in without asking")
    parser.add_argument("--undo", action="store_true", help="take back what the last import of FILE brought")
    parser.add_argument("--strict", action="store_true", help="take in nothing when any line cannot be read")
    beside = "lines that would correct earlier ones are other things of the same name"
    parser.add_argument("--beside", action="store_true", help=beside)
    marks = "what stands before decimals, where the file leaves it open"
    parser.add_argument("--decimals", choices=("comma", "point"), help=marks)
    parser.add_argument("--unit", default="", help="the unit of numbers that have none anywhere, such as kg")
    weights = "what a column that only says weight is: what came off (the default) or what went on"
    parser.add_argument("--weights", choices=("off", "on"), default="off", help=weights)
    add_car(parser)
    add_data(parser)


def run(options: Namespace) -> int:
    from tarebook.importing.app_export import is_app_export
    from tarebook.importing.home_export import is_home_export

    path = Path(options.file)
    if options.undo:
        return _undo(options, path)
    return _export(options, path) if is_home_export(path) or is_app_export(path) else _sheet(options, path)


def _export(options: Namespace, path: Path) -> int:
    from tarebook.cli.garage import prepared_garage
    from tarebook.importing.home_export import is_home_export, make_home
    from tarebook.importing.rescue import rescue
    from tarebook.store.photos import Photos

    with prepared_garage(options) as garage:
        taker = garage.id
        if is_home_export(path):
            print(plain_lines(f"{path.name} is all of a garage, which tarebook export has written."))
            _ask(options)
            taker = make_home(garage.database, garage.id, path)
        _back_up(garage, taker)
        photos = Photos(garage.settings, garage.database)
        done = rescue(garage.database, taker, photos, path, options.strict, _tell_bad)
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
    from tarebook.cli.import_words import bad_lines, plan_lines

    with prepared_garage(options) as garage:
        plan = _looked_at(options, path, garage)
        print(plain_lines("\n".join(plan_lines(plan))))
        for line in bad_lines(plan):
            print(plain_lines(line), file=sys.stderr)
        _check_strict(options, plan)
        if plan.matched.new or plan.matched.corrected:
            _ask(options)
            _take_in(garage, plan)
            return 0
    print("There is nothing new in it.")
    return int(bool(plan.reading.bad) and not plan.matched.same)


def _looked_at(options: Namespace, path: Path, garage: OpenGarage) -> Plan:
    from tarebook.importing.records import place_for
    from tarebook.importing.run import look_at
    from tarebook.importing.sheet import read_sheet

    place = place_for(garage.records(deleted=True), options.car, path.name)
    sheet = read_sheet(path, options.decimals, options.unit)
    plain: Way = "on" if options.weights == "on" or _only_on(sheet) else "off"
    return look_at(garage.database, garage.id, sheet, place, plain, options.beside)


def _only_on(sheet: Sheet) -> bool:
    """Whether a sheet has a column of what went on and none of what came off."""
    return bool(sheet.header.named("on")) and not sheet.header.named("off")


def _check_strict(options: Namespace, plan: Plan) -> None:
    from tarebook.errors import TarebookError

    if options.strict and plan.reading.bad:
        raise TarebookError("import_strict", bad=len(plan.reading.bad), lines=plan.sheet.lines)


def _ask(options: Namespace) -> None:
    """Raises `import_unasked` unless somebody says yes."""
    from tarebook.errors import TarebookError

    if not options.yes and not (sys.stdin.isatty() and _answer() in ("y", "yes")):
        raise TarebookError("import_unasked")


def _answer() -> str:
    try:
        return input(_QUESTION).strip().lower()
    except EOFError:
        print()
        return ""


def _take_in(garage: OpenGarage, plan: Plan) -> None:
    from tarebook.importing.run import take_in

    _back_up(garage, garage.id)
    moving = sys.stderr.isatty()

    def progress(done: int) -> None:
        print(f"\r\033[K{done} lines", end="", flush=True, file=sys.stderr) if moving else None

    take_in(garage.database, garage.id, plan, progress)
    if moving:
        print("\r\033[K", end="", flush=True, file=sys.stderr)
    new, corrected = len(plan.matched.new), len(plan.matched.corrected)
    print(f"{new} lines taken in, {corrected} corrected.")
    print(plain_lines(f"To take it back: tarebook import --undo {shlex.quote(plan.place.file)}"))


def _back_up(garage: OpenGarage, name: str) -> None:
    """A backup among those that serving makes, unless there is nothing yet to lose."""
    from tarebook.store import garages
    from tarebook.store.backup import back_up_daily

    with garage.database.read() as session:
        if not garages.get(session, name).head:
            return
    made = back_up_daily(garage.settings, garage.database, datetime.now(UTC))
    print(plain_lines(f"The backup before it: {made.file}"))


def _undo(options: Namespace, path: Path) -> int:
    from tarebook.cli.garage import existing_garage
    from tarebook.cli.import_words import undone_lines
    from tarebook.errors import TarebookError
    from tarebook.importing.earlier import file_of, read_earlier
    from tarebook.importing.undo import undo

    with existing_garage(options) as garage:
        with garage.database.read() as session:
            earlier = read_earlier(session, garage.id)
        names = earlier.of_file(path.name)
        if not names:
            files = ", ".join(dict.fromkeys(map(file_of, earlier.imports))) or "none"
            raise TarebookError("import_not_found", file=path.name, imports=files)
        _back_up(garage, garage.id)
        with garage.database.write() as session:
            done = undo(session, garage.id, names[-1])
    print(plain_lines("\n".join(undone_lines(done))))
    return 0
