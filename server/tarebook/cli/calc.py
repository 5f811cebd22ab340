"""Run one computation on JSON: a garage in, numbers with their uncertainty out. Needs no database.

Masses and lengths go in as typed ("6 3/8 oz") or as {"value", "unit"}. The web answers the same under
/api/v1/calc/NAME.
"""

from __future__ import annotations

import json
import sys
from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import Any

from tarebook.errors import TarebookError

HELP = "run one computation on JSON from a file or a pipe"
EXAMPLES = (
    "tarebook calc --list",
    "tarebook calc ledger < garage.json",
    "tarebook calc standing garage.json",
)


def add_options(parser: ArgumentParser) -> None:
    parser.add_argument("name", nargs="?", metavar="NAME", help="which computation; --list names them")
    parser.add_argument("file", nargs="?", default="-", metavar="FILE", help="JSON to read (default: standard input)")
    parser.add_argument("--list", action="store_true", help="name every computation")


def run(options: Namespace) -> int:
    from tarebook.api.calc import CALCULATIONS
    from tarebook.api.calc import run as compute

    if options.list or options.name is None:
        print("\n".join(f"{name:<15}{each.about}" for name, each in CALCULATIONS.items()))
        return 0
    try:
        if options.name not in CALCULATIONS:
            raise TarebookError("calc_unknown", name=options.name)
        answer = compute(options.name, _read(options.file))
    except TarebookError as problem:
        print(json.dumps(problem.body(), ensure_ascii=False, indent=2))
        return 1
    print(json.dumps(answer, ensure_ascii=False, indent=2))
    return 0


def _read(file: str) -> Any:
    from tarebook.journal.entries import load_json, why_not_json

    try:
        raw = sys.stdin.buffer.read() if file == "-" else Path(file).read_bytes()
        return load_json(raw.decode())
    except OSError as problem:
        raise TarebookError("file_unreadable", file=file, reason=problem.strerror or str(problem)) from problem
    except ValueError as problem:
        raise TarebookError("malformed_json", reason=why_not_json(problem)) from problem
