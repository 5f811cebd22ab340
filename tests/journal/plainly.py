"""A history folded by the server's fold, for a comparison with the phone's (`plainly.ts`)."""

from typing import Any

from tarebook.journal.fold import Fold
from tarebook.journal.record import Head


def _claim(head: Head) -> list[Any]:
    return [head.entry, head.value]


def plainly(fold: Fold) -> dict[str, Any]:
    records = {
        name: [rec.kind, list(rec.heads), {key: list(map(_claim, heads)) for key, heads in rec.fields.items()}]
        for name, rec in fold.records.items()
    }
    return {"records": records, "reasons": {name: kept.reason for name, kept in fold.kept.items()}}
