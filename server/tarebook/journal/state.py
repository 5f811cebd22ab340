"""A record's folded state as one line of JSON, for the database.

Which writer and device an entry came from is said once for each entry, not once for each field.
"""

import json
from typing import Any

from tarebook.journal.record import Head, Record


def dump(record: Record) -> str:
    """`{"heads": […], "by": [[entry, writer, device], …], "fields": {name: [[index into by, value], …]}}`

    `"saw": {head: [entry, …]}` and `"foreseen": [entry, …]` where there is anything in them.
    """
    by: dict[tuple[str, str, str], int] = {}
    fields = {
        name: [[by.setdefault((head.entry, head.writer, head.device), len(by)), head.value] for head in heads]
        for name, heads in record.fields.items()
    }
    saw = {"saw": {head: sorted(seen) for head, seen in record.saw.items()}} if record.saw else {}
    foreseen = {"foreseen": sorted(record.foreseen)} if record.foreseen else {}
    return to_json({"heads": record.heads, "by": list(by), "fields": fields, **saw, **foreseen})


def load(kind: str, text: str) -> Record:
    raw = json.loads(text)
    by = raw["by"]
    fields = {name: [_head(by[index], value) for index, value in heads] for name, heads in raw["fields"].items()}
    saw = {head: set(seen) for head, seen in raw.get("saw", {}).items()}
    return Record(kind, raw["heads"], fields, saw, set(raw.get("foreseen", ())))


def _head(by: list[str], value: Any) -> Head:
    entry, writer, device = by
    return Head(entry, value, writer, device)


def to_json(value: Any) -> str:
    """Compact ASCII JSON: safe in any database's text column."""
    return _ENCODER.encode(value)


_ENCODER = json.JSONEncoder(separators=(",", ":"))
