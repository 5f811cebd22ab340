"""The build sheet as CSV: one line for each part of each job, in the columns that `tarebook import` reads, and more.

Masses are of one piece in the garage's unit, to the place their uncertainty (`within`, 95 %) deserves. Hours, money
and photos, by their names in the export, stand on a job's first line only. `readings` are as they were typed, `kg` and
`u_kg` one piece and its standard uncertainty as they were computed, unrounded. A text that a spreadsheet would run as
a formula gets an apostrophe before it.
"""

import csv
import re
from collections.abc import Iterator
from io import StringIO
from typing import Any

from tarebook.core.numbers.shown import lay_out

COLUMNS = (
    "part", "off", "on", "within", "unit", "quantity", "basis", "zone", "job", "stage", "state", "trim", "ruling",
    "hours", "money", "readings", "kg", "u_kg", "photos",
)  # fmt: skip
# At the beginning, or after what another country's spreadsheet takes for a cell's end; full-width signs run as well.
_RUNS = re.compile(r"(?:^|(?<=[;\t\r\n]))(?=\s*[=+\-@＝＋－＠]|[\t\r\n])")

Sheet = dict[str, Any]


def as_csv(sheet: Sheet) -> str:
    """The whole table with its header; lines end with CR LF, as RFC 4180 says."""
    out = StringIO()
    writer = csv.DictWriter(out, COLUMNS, restval="")
    writer.writeheader()
    # A spreadsheet counts in one unit a cell: pounds and ounces become pounds.
    unit = sheet["mass_unit"].split(" ")[0]
    for job in sheet["jobs"]:
        for line in _lines(job, unit):
            writer.writerow({column: _harmless(value) for column, value in line.items() if value is not None})
    return out.getvalue()


def _lines(job: Sheet, unit: str) -> Iterator[Sheet]:
    photos = "; ".join(job["photos"]) or None
    effort = {"hours": _plain(job["hours"]["value"]), "money": _plain(job["money"]["value"]), "photos": photos}
    same = {
        "job": job["job"],
        "stage": job["stage"],
        "state": job["state"],
        "trim": job["trim"],
        "ruling": job["ruling"],
    }
    lines = [_part(part, unit) for part in job["parts"]] or [{"part": job["job"]}]
    for number, line in enumerate(lines):
        yield {**line, **same, **(effort if number == 0 else {})}


def _part(part: Sheet, unit: str) -> Sheet:
    line = {"part": part["part"], "quantity": str(part["count"]), "basis": part["basis"], "zone": part["zone"]}
    line["readings"] = "; ".join(part["readings"]) or None
    if part["mass"] is None:
        return line
    shown = lay_out("mass", abs(part["mass"]["value"]) / part["count"], unit, 2 * part["mass"]["u"] / part["count"])
    within = shown.within[0][0] if shown.within else ""
    si = {"kg": repr(abs(part["mass"]["value"]) / part["count"]), "u_kg": repr(part["mass"]["u"] / part["count"])}
    return {**line, part["way"]: shown.parts[0][0], "within": within, "unit": unit, **si}


def _plain(value: float) -> str | None:
    return f"{value:.2f}".rstrip("0").rstrip(".") if value else None


def _harmless(text: str) -> str:
    return _RUNS.sub("'", text)
