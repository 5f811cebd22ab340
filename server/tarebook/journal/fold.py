"""The fold: a journal's entries, in number order, make its records.

Causality is exact and needs no clock: an entry names in `base` the heads of its record as its writer saw them. A
field set by two writers who had not seen each other keeps the standing value first and holds both, an open
conflict for a person to settle. What cannot be folded is set aside with a reason and stays. An entry waits whose base
has not arrived, waits itself, or came from a stranger and nobody has judged it yet; one that edits a record which is
not there is invalid until there is one. Both are looked at again right after that. The phone folds by the same rules
(`webapp/src/journal/fold.ts`); `fixtures/journals/` holds both to them.
"""

import heapq
from dataclasses import dataclass, field
from typing import Any

from tarebook.journal import entries
from tarebook.journal.entries import Entry
from tarebook.journal.ids import raw_id
from tarebook.journal.kinds import KINDS

WAITING = "waiting"
STRANGER = "stranger"
INVALID = "invalid"


@dataclass(frozen=True)
class Head:
    """One value of a field that no later entry known to its writer has replaced."""

    entry: str
    value: Any
    writer: str
    device: str


@dataclass
class Record:
    """`heads`: entries that no other of the record has seen. `fields`: per field its heads, the standing one first."""

    kind: str
    heads: list[str] = field(default_factory=list)
    fields: dict[str, list[Head]] = field(default_factory=dict)

    @property
    def deleted(self) -> bool:
        return bool(self.fields.get("deleted")) and self.fields["deleted"][0].value is True

    @property
    def values(self) -> dict[str, Any]:
        """The standing value of each field that has one; the tombstone apart."""
        standing = {name: heads[0].value for name, heads in self.fields.items() if name != "deleted"}
        return {name: value for name, value in standing.items() if value is not None}

    @property
    def conflicts(self) -> dict[str, list[Head]]:
        return {name: heads for name, heads in self.fields.items() if _differ(heads)}


def _differ(heads: list[Head]) -> bool:
    return len(heads) > 1 and any(head.value != heads[0].value for head in heads[1:])


@dataclass
class Kept:
    """An entry as the journal keeps it. `intake`: a reason only the server could know. `reason`: None once folded."""

    id: str
    number: int
    entry: Entry | None
    intake: str | None = None
    reason: str | None = WAITING
    reused: bool = False

    @property
    def read_entry(self) -> Entry:
        if self.entry is None:
            raise LookupError(f"{self.id} holds no readable entry")
        return self.entry


class Fold:
    """The state of one garage's journal. A subclass may fetch earlier state as it is asked for (`fetch_*`)."""

    def __init__(self) -> None:
        self.records: dict[str, Record] = {}
        self.kept: dict[str, Kept] = {}
        self.waiters: dict[str, set[str]] = {}
        self.verdicts: dict[str, bool] = {}
        self.changed_records: set[str] = set()
        self.changed_entries: set[str] = set()
        self.changed_verdicts: set[str] = set()
        self._due: list[tuple[int, str]] = []

    def fetch_record(self, record: str) -> Record | None:
        return self.records.get(record)

    def fetch_kept(self, entry: str) -> Kept | None:
        return self.kept.get(entry)

    def fetch_waiters(self, entry: str) -> set[str]:
        return self.waiters.get(entry, set())

    def fetch_verdict(self, entry: str) -> bool | None:
        return self.verdicts.get(entry)

    def fetch_history(self, record: str) -> None:
        """Called before the entries of a record are walked, so that they can be brought at once."""

    def aside(self) -> dict[str, str]:
        """Name -> reason of every entry set aside that nobody has decided to leave."""
        return {
            kept.id: kept.reason
            for kept in self.kept.values()
            if kept.reason is not None and self.verdicts.get(kept.id) is not False
        }

    def add(self, number: int, text: str, intake: str | None = None) -> Kept:
        """Folds the next entry, and whatever waited for it. The same bytes must not be added twice."""
        entry = entries.read(text)
        reused = entry is not None and self.fetch_kept(entry.id) is not None
        name = raw_id(text) if entry is None or reused else entry.id
        return self.put(Kept(name, number, entry, intake, WAITING, reused))

    def put(self, kept: Kept) -> Kept:
        """Folds an entry already read and named."""
        self.kept[kept.id] = kept
        self._due = [(kept.number, kept.id)]
        while self._due:
            self._settle(heapq.heappop(self._due)[1])
        return kept

    def _settle(self, name: str) -> None:
        kept = self.fetch_kept(name)
        if kept is None or kept.reason not in (WAITING, STRANGER, INVALID):
            return
        self.changed_entries.add(name)
        kept.reason = self._obstacle(kept)
        if kept.reason is None:
            self._apply(kept.read_entry)
        for needed in self.needs(name):
            self.waiters.setdefault(needed, set()).add(name)
        if not self._unsettled(name):
            self._wake(name)

    def _wake(self, name: str) -> None:
        """Looks again at all that waited for an entry, or for a record, of this name."""
        for waiter in self.fetch_waiters(name):
            self._schedule(waiter)
        self.waiters.pop(name, None)

    def _obstacle(self, kept: Kept) -> str | None:
        entry = kept.entry
        if entry is None:
            return "unreadable"
        if kept.reused:
            return "id_reuse"
        fault = entries.problem(entry)
        if fault:
            return fault
        if self.fetch_verdict(kept.id) is not True:
            if kept.intake:
                return kept.intake
            if any(self._unsettled(base) for base in entry.base):
                return WAITING
        return misfit(entry, self.fetch_record(entry.record))

    def _unsettled(self, name: str) -> bool:
        """Whether it may still be folded, for all that is known: not here, waiting, or a stranger's and not judged."""
        kept = self.fetch_kept(name)
        if kept is None:
            return True
        return kept.reason in (WAITING, STRANGER) and self.fetch_verdict(name) is not False

    def needs(self, name: str) -> list[str]:
        """What an entry set aside waits for: its bases that are not settled, or the record that it edits."""
        kept = self.fetch_kept(name)
        if kept is None or kept.reason not in (WAITING, INVALID):
            return []
        if kept.reason == WAITING:
            return sorted(set(filter(self._unsettled, kept.read_entry.base)))
        return [kept.read_entry.record] if entries.problem(kept.read_entry) is None else []

    def _schedule(self, name: str) -> None:
        kept = self.fetch_kept(name)
        if kept is not None:
            heapq.heappush(self._due, (kept.number, name))

    def _apply(self, entry: Entry) -> None:
        record = self.fetch_record(entry.record)
        if record is None:
            record = self.records[entry.record] = Record(entry.kind)
            self._wake(entry.record)
        self.changed_records.add(entry.record)
        # Who saw every head saw all of the record: no need to walk its past.
        seen = None if set(entry.base) == set(record.heads) else self._seen_by(entry)
        for name, value in entries.known(KINDS[entry.kind], entry.set).items():
            head = Head(entry.id, value, entry.writer, entry.device)
            record.fields[name] = self._placed(record.fields.get(name, []), head, seen)
        late = seen is not None and any(self._has_seen(head, entry) for head in record.heads)
        remaining = [head for head in record.heads if seen is not None and head not in seen]
        record.heads = remaining if late else [*remaining, entry.id]
        if entry.kind == "verdict" and "entry" in entry.set:
            self._judge(entry.set["entry"], entry.set["take"])

    def _placed(self, heads: list[Head], new: Head, seen: set[str] | None) -> list[Head]:
        """The field's heads with `new` in the place of the first it has seen, or after all of them."""
        if seen is None:
            return [new]
        if any(self._has_seen(head.entry, self._entry(new.entry)) for head in heads):
            return heads  # taken in late: what its writer's later entries say already stands
        stale = [index for index, head in enumerate(heads) if head.entry in seen]
        place = stale[0] if stale else len(heads)
        return [*heads[:place], new, *(head for head in heads[place:] if head.entry not in seen)]

    def _entry(self, name: str) -> Entry:
        kept = self.fetch_kept(name)
        if kept is None:
            raise LookupError(f"the journal has no entry {name}")
        return kept.read_entry

    def _has_seen(self, later: str, earlier: Entry) -> bool:
        return earlier.id in self._seen_by(self._entry(later))

    def _seen_by(self, entry: Entry) -> set[str]:
        """Names of all entries the writer had seen of this record: `base`, and theirs, and so on."""
        self.fetch_history(entry.record)
        seen: set[str] = set()
        unwalked = list(entry.base)
        while unwalked:
            name = unwalked.pop()
            kept = None if name in seen else self.fetch_kept(name)
            seen.add(name)
            if kept is not None and kept.entry is not None:
                unwalked.extend(kept.entry.base)
        return seen

    def _judge(self, name: str, take: bool) -> None:
        """A person's verdict on an entry set aside. One who takes it in outweighs any who leave it."""
        self.verdicts[name] = take or self.fetch_verdict(name) is True
        self.changed_verdicts.add(name)
        self._schedule(name)


def misfit(entry: Entry, record: Record | None) -> str | None:
    """Why a sound entry does not fit the record as it stands: `kind_changed`, `fact`, or `invalid`."""
    if record is None:
        return INVALID if entries.lacks_required(KINDS[entry.kind], entry.set) else None
    if record.kind != entry.kind:
        return "kind_changed"
    return "fact" if KINDS[entry.kind].fact and set(entry.set) - {"deleted"} else None
