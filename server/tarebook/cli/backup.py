"""Make a backup, prove it by restoring it elsewhere, and tell the phones how far it reaches.

With FILE it is one file with everything inside, for another disk; a folder gets a file named by the date. Without, it
joins those that tarebook serve makes every day: one for each of the last 7 days, 5 weeks and 12 months is kept. Never
inside: pairing codes, and the keys of your certificates.
"""

from __future__ import annotations

import os
import signal
import sys
import threading
from argparse import ArgumentParser, Namespace
from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from tarebook.cli.arguments import add_data

if TYPE_CHECKING:
    from tarebook.cli.garage import OpenGarage
    from tarebook.store.backup import Made

HELP = "make a backup and prove it"
EXAMPLES = (
    "tarebook backup",
    "tarebook backup garage-backup.zip",
)

_LOOK_EVERY_SECONDS = 600


def add_options(parser: ArgumentParser) -> None:
    parser.add_argument("file", nargs="?", metavar="FILE", help="the file or folder to write to")
    daily = "make one whenever a day has none, until standard input ends; tarebook serve runs this"
    parser.add_argument("--daily", action="store_true", help=daily)
    add_data(parser)


def run(options: Namespace) -> int:
    from tarebook.cli.garage import readable_garage

    if options.daily:
        return _every_day(options)
    with readable_garage(options) as garage:
        made = _to(garage, Path(options.file)) if options.file else _kept(garage)
    print(f"{made.file}: {_contents(made)}. Restored elsewhere and folded again, it is the same.")
    if made.manifest.left_out:
        print(f"Photos that are not whole on this computer, and so not in it: {len(made.manifest.left_out)}.")
    return 0


def _contents(made: Made) -> str:
    entries = sum(number for number, _mark in made.manifest.marks.values())
    return f"{entries} entries, {len(made.manifest.photos)} photos"


def _to(garage: OpenGarage, path: Path) -> Made:
    from tarebook.store.backup import back_up_to
    from tarebook.store.kept import name_at

    file = path / name_at(datetime.now(UTC)) if path.is_dir() else path
    return back_up_to(garage.settings, garage.database, file)


def _kept(garage: OpenGarage) -> Made:
    from tarebook.store.backup import back_up_daily

    return back_up_daily(garage.settings, garage.database, datetime.now(UTC))


def _every_day(options: Namespace) -> int:
    """Standard input ends when the server that holds its other end does, however it ends."""
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(0))  # so that what is half made is cleared away
    ended = threading.Event()
    threading.Thread(target=_when_input_ends, args=(ended.set,), daemon=True).start()
    said = ""
    while not ended.is_set():
        trouble = _round(options)
        if trouble and trouble != said:
            print(f"tarebook backup: {trouble}", file=sys.stderr, flush=True)
        said = trouble
        print("looked", flush=True)  # for whom watches: what says nothing for hours hangs
        ended.wait(_LOOK_EVERY_SECONDS)
    return 0


def _when_input_ends(do: Callable[[], None]) -> None:
    # Straight from the descriptor: a thread inside sys.stdin holds its lock, and ending then kills the interpreter.
    while os.read(sys.stdin.fileno(), 4096):
        pass
    do()


def _round(options: Namespace) -> str:
    """Makes the day's round when it has not had it; gives what stood in the way, for the next look to try again."""
    from tarebook.cli.garage import existing_garage, settings_of
    from tarebook.errors import TarebookError
    from tarebook.store.log import note
    from tarebook.store.rounds import make_round

    try:
        with existing_garage(options) as garage:
            make_round(garage.settings, garage.database, datetime.now(UTC))
        return ""
    except TarebookError as problem:
        note(settings_of(options).data, "round", code=problem.code)
        return f"{problem.sentence} {problem.do}"
