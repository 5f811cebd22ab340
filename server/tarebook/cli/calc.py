"""Run one computation on JSON: a garage in, numbers with their uncertainty out. Needs no database.

Masses and lengths go in as typed ("6 3/8 oz") or as {"value", "unit"}. `--fields` lists what a computation takes.
The web answers the same to POST /api/v1/calc/NAME, asked with a device's token: the header is
"Authorization: Bearer TOKEN", and TOKEN is what POST /api/v1/pair answers to the code of a link by `tarebook pair`.
"""

from __future__ import annotations

import json
import sys
from argparse import ArgumentParser, Namespace
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

from tarebook.errors import TarebookError

if TYPE_CHECKING:
    from marshmallow import Schema

HELP = "run one computation on JSON from a file or a pipe"
EXAMPLES = (
    "tarebook calc --list",
    "tarebook calc ledger < garage.json",
    "tarebook calc standing garage.json",
    "tarebook calc standing --fields",
)


def add_options(parser: ArgumentParser) -> None:
    parser.add_argument("name", nargs="?", metavar="NAME", help="which computation; --list names them")
    parser.add_argument("file", nargs="?", default="-", metavar="FILE", help="JSON to read (default: standard input)")
    parser.add_argument("--fields", action="store_true", help="name what this computation takes, list by list")
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
        if options.fields:
            print("\n".join(_fields(CALCULATIONS[options.name].given())))
            return 0
        answer = compute(options.name, _read(options.file))
    except TarebookError as problem:
        print(json.dumps(problem.body(), ensure_ascii=False, indent=2))
        return 1
    print(json.dumps(answer, ensure_ascii=False, indent=2))
    return 0


def _fields(schema: Schema) -> Iterator[str]:
    """What a schema takes, a line each; the fields of a list of records follow its name."""
    from marshmallow import fields

    for name, field in sorted(schema.fields.items()):
        inner = field.inner if isinstance(field, fields.List) else field
        known = sorted(inner.schema.fields) if isinstance(inner, fields.Nested) else []
        yield f"{name}: {', '.join(known)}" if known else name


def _read(file: str) -> Any:
    from tarebook.journal.entries import load_json, why_not_json

    try:
        raw = sys.stdin.buffer.read() if file == "-" else Path(file).read_bytes()
        return load_json(raw.decode())
    except OSError as problem:
        raise TarebookError("file_unreadable", file=file, reason=problem.strerror or str(problem)) from problem
    except ValueError as problem:
        raise TarebookError("malformed_json", reason=why_not_json(problem)) from problem
