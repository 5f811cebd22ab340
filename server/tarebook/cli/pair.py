"""Print a fresh one-time link that joins a browser on this computer to the garage. It is good for ten minutes."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace

from tarebook.cli.arguments import add_data, add_port

HELP = "print a fresh link that joins a browser"
EXAMPLES = ("tarebook pair",)


def add_options(parser: ArgumentParser) -> None:
    add_port(parser, "port that tarebook serve listens on")
    add_data(parser)


def run(options: Namespace) -> int:
    from tarebook.cli.garage import existing_garage
    from tarebook.cli.links import pairing_link

    with existing_garage(options) as garage:
        print(pairing_link(garage, options.port or garage.settings.port))
    return 0
