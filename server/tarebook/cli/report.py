"""Say what the car weighs now, how sure that is, how far it stands from the minimum, and where the weight is.

Text for 80 columns, the same as JSON for a program, or a line for each part as CSV for a spreadsheet.
"""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from typing import TYPE_CHECKING

from tarebook.cli.arguments import add_car, add_data

if TYPE_CHECKING:
    from tarebook.garage.records import Records

HELP = "what the car weighs now, as text, JSON or CSV"
EXAMPLES = (
    "tarebook report",
    "tarebook report --demo",
    "tarebook report --format csv > parts.csv",
    "tarebook report --trim road --format json",
)


def add_options(parser: ArgumentParser) -> None:
    parser.add_argument("--demo", action="store_true", help="of the demo garage, without serving it")
    parser.add_argument("--format", choices=("text", "json", "csv"), default="text", help="default: text")
    trims = "the car as it competes, or as it drives home (default: event)"
    parser.add_argument("--trim", choices=("event", "road"), default="event", help=trims)
    add_car(parser)
    add_data(parser)


def run(options: Namespace) -> int:
    from tarebook.cli.words import plain_lines
    from tarebook.papers.report import report

    records, unproven = (_demo_records(), []) if options.demo else _records(options)
    text = report(records, options.format, options.car, options.trim, unproven)
    to_people = options.format == "text" or sys.stdout.isatty()
    sys.stdout.buffer.write((plain_lines(text) if to_people else text).encode())
    return 0


def _demo_records() -> Records:
    from tarebook.demo.scenario import with_photos

    return with_photos()


def _records(options: Namespace) -> tuple[Records, list[dict[str, str]]]:
    from tarebook.cli.garage import readable_garage

    with readable_garage(options) as garage:
        return garage.records(), garage.unproven()
