"""List the devices that may read and write the garage, name one, take one off for good, or take back what it sent.

A device is named by its id or, where only one has it, by its name. One that was taken off keeps its records and may be
paired again; what it has sent stays in the garage, and what it still holds comes in set aside.

take-back makes the records on every phone what they would be without what a device has sent, and lists them first.
What others have worked on stays, no byte is dropped, and give-back undoes it.
"""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from collections.abc import Sequence
from datetime import UTC, datetime
from typing import TYPE_CHECKING, TypeVar

from tarebook.cli.arguments import add_data

if TYPE_CHECKING:
    from sqlalchemy.orm import Session

    from tarebook.cli.garage import OpenGarage
    from tarebook.store.models import DeviceRow
    from tarebook.store.restore import Phone

Named = TypeVar("Named", "DeviceRow", "Phone")
HELP = "list the paired devices, name one, take one off, or take back what it sent"
EXAMPLES = (
    "tarebook devices",
    "tarebook devices rename 3f9c0a52d1e7b846 'The phone in the shed'",
    "tarebook devices revoke 3f9c0a52d1e7b846",
    "tarebook devices take-back 3f9c0a52d1e7b846 --since 2026-05-02T14:00",
    "tarebook devices give-back 3f9c0a52d1e7b846",
)


def add_options(parser: ArgumentParser) -> None:
    add_data(parser)
    actions = parser.add_subparsers(metavar="rename | revoke | take-back | give-back", dest="action")
    rename = actions.add_parser("rename", help="give a device another name")
    revoke = actions.add_parser("revoke", help="take a device off the list for good")
    take_back = actions.add_parser("take-back", help="undo what a device has sent")
    give_back = actions.add_parser("give-back", help="undo all that was taken back from a device")
    for action in (rename, revoke, take_back, give_back):
        action.add_argument("device", metavar="DEVICE", help="its id, or its name where only one has it")
    rename.add_argument("name", metavar="NAME", help="up to 80 characters")
    since = "only what arrived since, as 2026-05-02T14:00, in this computer's time (default: all it ever sent)"
    take_back.add_argument("--since", type=moment, metavar="WHEN", help=since)
    for action in (take_back, give_back):
        action.add_argument("--yes", action="store_true", help="do it without asking")


def moment(text: str) -> str:
    """A date or time of this computer's clock, as the journal writes moments. Raises ValueError."""
    return datetime.fromisoformat(text).astimezone(UTC).isoformat(timespec="milliseconds")


# argparse names the type in its message: "invalid date or time value: 'x'"
moment.__name__ = "date or time"


def run(options: Namespace) -> int:
    from tarebook.cli.garage import existing_garage, readable_garage

    opened = existing_garage if options.action else readable_garage
    with opened(options) as garage:
        if options.action in ("take-back", "give-back"):
            return _take_or_give_back(garage, options)
        if options.action:
            _change(garage, options)
        else:
            _list(garage)
    return 0


def _change(garage: OpenGarage, options: Namespace) -> None:
    from tarebook.devices import tokens

    with garage.database.write() as session:
        device = _found(session, garage.id, options.device)
        if options.action == "rename":
            tokens.rename(session, garage.id, device.id, options.name)
            print(f"{device.id} is called {_name(device)} now.")
        else:
            tokens.revoke(session, garage.id, device.id)
            print(f"{device.id}, {_name(device)}, is taken off the list.")


def _take_or_give_back(garage: OpenGarage, options: Namespace) -> int:
    from tarebook.cli import taking_back

    with garage.database.read() as session:
        device = _found(session, garage.id, options.device)
        session.expunge(device)
    if options.action == "take-back":
        return taking_back.take(garage, device, options.since or "", options.yes)
    return taking_back.give(garage, device, options.yes)


def _found(session: Session, garage: str, asked: str) -> DeviceRow:
    from tarebook.devices import tokens
    from tarebook.errors import TarebookError

    found = named(tokens.listing(session, garage), asked)
    if found is None:
        raise TarebookError("device_unknown")
    return found


def named(rows: Sequence[Named], asked: str) -> Named | None:
    """The one with this id, or else with this name. Raises `device_unclear` when several have it."""
    from tarebook.errors import TarebookError

    found = [row for row in rows if row.id == asked] or [row for row in rows if row.name == asked]
    if len(found) > 1:
        raise TarebookError("device_unclear", name=asked)
    return found[0] if found else None


def _list(garage: OpenGarage) -> None:
    from tarebook.devices import tokens

    with garage.database.read() as session:
        rows = tokens.listing(session, garage.id)
    if not rows:
        print("No device is paired yet. tarebook pair lets one in.")
    for row in rows:
        print(f"{row.id}  {_name(row)}  paired {row.paired_at[:10]}, {_state(row)}")


def _name(row: DeviceRow) -> str:
    from tarebook.cli.words import printable

    return printable(row.name)


def _state(row: DeviceRow) -> str:
    if row.revoked_at:
        return f"taken off {row.revoked_at[:10]}"
    return f"last seen {row.last_seen[:16].replace('T', ' ')} UTC"
