"""The one door by which entries enter: number them, fold them, write both in the caller's transaction.

The garage's row is locked before anything is read, so numbers become visible in order and a reader that has seen
number n has seen all before it. An identity column would not give that: a slower writer's smaller number can
appear after a faster one's larger, and a tailing reader misses it for ever (`tests/sync/test_numbering.py`).
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from typing import Any

from sqlalchemy import select, update
from sqlalchemy.orm import Session

from tarebook.errors import TarebookError
from tarebook.garage import receipts
from tarebook.garage.receipts import Proof
from tarebook.journal import entries, state
from tarebook.journal.fold import Fold
from tarebook.journal.ids import next_mark, raw_id, text_hash
from tarebook.journal.record import STRANGER, WAITING, Kept, Record
from tarebook.store.journal_rows import (
    in_chunks,
    insert_rows,
    mark_at,
    write_reasons,
    write_records,
    write_waiting,
)
from tarebook.store.models import DeviceRow, EntryRow, GarageRow, RecordRow, VerdictRow, WaitingRow, utc_now

BATCH_ENTRIES = 500
BATCH_BYTES = 256 * 1024
HOME = "home"
"""The device of entries the server writes itself."""


@dataclass(frozen=True)
class Result:
    """What became of one text. `state`: accepted, repeated, set_aside or id_reuse; `why`: the reason it is aside.
    `told`: its receipt and its author, as `receipts.told` has them."""

    id: str
    state: str
    number: int
    why: str | None
    told: dict[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class Pushed:
    """`conflicts`: the open ones, now, of the records this push touched: `[{record, fields}]`. `proven`: entries here
    as a stranger's, unjudged, that were shown to have been accepted once; `author.receive` takes them in."""

    head: int
    results: list[Result]
    conflicts: list[dict[str, Any]]
    proven: list[str]


def push(
    session: Session, garage: str, device: str, texts: Sequence[str], shown: Sequence[Proof | None] = ()
) -> Pushed:
    """Takes in the texts, in order, as sent by `device`. Wants a write session (`Database.write`).

    `shown`: what proves each text's author, as long as `texts`, or nothing at all. A text already here is `repeated`,
    whatever happened to it then. Nothing is refused but what breaks a size cap: raises `too_many_entries` or
    `entry_too_large`, before anything is written.
    """
    _within_caps(texts)
    columns = select(GarageRow.head, GarageRow.receipt_key)
    row = session.execute(columns.where(GarageRow.id == garage).with_for_update()).one_or_none()
    if row is None:
        raise TarebookError("garage_unknown")
    intake = _Intake(session, garage, device, row.head, row.receipt_key)
    results = intake.take(list(map(entries.well_formed, texts)), shown or [None] * len(texts))
    intake.write()
    return Pushed(intake.head, results, intake.fold.open_conflicts(), list(intake.proven))


def _within_caps(texts: Sequence[str]) -> None:
    if len(texts) > BATCH_ENTRIES:
        raise TarebookError("too_many_entries", most=BATCH_ENTRIES)
    for index, text in enumerate(texts):
        if len(text.encode("utf-8", "replace")) > entries.ENTRY_BYTES:
            raise TarebookError("entry_too_large", most=entries.ENTRY_BYTES, index=index)


class StoredFold(Fold):
    """The fold of one garage, brought from the database as it is asked for."""

    def __init__(self, session: Session, garage: str) -> None:
        super().__init__()
        self.session = session
        self.garage = garage
        self.asked: dict[str, set[str]] = {"record": set(), "kept": set(), "waiters": set(), "verdict": set()}
        self.walked: set[str] = set()

    def fetch_record(self, record: str) -> Record | None:
        self.bring_records([record])
        return self.records.get(record)

    def fetch_kept(self, entry: str) -> Kept | None:
        self.bring_kept([entry])
        return self.kept.get(entry)

    def fetch_waiters(self, entry: str) -> set[str]:
        self.bring_waiters([entry])
        return self.waiters.get(entry, set())

    def fetch_verdict(self, entry: str) -> bool | None:
        self.bring_verdicts([entry])
        return self.verdicts.get(entry)

    def fetch_history(self, record: str) -> None:
        if record in self.walked:
            return
        self.walked.add(record)
        query = select(EntryRow.id).where(EntryRow.garage == self.garage, EntryRow.record == record)
        self.bring_kept(self.session.scalars(query))

    def bring_records(self, names: Iterable[str]) -> None:
        for some in self._unasked("record", names):
            query = select(RecordRow.id, RecordRow.kind, RecordRow.state)
            for row in self.session.execute(query.where(RecordRow.garage == self.garage, RecordRow.id.in_(some))):
                self.records[row.id] = state.load(row.kind, row.state)

    def bring_kept(self, names: Iterable[str]) -> None:
        for some in self._unasked("kept", names):
            columns = select(EntryRow.id, EntryRow.number, EntryRow.text, EntryRow.intake, EntryRow.reason)
            for row in self.session.execute(columns.where(EntryRow.garage == self.garage, EntryRow.id.in_(some))):
                reused = row.reason == "id_reuse"
                entry = entries.read(row.text.decode("utf-8"))
                self.kept.setdefault(row.id, Kept(row.id, row.number, entry, row.intake, row.reason, reused))

    def bring_waiters(self, names: Iterable[str]) -> None:
        for some in self._unasked("waiters", names):
            query = select(WaitingRow.needs, WaitingRow.entry)
            for row in self.session.execute(query.where(WaitingRow.garage == self.garage, WaitingRow.needs.in_(some))):
                self.waiters.setdefault(row.needs, set()).add(row.entry)

    def bring_verdicts(self, names: Iterable[str]) -> None:
        for some in self._unasked("verdict", names):
            query = select(VerdictRow.entry, VerdictRow.take)
            for row in self.session.execute(query.where(VerdictRow.garage == self.garage, VerdictRow.entry.in_(some))):
                self.verdicts.setdefault(row.entry, row.take)

    def _unasked(self, what: str, names: Iterable[str]) -> Iterable[list[str]]:
        new = set(names) - self.asked[what]
        self.asked[what] |= new
        return in_chunks(new) if new else ()

    def open_conflicts(self) -> list[dict[str, Any]]:
        open_now = ((name, list(self.records[name].conflicts)) for name in sorted(self.changed_records))
        return [{"record": name, "fields": fields} for name, fields in open_now if fields]


class _Intake:
    """One push: names and numbers its texts, folds them, and writes what changed."""

    def __init__(self, session: Session, garage: str, device: str, head: int, key: bytes) -> None:
        self.session = session
        self.garage = garage
        self.device = device
        self.head = head
        self.key = key
        self.fold = StoredFold(session, garage)
        self.mark = mark_at(session, garage, head) or ""
        self.hashes: dict[str, str] = {}
        self.authors: dict[str, str] = {}
        self.rows: dict[str, dict[str, Any]] = {}
        self.proven: dict[str, None] = {}
        query = select(DeviceRow.id).where(DeviceRow.garage == garage, DeviceRow.revoked_at.is_(None))
        self.known = {HOME, *session.scalars(query)}

    def take(self, texts: list[str], shown: Sequence[Proof | None]) -> list[Result]:
        read = [(text, entries.read(text), proof) for text, proof in zip(texts, shown, strict=True)]
        self._bring([entry for _text, entry, _proof in read if entry is not None])
        return [self._take_one(text, entry, proof) for text, entry, proof in read]

    def _bring(self, batch: list[entries.Entry]) -> None:
        """All that an ordinary batch needs of the past, in a query each."""
        names, made = {entry.id for entry in batch}, {entry.record for entry in batch if not entry.base}
        self._bring_hashes(names)
        self.fold.bring_kept(names.union(*(entry.base for entry in batch)))
        self.fold.bring_records(entry.record for entry in batch)
        self.fold.bring_waiters(names | made)
        self.fold.bring_verdicts(names)

    def _bring_hashes(self, names: Iterable[str]) -> None:
        for some in in_chunks(names):
            columns = select(EntryRow.id, EntryRow.hash, EntryRow.sent_by)
            for row in self.session.execute(columns.where(EntryRow.garage == self.garage, EntryRow.id.in_(some))):
                self.hashes[row.id], self.authors[row.id] = row.hash, row.sent_by

    def _take_one(self, text: str, entry: entries.Entry | None, proof: Proof | None) -> Result:
        name, digest, reused = entry.id if entry else raw_id(text), text_hash(text), False
        if entry is not None and self.hashes.get(name, digest) != digest:
            name, reused = raw_id(text), True
        if entry is None or reused:
            self._bring_hashes([name])
        device = entry.device if entry else None
        author = receipts.author_of(self.key, digest, device, proof)
        if name in self.hashes:
            if author is not None and self._is_strangers(name):
                self.proven[name] = None
            return self._result(name, "repeated")
        stranger = STRANGER if author is None and device is not None and device not in self.known else None
        self.hashes[name], self.authors[name] = digest, author or self.device
        return self._keep(Kept(name, self.head + 1, entry, stranger, WAITING, reused), text)

    def _is_strangers(self, name: str) -> bool:
        """Whether it came as a stranger's and nobody has judged it."""
        kept = self.fold.fetch_kept(name)
        return kept is not None and kept.intake == STRANGER and self.fold.fetch_verdict(name) is None

    def _keep(self, kept: Kept, text: str) -> Result:
        name, digest, entry, stranger = kept.id, self.hashes[kept.id], kept.entry, kept.intake
        author = self.authors[name]
        self.head = kept.number
        self.mark = next_mark(self.mark, digest, stranger)
        self.rows[name] = {
            "garage": self.garage, "number": self.head, "id": name, "hash": digest, "mark": self.mark,
            "text": text.encode("utf-8"), "record": entry.record if entry else None,
            "sent_by": author, "sent_for": entry.device if entry and entry.device != author else None,
            "intake": stranger,
        }  # fmt: skip
        self.fold.put(kept)
        plain = "accepted" if kept.reason is None else "set_aside"
        return self._result(name, "id_reuse" if kept.reused else plain)

    def _result(self, name: str, outcome: str) -> Result:
        kept = self.fold.fetch_kept(name)
        if kept is None:
            raise LookupError(f"the journal has no entry {name}")
        device = kept.entry.device if kept.entry else None
        accepted = kept.intake is None or kept.reason is None
        told = receipts.told(self.key, self.hashes[name], device, self.authors[name], accepted)
        return Result(name, outcome, kept.number, kept.reason, told)

    def write(self) -> None:
        self._write_entries()
        write_records(self.session, self.garage, self.fold)
        write_waiting(self.session, self.garage, self.fold, self.fold.changed_entries)
        head = update(GarageRow).where(GarageRow.id == self.garage).values(head=self.head)
        self.session.execute(head)

    def _write_entries(self) -> None:
        now = utc_now()
        for name, row in self.rows.items():
            row.update(reason=self.fold.kept[name].reason, received_at=now)
        insert_rows(self.session, EntryRow, list(self.rows.values()))
        older = self.fold.changed_entries - self.rows.keys()
        write_reasons(self.session, self.garage, {name: self.fold.kept[name].reason for name in older})
