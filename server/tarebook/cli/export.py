"""Write everything out: each record as it stands, the journal it comes from, and with --format zip the photos too.

The JSON is what `tarebook calc` reads, so any number can be computed again from the file alone. "-" writes to
standard output.
"""

from argparse import ArgumentParser, Namespace

from tarebook.cli.arguments import add_data

HELP = "write everything out, photos included"
EXAMPLES = (
    "tarebook export garage.json",
    "tarebook export --format zip garage.zip",
    "tarebook export - | tarebook calc standing",
)


def add_options(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="the file to write")
    form = "json, or zip with the photos (default: json)"
    parser.add_argument("--format", choices=("json", "zip"), default="json", help=form)
    add_data(parser)


def run(options: Namespace) -> int:
    from tarebook.cli.garage import readable_garage
    from tarebook.papers.takeout import write_takeout

    with readable_garage(options) as garage:
        missing = write_takeout(garage.database, garage.id, garage.settings.photos, options.file, options.format)
    if missing:
        print(f"Photos that have not arrived on this computer, and so are not in the file: {missing}.")
    return 0
