"""Serve the garage to the browser of this computer, and with --lan to phones on the home network, until Ctrl-C.

The database and the photos live in your user data folder, or where --data or TAREBOOK_DATA says. Without --lan nobody
but this computer is answered. Phones need HTTPS with a certificate they trust: --lan makes one and says how a phone
comes to trust it, or takes your own. --demo opens a filled garage on a port of its own and throws it away at the end.
"""

from __future__ import annotations

import os
import shutil
import signal
import sys
import tempfile
import webbrowser
from argparse import ArgumentParser, Namespace
from collections.abc import Iterator
from contextlib import contextmanager, nullcontext
from dataclasses import replace
from ipaddress import ip_address
from pathlib import Path
from typing import TYPE_CHECKING

from tarebook.cli import lan
from tarebook.cli.arguments import add_data, add_port

if TYPE_CHECKING:
    from tarebook.cli.garage import OpenGarage
    from tarebook.cli.server import House
    from tarebook.settings import Settings

HELP = "serve the garage to this computer's browser, and to phones"
EXAMPLES = (
    "tarebook serve",
    "tarebook serve --lan",
    "tarebook serve --lan --name garage.example.net --cert fullchain.pem --key key.pem",
    "tarebook serve --demo",
    "tarebook serve --port 9000 --data ~/cars --no-browser",
)

_DEMO_PORT = 8018


def add_options(parser: ArgumentParser) -> None:
    kinds = parser.add_mutually_exclusive_group()
    kinds.add_argument("--demo", action="store_true", help="a filled garage that is thrown away at the end")
    kinds.add_argument("--lan", action="store_true", help="serve phones on the home network too")
    add_port(parser, f"port to listen on (default: 8017, with --demo {_DEMO_PORT}); 0 takes any free one")
    parser.add_argument("--host", metavar="ADDRESS", help="loopback address to listen on (default: 127.0.0.1)")
    parser.add_argument("--no-browser", action="store_true", help="do not open the browser")
    add_data(parser)
    lan.add_options(parser)


def run(options: Namespace) -> int:
    from tarebook.cli.server import serve

    signal.signal(signal.SIGTERM, lambda *_: sys.exit(0))
    try:
        with _settings(options) as settings, _folder_held(settings):
            house = _house(settings)
            words, opens = _announcement(settings, house.entrances[0].port)
            phones = _phones(options, house)
            to_open = None if options.no_browser else opens
            serve(_with_backups(phones.house), lambda: _ready(words + phones.words, phones.door, to_open))
    except KeyboardInterrupt:
        pass
    return 0


def _house(settings: Settings) -> House:
    """For this computer alone."""
    from tarebook.cli.entrance import Entrance, claimed
    from tarebook.cli.server import House

    listening = claimed(settings.host, settings.port, "--port")
    return House(settings, [Entrance("home", listening.getsockname()[1], [listening])])


def _with_backups(house: House) -> House:
    from tarebook.cli.daily import DailyBackups

    return house if house.settings.demo else replace(house, alongside=[*house.alongside, DailyBackups(house.settings)])


def _phones(options: Namespace, house: House) -> lan.Lan:
    from tarebook.cli.garage import garage_in

    if not options.lan:
        return lan.Lan(house, "")
    with garage_in(house.settings) as garage:
        return lan.with_phones(options, house, garage.database)


@contextmanager
def _settings(options: Namespace) -> Iterator[Settings]:
    from tarebook.cli.garage import settings_of

    given = {name: getattr(options, name) for name in ("port", "host") if getattr(options, name) is not None}
    with _demo_folder() if options.demo else nullcontext() as folder:
        if folder:
            given = {"port": _DEMO_PORT, **given, "demo": True, "data": folder, "database_url": ""}
        settings = settings_of(options, **given)
        _refuse_other_computers(settings.host)
        yield settings


@contextmanager
def _demo_folder() -> Iterator[Path]:
    owner, folder = os.getpid(), Path(tempfile.mkdtemp(prefix="tarebook-demo-"))
    try:
        yield folder
    finally:
        if os.getpid() == owner:
            shutil.rmtree(folder, ignore_errors=True)


@contextmanager
def _folder_held(settings: Settings) -> Iterator[None]:
    from tarebook.store.lock import hold
    from tarebook.store.migrate import make_folder

    make_folder(settings.data)
    with hold(settings.data):
        yield


def _refuse_other_computers(host: str) -> None:
    from tarebook.errors import TarebookError

    try:
        loopback = host == "localhost" or ip_address(host).is_loopback
    except ValueError:
        loopback = False
    if not loopback:
        raise TarebookError("host_not_loopback", host=host)


def _announcement(settings: Settings, port: int) -> tuple[str, str]:
    """(what to print, the address to open). Fills the demo on the way."""
    from tarebook.cli.garage import garage_in
    from tarebook.cli.links import address, pairing_link

    with garage_in(settings) as garage:
        if settings.demo:
            _fill_demo(garage)
            return f"The demo is at {address(port)} — nothing in it is kept.", address(port)
        link = pairing_link(garage, port)
        joined = _has_devices(garage)
    words = f"Your garage is at {address(port)} — it lives in {settings.data}\n"
    words += f"A backup is made and proven every day, in {settings.backups}\n"
    return words + f"To join a browser, open this once, within five minutes: {link}", address(port) if joined else link


def _fill_demo(garage: OpenGarage) -> None:
    from tarebook.demo.scenario import fill
    from tarebook.store.photos import Photos

    fill(garage.database, garage.id, Photos(garage.settings, garage.database))


def _has_devices(garage: OpenGarage) -> bool:
    from tarebook.devices import tokens

    with garage.database.read() as session:
        return any(row.revoked_at is None for row in tokens.listing(session, garage.id))


def _ready(words: str, door: str | None, opens: str | None) -> None:
    import segno

    print(words)
    if door and sys.stdout.isatty():
        segno.make(door).terminal(compact=True)
    print("Ctrl-C stops it.", flush=True)
    if opens and _has_screen():
        webbrowser.open(opens)


def _has_screen() -> bool:
    if sys.platform in ("win32", "darwin"):
        return True
    return bool(os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY"))
