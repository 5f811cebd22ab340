"""List the devices that may read and write the garage, or take one off for good.

A device that was taken off keeps its records and may be paired again; what it has sent stays in the garage.
"""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from typing import TYPE_CHECKING

from tarebook.cli.arguments import add_data

if TYPE_CHECKING:
    from tarebook.cli.garage import OpenGarage
    from tarebook.store.models import DeviceRow

HELP = "list the paired devices, or take one off"
EXAMPLES = ("tarebook devices", "tarebook devices revoke 3f9c0a52d1e7b846")


def add_options(parser: ArgumentParser) -> None:
    add_data(parser)
    actions = parser.add_subparsers(metavar="revoke", dest="action")
    revoke = actions.add_parser("revoke", help="take a device off the list for good")
    revoke.add_argument("device", metavar="DEVICE", help="as the list names it")


def run(options: Namespace) -> int:
    from tarebook.cli.garage import existing_garage

    with existing_garage(options) as garage:
        if options.action == "revoke":
            _revoke(garage, options.device)
        else:
            _list(garage)
    return 0


def _revoke(garage: OpenGarage, name: str) -> None:
    from tarebook.devices import tokens

    with garage.database.write() as session:
        tokens.revoke(session, garage.id, name)
    print(f"{name} is taken off the list.")


def _list(garage: OpenGarage) -> None:
    from tarebook.devices import tokens

    with garage.database.read() as session:
        rows = tokens.listing(session, garage.id)
    if not rows:
        print("No device is paired yet. tarebook pair prints a link for one.")
    for row in rows:
        print(f"{row.id}  {row.name}  paired {row.paired_at[:10]}, {_state(row)}")


def _state(row: DeviceRow) -> str:
    if row.revoked_at:
        return f"taken off {row.revoked_at[:10]}"
    return f"last seen {row.last_seen[:16].replace('T', ' ')} UTC"
