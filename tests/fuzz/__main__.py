"""`python -m tests.fuzz --minutes 60`: every kind for its share of the time, then one table and what was found.

`--only NAME` (again for more) fuzzes that kind alone; `--seed N` makes the same cases again, `--first N --cases 1` one
of them. The exit code is 1 when a promise was broken.
"""

from __future__ import annotations

import argparse
import faulthandler
import sys
import tempfile
from importlib import import_module
from pathlib import Path

from tests import machine  # noqa: F401  (it says where the web app's helpers are)
from tests.fuzz.kind import Tally, run

KINDS = {"api": 10, "pictures": 10, "backups": 10, "imports": 10, "kills": 10, "proxy": 10}
"""Each kind with its share of the minutes."""
STUCK_SECONDS = 900


def main() -> int:
    parser = argparse.ArgumentParser(prog="python -m tests.fuzz", description="Break things; see what holds.")
    parser.add_argument("--minutes", type=float, default=60, help="for all kinds together (default: 60)")
    parser.add_argument("--only", action="append", choices=KINDS, help="this kind only; may be given again")
    parser.add_argument("--seed", type=int, default=1, help="the cases are made from it (default: 1)")
    parser.add_argument("--first", type=int, default=1, metavar="N", help="begin with this case")
    parser.add_argument("--cases", type=int, default=10**9, metavar="N", help="at most so many of each kind")
    options = parser.parse_args()
    names = options.only or list(KINDS)
    minutes = options.minutes / sum(KINDS[name] for name in names)
    tallies = [_fuzzed(name, minutes * KINDS[name], options) for name in names]
    for tally in tallies:
        print(*tally.found(), sep="\n")
    print(f"seed {options.seed}", *(tally.line() for tally in tallies), sep="\n")
    return int(any(tally.findings for tally in tallies))


def _fuzzed(name: str, minutes: float, options: argparse.Namespace) -> Tally:
    print(f"{name} …", file=sys.stderr, flush=True)
    faulthandler.dump_traceback_later(60 * minutes + STUCK_SECONDS, exit=True)
    with tempfile.TemporaryDirectory(prefix=f"tarebook-fuzz-{name}-") as folder:
        opened = import_module(f"tests.fuzz.{name}").opened
        return run(name, opened, Path(folder), options.seed, minutes, options.cases, options.first)


if __name__ == "__main__":
    sys.exit(main())
