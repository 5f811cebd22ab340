"""Say what the car weighs now, how sure that is, how far from the minimum, and where the weight is."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace

from tarebook.cli.arguments import add_data

HELP = "what the car weighs now, as text, JSON or CSV"
EXAMPLES = ("tarebook report", "tarebook report --demo")


def add_options(parser: ArgumentParser) -> None:
    add_data(parser)


def run(options: Namespace) -> int:
    raise NotImplementedError
