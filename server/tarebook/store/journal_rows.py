"""The journal's rows: how entries, the records folded from them and what still waits are written and counted."""

from collections.abc import Iterable
from typing import Any

from sqlalchemy import bindparam, delete, insert, select, update
from sqlalchemy.orm import Session

from tarebook.errors import TarebookError
from tarebook.journal import state
from tarebook.journal.fold import Fold
from tarebook.journal.ids import next_mark, text_hash
from tarebook.journal.record import Record
from tarebook.store.models import EntryRow, GarageRow, RecordRow, Table, VerdictRow, WaitingRow


def mark_at(session: Session, garage: str, number: int) -> str | None:
    """The mark of the journal's first `number` entries; "" of none; None when there are not so many."""
    if number == 0:
        return ""
    return session.scalar(select(EntryRow.mark).where(EntryRow.garage == garage, EntryRow.number == number))


def walked(session: Session, garage: str) -> tuple[int, str]:
    """(number, mark) of the last entry, the chain made again from the texts."""
    number, mark = 0, ""
    entries = select(EntryRow.number, EntryRow.text, EntryRow.intake).where(EntryRow.garage == garage)
    for row in session.execute(entries.order_by(EntryRow.number).execution_options(yield_per=1000)):
        number, mark = row.number, next_mark(mark, text_hash(row.text.decode("utf-8")), row.intake)
    return number, mark


def check_marks(session: Session, file: str) -> None:
    """Raises `database_damaged`, naming the file, when a garage's journal is not what its marks say."""
    for row in session.scalars(select(GarageRow)):
        if walked(session, row.id) != (row.head, mark_at(session, row.id, row.head)):
            raise TarebookError("database_damaged", file=file, reason="its journal is not what it was")


def in_chunks(items: Iterable[str], size: int = 500) -> Iterable[list[str]]:
    """Sorted lists short enough for one query's IN."""
    ordered = sorted(set(items))
    return (ordered[start : start + size] for start in range(0, len(ordered), size))


def insert_rows(session: Session, table: type[Table], rows: list[dict[str, Any]]) -> None:
    """Many rows at once, past the session's own bookkeeping, which would cost more than the database."""
    if rows:
        session.connection().execute(insert(table), rows)


def write_reasons(session: Session, garage: str, reasons: dict[str, str | None]) -> None:
    """Sets why each named entry is aside; None: it no longer is."""
    if not reasons:
        return
    named = update(EntryRow).where(EntryRow.garage == garage, EntryRow.id == bindparam("name"))
    changed = [{"name": name, "why": why} for name, why in reasons.items()]
    session.connection().execute(named.values(reason=bindparam("why")), changed)


def write_records(session: Session, garage: str, fold: Fold) -> None:
    """Writes every record the fold has changed, new ones and old."""
    changed = [_record_row(garage, name, fold.records[name]) for name in sorted(fold.changed_records)]
    names = [row["id"] for row in changed]
    for some in in_chunks(names):
        session.execute(delete(RecordRow).where(RecordRow.garage == garage, RecordRow.id.in_(some)))
    insert_rows(session, RecordRow, changed)


def _record_row(garage: str, name: str, record: Record) -> dict[str, Any]:
    return {
        "garage": garage, "id": name, "kind": record.kind, "state": state.dump(record),
        "standing": state.to_json(record.values), "deleted": record.deleted,
        "disputed": bool(record.conflicts),
    }  # fmt: skip


def write_waiting(session: Session, garage: str, fold: Fold, changed: set[str]) -> None:
    """Writes what each changed entry still waits for, and the verdicts met."""
    for some in in_chunks(changed):
        session.execute(delete(WaitingRow).where(WaitingRow.garage == garage, WaitingRow.entry.in_(some)))
    waits = [
        {"garage": garage, "needs": needs, "entry": name} for name in sorted(changed) for needs in fold.needs(name)
    ]
    insert_rows(session, WaitingRow, waits)
    verdicts = {name: fold.verdicts[name] for name in fold.changed_verdicts}
    for some in in_chunks(verdicts):
        session.execute(delete(VerdictRow).where(VerdictRow.garage == garage, VerdictRow.entry.in_(some)))
    rows = [{"garage": garage, "entry": name, "take": take} for name, take in verdicts.items()]
    insert_rows(session, VerdictRow, rows)
