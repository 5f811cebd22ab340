"""What `tarebook serve --lan` adds: an address for phones that stays, a certificate they believe, and a door page."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from tarebook.errors import TarebookError

if TYPE_CHECKING:
    from socket import socket

    from tarebook.cli.entrance import Entrance
    from tarebook.cli.server import House
    from tarebook.devices.authority import Authority
    from tarebook.devices.certificates import Pair
    from tarebook.devices.keeper import Keeper
    from tarebook.devices.origin import Origin
    from tarebook.network import Address
    from tarebook.store.database import Database

_DOOR_PORT = 8080
_THIS_COMPUTER = ("127.0.0.1", "::1")

_PHONES = """
Phones find the garage at {origin} — the address is permanent: another would be another, empty app to them.
To let a phone in: tarebook pair, or Devices in this computer's browser.
Only callers from this network are answered."""
_LOOKED_UP = "\nYour router or your DNS has to lead {name} here; only names ending in .local are announced."
_OWN = "The certificate is {cert}; when it is renewed, the new one is used without a restart."
_PROXIED = "Your reverse proxy answers there and passes requests on to http://127.0.0.1:{port}, host name and all."
_DOOR = """For a new phone, open {door} on it once: it shows what to install, and checks it.
{made}Installing it means: that phone believes whoever holds the key in {folder}
about {name} and private addresses, and about nothing else. Its fingerprint (SHA-256) begins {fingerprint}.
How to look at it and how to remove it again: tarebook authority"""
_MADE = "A certificate authority was made for that. "


@dataclass(frozen=True)
class Lan:
    """The house with phones, and the words about it."""

    house: House
    words: str
    door: str | None = None


def add_options(parser: ArgumentParser) -> None:
    from tarebook.cli.arguments import port_number

    group = parser.add_argument_group("for phones on the home network (with --lan)")
    group.add_argument("--name", metavar="NAME", help="the permanent name they use (default: tarebook.local)")
    group.add_argument("--lan-port", type=port_number, metavar="N", help="their permanent port (default: 8443)")
    group.add_argument(
        "--door-port", type=port_number, metavar="N", default=_DOOR_PORT,
        help=f"port of the page that says what a phone must install (default: {_DOOR_PORT})",
    )  # fmt: skip
    group.add_argument("--no-announce", action="store_true", help="do not tell the network where NAME.local is")
    group.add_argument("--cert", metavar="FILE", type=Path, help="a certificate of your own, with its chain")
    group.add_argument("--key", metavar="FILE", type=Path, help="its key")
    group.add_argument("--proxied", action="store_true", help="a reverse proxy of yours speaks HTTPS for the name")
    group.add_argument("--move-anyway", action="store_true", help="change name or port although devices are paired")


def with_phones(options: Namespace, house: House, database: Database) -> Lan:
    """The house, opened to phones under the kept name. Nothing is kept when any of it is refused."""
    from tarebook.devices import origin
    from tarebook.store.house import origin as kept

    pair = _own_pair(options)
    with database.write() as session:
        before = kept(session)
        chosen = origin.settle(session, options.name, options.lan_port, options.move_anyway)
        opened = replace(house, settings=replace(house.settings, hosts=(*house.settings.hosts, chosen.name)))
        if options.proxied:
            return _behind_proxy(opened, chosen)
        if pair:
            return _with_own_pair(options, opened, chosen, pair)
        return _with_authority(options, opened, chosen, chosen.url != before)


def _own_pair(options: Namespace) -> Pair | None:
    from tarebook.devices.certificates import Pair

    if (options.cert is None) != (options.key is None):
        raise TarebookError("tls_pair_incomplete")
    return Pair(options.cert, options.key) if options.cert else None


def _behind_proxy(house: House, origin: Origin) -> Lan:
    words = _PROXIED.format(port=house.entrances[0].port)
    believed = (*house.settings.trusted_proxies, *_THIS_COMPUTER)
    opened = replace(house, settings=replace(house.settings, trusted_proxies=believed))
    return Lan(opened, f"{_phones(origin)}\n{words}")


def _with_own_pair(options: Namespace, house: House, origin: Origin, pair: Pair) -> Lan:
    opened = _opened(house, [_lan_entrance(origin, _lan_sockets(origin), pair)], _keeper(options, house, origin, None))
    return Lan(opened, f"{_phones(origin)}\n{_OWN.format(cert=pair.cert)}")


def _with_authority(options: Namespace, house: House, origin: Origin, has_moved: bool) -> Lan:
    from tarebook.devices import certificates
    from tarebook.door import app as door

    given, folder = house.settings.lan_addresses, house.settings.certificates
    addresses = _addresses(given)
    certificates.check_clock(datetime.now(UTC))
    # Ports first: what makes files comes last, so that a refusal leaves none.
    sockets, entry = _lan_sockets(origin), _door_entrance(options.door_port)
    held, is_new = _authority(folder, origin.name, has_moved)
    certificates.renew(folder, held, origin.name, addresses)
    entrances = [_lan_entrance(origin, sockets, certificates.own_pair(folder)), entry]
    opened = _opened(house, entrances, _keeper(options, house, origin, folder))
    opened = replace(opened, door=partial(door.build, folder, origin, entry.port, given))
    at = door_address(addresses[0], entry.port)
    return Lan(opened, _words(origin, folder, held, is_new, at), at)


def _keeper(options: Namespace, house: House, origin: Origin, folder: Path | None) -> Keeper:
    from tarebook.devices.announcement import Announcement, can_announce
    from tarebook.devices.keeper import Keeper
    from tarebook.network import addresses_for_phones

    is_silent = options.no_announce or not can_announce(origin.name)
    announcement = None if is_silent else Announcement(origin)
    return Keeper(origin, folder, announcement, partial(addresses_for_phones, house.settings.lan_addresses), say)


def _opened(house: House, entrances: Sequence[Entrance], keeper: Keeper) -> House:
    return replace(house, entrances=[*house.entrances, *entrances], alongside=[*house.alongside, keeper])


def _words(origin: Origin, folder: Path, held: Authority, is_new: bool, door: str) -> str:
    from tarebook.devices import authority

    begins = authority.fingerprint(held.certificate)[:23]
    made = _MADE if is_new else ""
    words = _DOOR.format(door=door, made=made, folder=folder, name=origin.name, fingerprint=begins)
    return f"{_phones(origin)}\n{words}"


def _phones(origin: Origin) -> str:
    from tarebook.devices.announcement import can_announce

    is_found = origin.address or can_announce(origin.name)
    return _PHONES.format(origin=origin.url) + ("" if is_found else _LOOKED_UP.format(name=origin.name))


def _authority(folder: Path, name: str, has_moved: bool) -> tuple[Authority, bool]:
    """The folder's authority. One for the name of before is of no use once the name has changed."""
    from tarebook.devices import authority

    try:
        return authority.load_or_make(folder, name)
    except TarebookError as refusal:
        if not (has_moved and refusal.code == "outside_authority"):
            raise
        return authority.make(folder, name), True


def _addresses(given: Sequence[str]) -> Sequence[Address]:
    from tarebook.network import addresses_for_phones

    found = addresses_for_phones(given)
    if not found:
        raise TarebookError("no_network")
    return found


def _lan_sockets(origin: Origin) -> Sequence[socket]:
    from tarebook.cli.entrance import claimed_everywhere

    return claimed_everywhere(origin.port, "--lan-port", "lan_port_taken")


def _lan_entrance(origin: Origin, sockets: Sequence[socket], pair: Pair) -> Entrance:
    from tarebook.cli.entrance import Entrance
    from tarebook.devices.live_tls import LiveTls

    return Entrance("lan", origin.port, sockets, LiveTls(pair, origin.name, say), origin.url)


def _door_entrance(port: int) -> Entrance:
    from tarebook.cli.entrance import Entrance, claimed_everywhere

    sockets = claimed_everywhere(port, "--door-port")
    return Entrance("door", sockets[0].getsockname()[1], sockets)


def door_address(address: Address, port: int) -> str:
    from tarebook.devices.origin import in_url

    return f"http://{in_url(str(address))}:{port}/"


def say(line: str) -> None:
    """A line about the home network, while serving."""
    print(f"tarebook: {line}", file=sys.stderr, flush=True)
