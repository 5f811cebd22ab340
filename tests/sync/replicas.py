"""What a replica says of a garage, in a shape that two of them can be compared by."""

from __future__ import annotations

from typing import Any

from sqlalchemy import select

from tarebook.garage.records import set_aside
from tarebook.journal import state
from tarebook.journal.fold import Fold
from tarebook.store.models import RecordRow
from tests.home import Home


def folded(fold: Fold) -> dict[str, Any]:
    """Of a fold in memory."""
    records = {name: (record.kind, state.dump(record)) for name, record in fold.records.items()}
    return {"records": records, "aside": fold.aside()}


def server_state(home: Home) -> dict[str, Any]:
    """Of the server's tables."""
    with home.database.read() as session:
        rows = session.execute(
            select(RecordRow.id, RecordRow.kind, RecordRow.state).where(RecordRow.garage == home.garage)
        )
        records = {row.id: (row.kind, row.state) for row in rows}
        aside = {row["id"]: row["reason"] for row in set_aside(session, home.garage)}
    return {"records": records, "aside": aside}
