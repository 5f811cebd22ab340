"""Makes the fold again from the journal alone; the outcome must be what was there.

It runs by itself when the program's rules differ from those that made the fold, which is also how entries set aside
by an older program come in after an update.
"""

import hashlib
from dataclasses import dataclass

from sqlalchemy import delete, select, update
from sqlalchemy.orm import Session

from tarebook.errors import TarebookError
from tarebook.journal.fold import Fold
from tarebook.journal.kinds import KINDS, SCHEMA
from tarebook.journal.state import to_json
from tarebook.store.journal_rows import write_reasons, write_records, write_waiting
from tarebook.store.models import EntryRow, GarageRow, RecordRow, VerdictRow, WaitingRow

FOLD_VERSION = 5
"""Raise it when `journal.entries` or `journal.fold` fold the same entries differently."""


def rules() -> str:
    """Fingerprint of the rules by which this program folds: tables made by others are made again."""
    table = to_json([SCHEMA, FOLD_VERSION, [kind.rule for kind in KINDS.values()]])
    return hashlib.sha256(table.encode()).hexdigest()


@dataclass(frozen=True)
class Rebuilt:
    """`changed`: records, and reasons to be set aside, that came out different from what was there."""

    entries: int
    records: int
    aside: int
    changed: int


def rebuild(session: Session, garage: str) -> Rebuilt:
    """Folds a garage again from its entries. Wants a write session. Raises `garage_unknown`."""
    row = session.scalar(select(GarageRow).where(GarageRow.id == garage).with_for_update())
    if row is None:
        raise TarebookError("garage_unknown")
    before, reasons = _records(session, garage), _reasons(session, garage)
    fold = refold(session, garage)
    for table in (RecordRow, WaitingRow, VerdictRow):
        session.execute(delete(table).where(table.garage == garage))
    write_records(session, garage, fold)
    write_waiting(session, garage, fold, set(fold.kept))
    now = {name: kept.reason for name, kept in fold.kept.items()}
    changed = {name: reason for name, reason in now.items() if reasons[name] != reason}
    write_reasons(session, garage, changed)
    session.execute(update(GarageRow).where(GarageRow.id == garage).values(folded_by=rules()))
    differ = before.items() ^ _records(session, garage).items()
    aside = sum(reason is not None for reason in now.values())
    return Rebuilt(len(now), len(fold.records), aside, len({name for name, _row in differ}) + len(changed))


def refold(session: Session, garage: str, fold: Fold | None = None) -> Fold:
    """The garage's journal, folded in memory from its first entry, into `fold` where an unusual one is meant."""
    fold = fold or Fold()
    query = select(EntryRow.number, EntryRow.text, EntryRow.intake).where(EntryRow.garage == garage)
    rows = session.execute(query.order_by(EntryRow.number).execution_options(yield_per=1000))
    for row in rows:
        fold.add(row.number, row.text.decode("utf-8"), row.intake)
    return fold


def _records(session: Session, garage: str) -> dict[str, tuple[str, str, str, bool]]:
    columns = select(RecordRow.id, RecordRow.kind, RecordRow.state, RecordRow.standing, RecordRow.deleted)
    rows = session.execute(columns.where(RecordRow.garage == garage))
    return {row.id: (row.kind, row.state, row.standing, row.deleted) for row in rows}


def _reasons(session: Session, garage: str) -> dict[str, str | None]:
    rows = session.execute(select(EntryRow.id, EntryRow.reason).where(EntryRow.garage == garage))
    return {row.id: row.reason for row in rows}
