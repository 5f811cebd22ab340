"""Show the certificate authority that phones are asked to install: what it can do, and how to remove it again.

It is made by the first `tarebook serve --lan` and lives in the data folder. --new makes another one in its place, for
when somebody may have read its key; every phone then has to install the new one. --save and --take bring it to a new
computer, in a file under a passphrase; phones then need nothing.
"""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import TYPE_CHECKING

from tarebook.cli.arguments import add_data

if TYPE_CHECKING:
    from cryptography.x509 import Certificate

HELP = "show the certificate authority for phones, move it, or make a new one"
EXAMPLES = (
    "tarebook authority",
    "tarebook authority --new",
    "tarebook authority --save authority.p12",
    "tarebook authority --take authority.p12",
)

_TEXT = """The authority for phones is in {folder}
  it may vouch for   {names}, and private addresses such as 192.168.…; only for web servers
  it is good until   {until}
  fingerprint        {fingerprint} (SHA-256)

What installing it means: a phone that has it believes any server that shows a certificate signed with the key in
{key}. Whoever has that file can pose as {names} or as a
private address to that phone, and as nothing else: mail, banks and all other sites are outside what the certificate
allows, and phones refuse it there. No backup contains the key; it leaves this computer only by
tarebook authority --save, under a passphrase.

Before you install it, compare the fingerprint that the phone shows with the one above. The door page comes without
encryption; someone on your network could show another certificate in its place.

To remove it from an iPhone or iPad: Settings, General, VPN & Device Management, the profile Tarebook, Remove Profile.
To remove it from an Android phone: search the settings for “user credentials” or “trusted credentials”, tab User,
choose Tarebook, Remove. Removing it deletes no records, but the phone cannot reach the garage until it trusts it again.
"""


def add_options(parser: ArgumentParser) -> None:
    acts = parser.add_mutually_exclusive_group()
    acts.add_argument("--new", action="store_true", help="make another authority; phones must install it anew")
    acts.add_argument("--save", metavar="FILE", type=Path, help="write it to a file under a passphrase, to move it")
    acts.add_argument("--take", metavar="FILE", type=Path, help="take it over from such a file, on a new computer")
    asked = "a file with the passphrase in its first line; without it, it is asked for"
    parser.add_argument("--passphrase", metavar="FILE", type=Path, help=asked)
    add_data(parser)


def run(options: Namespace) -> int:
    if options.save or options.take:
        return _move(options)
    return _show(options)


def _move(options: Namespace) -> int:
    """To or from a file. There need not be a garage yet on the computer it comes to."""
    from tarebook.cli.garage import settings_of
    from tarebook.devices import authority, moved_authority
    from tarebook.store.migrate import make_folder

    settings = settings_of(options)
    if options.save:
        held = authority.load(settings.certificates)
        moved_authority.save(held, options.save, _passphrase(options.passphrase, twice=True))
        print(f"Saved in {options.save}. On the new computer: tarebook authority --take FILE. Delete the file then.")
        return 0
    passphrase = _passphrase(options.passphrase, twice=False)
    make_folder(settings.data)
    held = moved_authority.take(settings.certificates, options.take, passphrase)
    print("Taken over; phones that trust it need nothing. A running server uses it within half a minute.\n")
    print(_told(settings.certificates, held.certificate), end="")
    return 0


def _passphrase(file: Path | None, twice: bool) -> str:
    """Its first line; or what is typed. Raises `passphrase_missing`, `passphrase_differs`, `file_unreadable`."""
    import getpass

    from tarebook.errors import TarebookError

    if file:
        try:
            return file.read_text(encoding="utf-8").partition("\n")[0].rstrip("\r")
        except (OSError, UnicodeDecodeError) as problem:
            raise TarebookError("file_unreadable", file=str(file), reason=str(problem)) from problem
    if not sys.stdin.isatty():
        raise TarebookError("passphrase_missing")
    typed = getpass.getpass("Passphrase: ")
    if twice and getpass.getpass("Once more: ") != typed:
        raise TarebookError("passphrase_differs")
    return typed


def _show(options: Namespace) -> int:
    from tarebook.cli.garage import existing_garage
    from tarebook.devices import authority
    from tarebook.devices.origin import NAME, Origin
    from tarebook.store.house import origin

    with existing_garage(options) as garage, garage.database.read() as session:
        kept, folder = origin(session), garage.settings.certificates
    if options.new:
        authority.make(folder, Origin.of(kept).name if kept else NAME)
        print("A new authority was made; a running server uses it within half a minute. Install it on every phone.\n")
    print(_told(folder, authority.load_certificate(folder)), end="")
    return 0


def _told(folder: Path, certificate: Certificate) -> str:
    from tarebook.devices import authority

    return _TEXT.format(
        folder=folder,
        key=folder / authority.KEY,
        names=", ".join(authority.vouched_names(certificate)),
        until=authority.day(certificate.not_valid_after_utc),
        fingerprint=authority.fingerprint(certificate),
    )
