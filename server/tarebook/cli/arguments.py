"""The parser: what all commands share, and one place that lists them."""

import argparse
from importlib import import_module

from tarebook.version import __version__

# Command → its module; the order is that of --help.
COMMANDS = {
    "serve": "serve",
    "pair": "pair",
    "devices": "devices",
    "authority": "authority",
    "import": "take_in",
    "report": "report",
    "calc": "calc",
    "export": "export",
    "backup": "backup",
    "restore": "restore",
    "rebuild": "rebuild",
    "doctor": "doctor",
}

_ABOUT = "What a car weighs now, how sure that is, and how far it stands from its class minimum."
_EXAMPLES = """examples:
  tarebook serve --demo          a filled garage to look around in, thrown away at the end
  tarebook serve                 your own garage, at http://localhost:8017
  tarebook import parts.csv      take in the spreadsheet you have
  tarebook report                what the car weighs now, as text
  tarebook COMMAND --help        more of each command"""


def build_parser() -> argparse.ArgumentParser:
    """The whole command line; the options parsed carry the command's `run`."""
    shape = argparse.RawDescriptionHelpFormatter
    parser = argparse.ArgumentParser("tarebook", description=_ABOUT, epilog=_EXAMPLES, formatter_class=shape)
    parser.add_argument("--version", action="version", version=f"tarebook {__version__}")
    commands = parser.add_subparsers(title="commands", metavar="COMMAND", required=True)
    for name, module_name in COMMANDS.items():
        module = import_module(f"tarebook.cli.{module_name}")
        examples = "examples:\n" + "\n".join(f"  {line}" for line in module.EXAMPLES)
        command = commands.add_parser(
            name, help=module.HELP, description=module.__doc__, epilog=examples, formatter_class=shape
        )
        module.add_options(command)
        command.set_defaults(run=module.run)
    return parser


def add_data(parser: argparse.ArgumentParser) -> None:
    """`--data`, for every command that opens a garage."""
    where = "folder of the database and the photos (default: TAREBOOK_DATA, else your user data folder)"
    parser.add_argument("--data", metavar="DIR", help=where)


def add_car(parser: argparse.ArgumentParser) -> None:
    """`--car`, where a garage may have several."""
    parser.add_argument("--car", metavar="NAME", help="which car, when the garage has several")


def add_port(parser: argparse.ArgumentParser, text: str) -> None:
    """`--port`, a whole number a port can have."""
    parser.add_argument("--port", type=port_number, metavar="N", help=text)


def port_number(text: str) -> int:
    number = int(text)
    if not 0 <= number <= 65535:
        raise ValueError
    return number


# argparse names the type in its message: "invalid port number value: 'x'"
port_number.__name__ = "port number"
