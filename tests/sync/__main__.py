"""`python -m tests.sync`: eight tests of the protocol at their stated size, then a table of what each did.

`--only NAME` (again for more) runs that test alone; `--seed N` has the same chances again, as far as real processes
have any. The exit code is 1 when anything was lost, missing, or otherwise wrong.
"""

from __future__ import annotations

import argparse
import faulthandler
import logging
import sys
import time
import traceback
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import sync_playwright

from tests.machine import passing_folder, prepare
from tests.sync.eight import Outcome, clocks, healing, histories, hostile, kills, numbering, old_phone, tabs

STUCK_SECONDS = 1800

Test = Callable[[Path, int], Outcome]


def of_chromium(folder: Path, seed: int) -> Outcome:
    with sync_playwright() as playwright:
        return kills.of_chromium(playwright, folder, seed, kills=150)


def of_tabs(folder: Path, seed: int) -> Outcome:
    with sync_playwright() as playwright:
        return tabs.run(playwright, folder, seed, times=10)


TESTS: dict[str, list[Test]] = {
    "1 histories": [lambda folder, seed: histories.run(folder, seed, steps=10_000)],
    "2 numbering": [lambda folder, seed: numbering.run(folder, seed, entries=100_000)],
    "3 healing": [lambda folder, seed: healing.run(folder, seed, times=20)],
    "4 kills": [
        lambda folder, seed: kills.on_sqlite(folder, seed, kills=200),
        lambda folder, seed: kills.on_postgres(folder, seed, kills=150),
        of_chromium,
    ],
    "5 tabs": [of_tabs],
    "6 hostile": [lambda folder, seed: hostile.run(folder, seed, times=2)],
    "7 old phone": [lambda folder, seed: old_phone.run(folder, seed, times=20)],
    "8 clocks": [lambda folder, seed: clocks.run(folder, seed, times=25)],
}
"""The parts of each test at their stated size; where none is stated, one that takes a minute or two."""


def main() -> int:
    names = [name.partition(" ")[2] for name in TESTS]
    parser = argparse.ArgumentParser(prog="python -m tests.sync", description=__doc__)
    parser.add_argument("--only", action="append", choices=names, help="this test only; may be given again")
    parser.add_argument("--seed", type=int, default=1)
    options = parser.parse_args()
    prepare()
    logging.disable()
    asked = [name for name in TESTS if not options.only or name.partition(" ")[2] in options.only]
    ran = [_ran(name, options.seed) for name in asked]
    print(f"\nseed {options.seed}", *(line for line, _failed in ran), sep="\n")
    return int(any(failed for _line, failed in ran))


def _ran(name: str, seed: int) -> tuple[str, bool]:
    """The line of one test, and whether it failed."""
    print(f"{name} …", flush=True)
    found, began, wrong = Outcome(), time.monotonic(), ""
    with passing_folder() as folder:
        for number, part in enumerate(TESTS[name]):
            faulthandler.dump_traceback_later(STUCK_SECONDS, exit=True)
            try:
                found.add(part(Path(folder) / str(number), seed))
            except Exception as problem:
                traceback.print_exc()
                wrong += f"; {type(problem).__name__}: {problem}".splitlines()[0]
    faulthandler.cancel_dump_traceback_later()
    for what in (*found.lost[:5], *found.missing[:5]):
        print(f"  {what[:300]}")
    failed = bool(wrong or found.lost or found.missing)
    line = f"{'FAILED' if failed else 'ok':<6} {name:<12} {time.monotonic() - began:5.0f} s  {found}{wrong}"
    print(line, flush=True)
    return line, failed


if __name__ == "__main__":
    sys.exit(main())
