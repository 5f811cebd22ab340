"""Look over everything the garage rests on, and say what to do about what is not well. Nothing is changed.

The database's pages, the journal against the tables, every photo against its hash, the disk, the certificate, the
clock, the backups and who may read the folder. It runs beside a serving Tarebook, and on a disk that takes nothing.
"""

from __future__ import annotations

import json
from argparse import ArgumentParser, Namespace
from datetime import UTC, datetime
from typing import TYPE_CHECKING

from tarebook.cli.arguments import add_data

if TYPE_CHECKING:
    from tarebook.cli.checkup import Finding

HELP = "look over the garage, and say what to do"
EXAMPLES = ("tarebook doctor", "tarebook doctor --json")


def add_options(parser: ArgumentParser) -> None:
    parser.add_argument("--json", action="store_true", help="as JSON, for a program that watches")
    add_data(parser)


def run(options: Namespace) -> int:
    from tarebook.cli.checkup import look
    from tarebook.cli.garage import settings_of
    from tarebook.store.database import settings_database

    settings = settings_of(options)
    settings_database(settings).close()
    findings = list(look(settings, datetime.now(UTC)))
    well = all(finding.trouble is None for finding in findings)
    if options.json:
        print(json.dumps({"ok": well, "findings": [_plain(finding) for finding in findings]}))
    else:
        print("\n".join(_line(finding) for finding in findings))
    return 0 if well else 1


def _plain(finding: Finding) -> dict[str, object]:
    if finding.trouble is None:
        return {"about": finding.about, "ok": True, "said": finding.said}
    return {"about": finding.about, "ok": False, **finding.trouble.body()}


def _line(finding: Finding) -> str:
    if finding.trouble is None:
        return f"{finding.about}: {finding.said}"
    return f"{finding.about}: NOT WELL. {finding.trouble.sentence} {finding.trouble.do}"
