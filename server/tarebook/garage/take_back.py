"""Taking back what one device has sent: the records become what they would be without it, and can be given back.

Bytes stay and no verdict is rewritten: the journal is folded once more with those entries left, as a stranger's that
nobody wants, and ordinary entries of the home computer's own make the difference. So every phone follows without a
rule of its own. A record that others have worked on meanwhile stays, as its being gone would take their work along.

The entries that do so bear the device in the name of their writer: they are found again in any restored garage.
Giving back is the same with those entries left.
"""

from __future__ import annotations

import hashlib
import secrets
from collections import Counter
from dataclasses import dataclass, field
from typing import Any, Literal

from sqlalchemy import select
from sqlalchemy.orm import Session

from tarebook.garage import author
from tarebook.garage.author import Change
from tarebook.garage.intake import HOME, StoredFold
from tarebook.journal import entries
from tarebook.journal.fold import Fold
from tarebook.journal.kinds import KINDS
from tarebook.journal.record import STRANGER, Kept, Record
from tarebook.store.models import EntryRow
from tarebook.store.rebuild import refold

What = Literal["taken", "given"]


@dataclass
class Plan:
    """What would change. `gone`, `back`, `set`: records by kind that go, come back, or get other values.
    `shared`: those that stay because others have worked on them."""

    changes: list[Change] = field(default_factory=list)
    gone: Counter[str] = field(default_factory=Counter)
    back: Counter[str] = field(default_factory=Counter)
    set: Counter[str] = field(default_factory=Counter)
    shared: Counter[str] = field(default_factory=Counter)


@dataclass(frozen=True)
class _Act:
    entry: str
    number: int
    what: What


class _Without(Fold):
    """The fold as it would be if some entries had come from a stranger and a person had left them."""

    def __init__(self, left: set[str]) -> None:
        super().__init__()
        self._left = left

    def put(self, kept: Kept) -> Kept:
        if kept.id in self._left:
            kept.intake = STRANGER
        return super().put(kept)

    def fetch_verdict(self, entry: str) -> bool | None:
        return False if entry in self._left else super().fetch_verdict(entry)


def taking_back(session: Session, garage: str, device: str, since: str = "") -> Plan:
    """`since`: a moment as the journal has them; what arrived before it stays."""
    columns = select(EntryRow.id).where(EntryRow.garage == garage, EntryRow.sent_by == device)
    sent = set(session.scalars(columns.where(EntryRow.received_at >= since)))
    acts = _acts(session, garage, device)
    given = max((act.number for act in acts if act.what == "given"), default=0)
    return _plan(session, garage, sent | {act.entry for act in acts if act.number <= given}, acts)


def giving_back(session: Session, garage: str, device: str) -> Plan:
    """Undoes all that was ever taken back from the device."""
    acts = _acts(session, garage, device)
    return _plan(session, garage, {act.entry for act in acts}, acts)


def carry_out(session: Session, garage: str, device: str, what: What, plan: Plan) -> None:
    """Writes the plan's entries, in the transaction it was made in. Wants a write session."""
    author.write(session, garage, plan.changes, writer=author.Writer(f"{_writer(what, device)}{secrets.token_hex(4)}"))


def _writer(what: What, device: str) -> str:
    return f"{what}-back-{hashlib.sha256(device.encode()).hexdigest()[:16]}-"


def _acts(session: Session, garage: str, device: str) -> list[_Act]:
    """All that was taken from this device or given back, in order."""
    both: tuple[What, ...] = ("taken", "given")
    columns = select(EntryRow.id, EntryRow.number, EntryRow.text).where(EntryRow.garage == garage)
    own = columns.where(EntryRow.sent_by == HOME, EntryRow.sent_for.is_(None)).order_by(EntryRow.number)
    found = []
    for row in session.execute(own):
        entry = entries.read(row.text.decode("utf-8"))
        writer = entry.writer if entry else ""
        found += [_Act(row.id, row.number, what) for what in both if writer.startswith(_writer(what, device))]
    return found


def _plan(session: Session, garage: str, left: set[str], acts: list[_Act]) -> Plan:
    plan, now, then = Plan(), StoredFold(session, garage), refold(session, garage, _Without(left))
    touched = {kept.entry.record for name in left if (kept := then.kept[name]).entry}
    ours = left.union(act.entry for act in acts)
    others = {kept.entry.record for name, kept in then.kept.items() if kept.entry and name not in ours}
    now.bring_records(touched)
    for name in sorted(touched & now.records.keys()):
        record = now.records[name]
        if record.kind != "verdict":
            _compare(plan, name, record, then.records.get(name), name in others)
    return plan


def _compare(plan: Plan, name: str, now: Record, then: Record | None, is_shared: bool) -> None:
    if then is None and is_shared and not now.deleted:
        plan.shared[now.kind] += 1
        return
    change = {"deleted": True} if then is None else _difference(now, then)
    if (then is None and now.deleted) or not change:
        return
    deleted = change.get("deleted")
    where = plan.set if deleted is None else plan.gone if deleted else plan.back
    where[now.kind] += 1
    plan.changes.append(Change(now.kind, name, change))


def _difference(now: Record, then: Record) -> dict[str, Any]:
    """The fields to set so that `now` reads as `then`; of a fact, which nobody edits, only whether it is gone."""
    fields = set() if KINDS[now.kind].fact else {*now.fields, *then.fields} - {"deleted"}
    settled = now.conflicts.keys() - then.conflicts.keys()
    change = {
        name: then.values.get(name)
        for name in sorted(fields)
        if name in settled or now.values.get(name) != then.values.get(name)
    }
    return {**change, **({"deleted": then.deleted} if now.deleted != then.deleted else {})}
