"""Bring the garage back from a backup that tarebook backup made. The server must be stopped for it.

The backup is proven before anything is touched. The database that was there is put aside, not deleted. Phones notice by
themselves and send again everything they hold, so what was recorded since the backup comes back with them.
"""

from argparse import ArgumentParser, Namespace
from pathlib import Path

from tarebook.cli.arguments import add_data

HELP = "bring the garage back from a backup"
EXAMPLES = ("tarebook restore garage-backup.zip",)


def add_options(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="a backup")
    add_data(parser)


def run(options: Namespace) -> int:
    from tarebook.cli.garage import settings_of
    from tarebook.store.restore import restore

    settings = settings_of(options)
    done = restore(settings, Path(options.file))
    when = done.made_at[:16].replace("T", " ")
    print(f"Restored as of {when} UTC: {done.entries} entries, {done.photos} photos.")
    if done.aside:
        print(f"The database that was there is in {done.aside}.")
    print("Phones send what they recorded since by themselves. tarebook devices lists who may read and write again.")
    return 0
