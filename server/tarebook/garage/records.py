"""A garage's records as everyone outside the journal sees them: lists by plural kind, the dialect of `calc`."""

import json
from collections.abc import Sequence
from typing import Any

from sqlalchemy import select
from sqlalchemy.orm import Session

from tarebook.core.garage.garage import OUTLIVES_DELETION
from tarebook.garage.intake import HOME
from tarebook.journal import state
from tarebook.journal.hanging import brought_back
from tarebook.journal.kinds import KINDS
from tarebook.store.models import DeviceRow, EntryRow, RecordRow, VerdictRow

Records = dict[str, list[dict[str, Any]]]


def plural(kind: str) -> str:
    return f"{kind}s"


def all_records(session: Session, garage: str, deleted: bool = False) -> Records:
    """`{"parts": [{id, name, …}], "jobs": […], …}`: every kind, in order of id.

    A record with open conflicts also has `conflicts: {field: [values]}`, the standing value first. Deleted records
    are left out unless asked for, and then say `deleted: true`, but for what the core reads all the same: withdrawn
    corrections, as by them it is known what took the place of what, and scales and drivers, as what was weighed with
    them stays weighed. One brought back by what its deletion had not seen stands, with a conflict over `deleted`.
    """
    records: Records = {plural(kind): [] for kind in KINDS}
    rows = session.scalars(select(RecordRow).where(RecordRow.garage == garage)).all()
    unseen = _unseen(rows)
    for row in sorted(rows, key=lambda row: row.id):  # not ORDER BY: databases differ in how they order text
        record = _record(row, unseen.get(row.id, []))
        is_read = record.get("replaces") or row.kind in OUTLIVES_DELETION
        if deleted or is_read or not record.get("deleted"):
            records[plural(row.kind)].append(record)
    return records


def _unseen(rows: Sequence[RecordRow]) -> dict[str, list[str]]:
    if not any(row.deleted for row in rows):
        return {}
    return brought_back({row.id: state.load(row.kind, row.state) for row in rows})


def _record(row: RecordRow, unseen: list[str]) -> dict[str, Any]:
    record = {"id": row.id, **json.loads(row.standing)}
    conflicts = {name: [head.value for head in heads] for name, heads in _conflicts(row).items()}
    if unseen:
        conflicts["deleted"] = [True, *(False for _ in unseen)]
    gone = {"deleted": True} if row.deleted and not unseen else {}
    return {**record, **gone, **({"conflicts": conflicts} if conflicts else {})}


def _conflicts(row: RecordRow) -> dict[str, Any]:
    return state.load(row.kind, row.state).conflicts if row.disputed else {}


def set_aside(session: Session, garage: str) -> list[dict[str, Any]]:
    """`[{id, number, reason, text}]`: entries that are set aside and that nobody has decided to leave."""
    left = select(VerdictRow.entry).where(VerdictRow.garage == garage, VerdictRow.take.is_(False))
    columns = select(EntryRow.id, EntryRow.number, EntryRow.reason, EntryRow.text)
    here = columns.where(EntryRow.garage == garage, EntryRow.reason.is_not(None), EntryRow.id.not_in(left))
    rows = session.execute(here.order_by(EntryRow.number))
    return [{"id": r.id, "number": r.number, "reason": r.reason, "text": r.text.decode("utf-8")} for r in rows]


def unproven(session: Session, garage: str) -> list[dict[str, str]]:
    """`[{id, sender, author}]`: records with entries that name another device than is proven to have sent them, and
    that count; devices by the names people gave them, or by their ids."""
    query = select(DeviceRow.id, DeviceRow.name).where(DeviceRow.garage == garage)
    names = {HOME: "the home computer", **{row.id: row.name or row.id for row in session.execute(query)}}
    columns = select(EntryRow.record, EntryRow.sent_by, EntryRow.sent_for)
    here = EntryRow.garage == garage, EntryRow.sent_for.is_not(None), EntryRow.reason.is_(None)
    rows = session.execute(columns.where(*here).order_by(EntryRow.number))
    told = dict.fromkeys((str(row.record), row.sent_by, str(row.sent_for)) for row in rows)
    return [
        {"id": record, "sender": names.get(sender, sender), "author": names.get(author, author)}
        for record, sender, author in told
    ]


def all_texts(session: Session, garage: str) -> list[str]:
    """Every entry's exact text, in number order: the journal itself."""
    query = select(EntryRow.text).where(EntryRow.garage == garage).order_by(EntryRow.number)
    return [text.decode("utf-8") for text in session.scalars(query)]


def strangers(session: Session, garage: str) -> list[str]:
    """The hashes of the entries that came from devices which nobody had let in."""
    query = select(EntryRow.hash).where(EntryRow.garage == garage, EntryRow.intake.is_not(None))
    return list(session.scalars(query.order_by(EntryRow.number)))
