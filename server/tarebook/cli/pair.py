"""Let a phone join the garage: shows a QR and a short code that work once, for five minutes.

Scan the QR inside the installed app, or type the code there. The phone then shows two words; say yes here only if they
are the same. Before tarebook serve --lan was ever used there is no address for phones, and with --here it is not about
one: then a link is printed that joins a browser on this computer.
"""

from __future__ import annotations

import sys
import time
from argparse import ArgumentParser, Namespace
from typing import TYPE_CHECKING

from tarebook.cli.arguments import add_data, add_port

if TYPE_CHECKING:
    from tarebook.cli.garage import OpenGarage
    from tarebook.devices.joining import Waiting
    from tarebook.devices.pairing import Invitation

HELP = "let a phone join the garage, or a browser on this computer"
EXAMPLES = ("tarebook pair", "tarebook pair --here")

_LOOK_EVERY_SECONDS = 0.5


def add_options(parser: ArgumentParser) -> None:
    parser.add_argument("--here", action="store_true", help="print a link for a browser on this computer")
    add_port(parser, "port that tarebook serve listens on, for that link")
    add_data(parser)


def run(options: Namespace) -> int:
    from tarebook.cli.garage import existing_garage

    with existing_garage(options) as garage:
        origin = None if options.here else _origin(garage)
        return _phone(garage, origin) if origin else _browser(garage, options)


def _origin(garage: OpenGarage) -> str | None:
    from tarebook.store import house

    with garage.database.read() as session:
        return house.origin(session)


def _browser(garage: OpenGarage, options: Namespace) -> int:
    from tarebook.cli.links import pairing_link

    print(pairing_link(garage, options.port or garage.settings.port))
    if not options.here:
        print("That is for a browser on this computer. Phones come with tarebook serve --lan.", file=sys.stderr)
    return 0


def _phone(garage: OpenGarage, origin: str) -> int:
    from tarebook.devices import pairing, qr

    with garage.database.write() as session:
        invitation = pairing.invite(session, garage.id)
    link = f"{origin}/#pair={invitation.full}"
    qr.write_to(sys.stdout, link)
    print(f"Scan this inside the app on the phone, or type there: {invitation.short}")
    print(f"It works once, for five minutes. The link in it: {link}")
    print("Waiting for the phone; Ctrl-C gives up.", flush=True)
    try:
        asking = _first_to_ask(garage, invitation)
    finally:
        _withdraw(garage, invitation)
    if asking is None:
        print("Nobody came. Run it again for a fresh code.")
        return 1
    return _decide(garage, asking)


def _withdraw(garage: OpenGarage, invitation: Invitation) -> None:
    """A code that nobody waits for any more lets nobody in."""
    from tarebook.devices import pairing

    with garage.database.write() as session:
        pairing.withdraw(session, garage.id, invitation.id)


def _first_to_ask(garage: OpenGarage, invitation: Invitation) -> Waiting | None:
    from tarebook.devices import joining

    end = time.monotonic() + invitation.seconds
    while time.monotonic() < end:
        with garage.database.read() as session:
            found = joining.waiting(session, garage.id, invitation.id)
        if found:
            return found[0]
        time.sleep(_LOOK_EVERY_SECONDS)
    return None


def _decide(garage: OpenGarage, asking: Waiting) -> int:
    from tarebook.cli.words import is_yes, printable
    from tarebook.devices import joining

    print(f"“{printable(asking.name)}” asks to join. It must show these two words: {' '.join(asking.words)}")
    yes = is_yes("Does it show exactly these? [y/N] ")
    with garage.database.write() as session:
        joining.decide(session, garage.id, asking.id, yes)
    print("It is in, and fetches its key by itself." if yes else "It was not let in. Its code is used up.")
    return 0 if yes else 1
