"""Show the certificate authority that phones are asked to install: what it can do, and how to remove it again.

It is made by the first `tarebook serve --lan` and lives in the data folder. --new makes another one in its place, for
when somebody may have read its key; every phone then has to install the new one.
"""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import TYPE_CHECKING

from tarebook.cli.arguments import add_data

if TYPE_CHECKING:
    from cryptography.x509 import Certificate

HELP = "show the certificate authority for phones, or make a new one"
EXAMPLES = ("tarebook authority", "tarebook authority --new")

_TEXT = """The authority for phones is in {folder}
  it may vouch for   {names}, and private addresses such as 192.168.…; only for web servers
  it is good until   {until}
  fingerprint        {fingerprint} (SHA-256)

What installing it means: a phone that has it believes any server that shows a certificate signed with the key in
{key}. Whoever has that file can pose as {names} or as a
private address to that phone, and as nothing else: mail, banks and all other sites are outside what the certificate
allows, and phones refuse it there. The key never leaves this computer; no backup contains it.

Before you install it, compare the fingerprint that the phone shows with the one above. The door page comes without
encryption; someone on your network could show another certificate in its place.

To remove it from an iPhone or iPad: Settings, General, VPN & Device Management, the profile Tarebook, Remove Profile.
To remove it from an Android phone: search the settings for “user credentials” or “trusted credentials”, tab User,
choose Tarebook, Remove. Removing it deletes no records, but the phone cannot reach the garage until it trusts it again.
"""


def add_options(parser: ArgumentParser) -> None:
    parser.add_argument("--new", action="store_true", help="make another authority; phones must install it anew")
    add_data(parser)


def run(options: Namespace) -> int:
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
