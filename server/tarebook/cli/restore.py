"""Bring the garage back from a backup that tarebook backup made. The server must be stopped for it.

The backup is proven before anything is touched. The database that was there is put aside, not deleted. A backup cannot
know which phones were taken off after it was made, so it is asked who may still come in. Phones notice by themselves
and send again everything they hold, so what was recorded since the backup comes back with them.
"""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from collections.abc import Sequence
from contextlib import closing
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from tarebook.cli.arguments import add_data

if TYPE_CHECKING:
    from tarebook.settings import Settings
    from tarebook.store.restore import Phone

HELP = "bring the garage back from a backup"
EXAMPLES = (
    "tarebook restore garage-backup.zip",
    "tarebook restore garage-backup.zip --phones all",
    "tarebook restore garage-backup.zip --phones 'Anna, the phone in the shed'",
)

_QUESTION = "Who may still come in? [a]ll, [n]one, or [e]ach asked about: "
_MOVED = """Phones that trust the authority whose fingerprint begins {begins} need nothing. It is here, in
{folder}."""
_NOT_MOVED = """Phones trust an authority for {name} that is not on this computer. Before tarebook serve --lan, either
- move it, and phones need nothing: tarebook authority --save FILE on the old computer, then here
  tarebook authority --take FILE; or
- start with a new one: tarebook serve --lan makes it and prints the address of the door page, where every phone
  installs it. What a phone holds stays on it. For one that was not let in, tarebook pair shows the QR.
With a certificate of your own, or behind a reverse proxy, phones need nothing."""


def add_options(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="a backup")
    who = "who may still come in: all, none, or names or ids with commas between; without it, it is asked"
    parser.add_argument("--phones", metavar="WHO", help=who)
    add_data(parser)


def run(options: Namespace) -> int:
    from tarebook.cli.garage import settings_of
    from tarebook.store.restore import restore

    settings = settings_of(options)
    done = restore(settings, Path(options.file), partial(_chosen, options.phones))
    when = done.made_at[:16].replace("T", " ")
    print(f"Restored as of {when} UTC: {done.entries} entries, {done.photos} photos.")
    if done.aside:
        print(f"The database that was there is in {done.aside}.")
    print("Phones send what they recorded since by themselves. tarebook devices lists who may read and write again.")
    _say_what_phones_must_do(settings)
    return 0


def _chosen(who: str | None, phones: list[Phone]) -> Sequence[Phone]:
    from tarebook.errors import TarebookError

    able = [phone for phone in phones if not phone.off]
    if who in ("all", "none"):
        return able if who == "all" else []
    if who is not None:
        return _named(able, who)
    if not sys.stdin.isatty():
        raise TarebookError("restore_unasked", phones=_names(able))
    print("The garage in this backup lets in:")
    for phone in phones:
        print(f"  {phone.id}  {_said(phone)}")
    return _asked(able)


def _names(phones: Sequence[Phone]) -> str:
    from tarebook.cli.words import printable

    return ", ".join(printable(phone.name) for phone in phones)


def _named(phones: list[Phone], who: str) -> list[Phone]:
    from tarebook.cli.devices import named
    from tarebook.errors import TarebookError

    chosen = []
    for asked in filter(None, map(str.strip, who.split(","))):
        phone = named(phones, asked)
        if phone is None:
            raise TarebookError("restore_phone_unknown", name=asked, phones=_names(phones))
        chosen.append(phone)
    return chosen


def _said(phone: Phone) -> str:
    from tarebook.cli.words import printable

    seen = f"last seen {phone.last_seen[:16].replace('T', ' ')} UTC"
    state = f"taken off {phone.off[:10]}; it stays off" if phone.off else seen
    return f"{printable(phone.name)}  paired {phone.paired_at[:10]}, {state}"


def _asked(phones: list[Phone]) -> list[Phone]:
    while True:
        answer = _answer(_QUESTION, phones)
        if answer in ("a", "all"):
            return phones
        if answer in ("n", "none"):
            return []
        if answer in ("e", "each"):
            return [phone for phone in phones if _answer(f"{_said(phone)}. Let it in? [y/N] ", phones) in ("y", "yes")]


def _answer(question: str, phones: list[Phone]) -> str:
    from tarebook.errors import TarebookError

    try:
        return input(question).strip().lower()
    except EOFError as gone:
        print()
        raise TarebookError("restore_unasked", phones=_names(phones)) from gone


def _say_what_phones_must_do(settings: Settings) -> None:
    """Nothing where no phone has ever been served over the home network."""
    from tarebook.devices import authority
    from tarebook.devices.origin import Origin
    from tarebook.errors import TarebookError
    from tarebook.store import house
    from tarebook.store.database import settings_database

    with closing(settings_database(settings)) as database, database.read() as session:
        kept = house.origin(session)
    if kept is None:
        return
    name = Origin.of(kept).name
    try:
        held = authority.load(settings.certificates)
    except TarebookError:
        held = None
    if held is None or name not in held.names:
        print(_NOT_MOVED.format(name=name))
        return
    print(_MOVED.format(begins=authority.fingerprint(held.certificate)[:23], folder=settings.certificates))
