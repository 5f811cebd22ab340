"""The report of one car of a garage in the form asked for: for the command line and for the web alike."""

import json
from collections.abc import Sequence
from typing import Any

from tarebook.cars import chosen_car
from tarebook.garage.records import Records
from tarebook.papers.build_sheet import build_sheet
from tarebook.papers.table import as_csv
from tarebook.papers.text import as_text

FORMATS = {"text": "text/plain", "json": "application/json", "csv": "text/csv"}


def report(
    records: Records,
    form: str = "text",
    car: str | None = None,
    trim: str = "event",
    unproven: Sequence[dict[str, str]] = (),
) -> str:
    """The build sheet as "text", "json" or "csv". `car`: name or id, needed when there are several. `unproven`: as
    `garage.records` gives them.

    Raises `car_unknown` and `car_unclear`.
    """
    sheet = build_sheet(records, chosen_car(records.get("cars", []), car), trim, unproven)
    writers: dict[str, Any] = {"text": as_text, "csv": as_csv, "json": _as_json}
    return str(writers[form](sheet))


def _as_json(sheet: dict[str, Any]) -> str:
    return json.dumps(sheet, ensure_ascii=False, indent=1) + "\n"
