"""`python -m tests.bench`: what the figures are today, in one table. Nothing is asserted: a busy machine is no fault.

`--only NAME` (again for more) measures one module's figures; `--runs N` says how often each is done.
"""

from __future__ import annotations

import argparse
import os
import sys
import tempfile
from importlib import import_module
from pathlib import Path

from playwright.sync_api import sync_playwright

from tests.bench.figure import Figure, table
from tests.bench.workshop import Workshop
from tests.machine import prepare

MODULES = (
    "size",
    "first_screen",
    "saving",
    "sending",
    "folding",
    "reckoning",
    "ballast",
    "photos",
    "drawing",
    "importing",
)


def main() -> int:
    parser = argparse.ArgumentParser(prog="python -m tests.bench", description="Measure, and print one table.")
    parser.add_argument("--only", action="append", choices=MODULES, help="measure this only; may be given again")
    parser.add_argument("--runs", type=int, default=3, metavar="N", help="times each figure is measured (default: 3)")
    options = parser.parse_args()
    node = prepare()
    found: list[Figure] = []
    with tempfile.TemporaryDirectory(prefix="tarebook-bench-") as folder, sync_playwright() as playwright:
        shop = Workshop(Path(folder), playwright, node.env, options.runs)
        for name in options.only or MODULES:
            print(f"{name} …", file=sys.stderr, flush=True)
            found.extend(import_module(f"tests.bench.{name}").figures(shop))
    print(table(found))
    print(f"{os.cpu_count()} cores; load is the machine's when the figure was taken, over a minute.")
    return 0


if __name__ == "__main__":
    sys.exit(main())
