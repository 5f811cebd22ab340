"""The fold: a journal's entries, in number order, make its records.

Causality is exact and needs no clock: an entry names in `base` the heads of its record as its writer saw them. A
field set by two writers who had not seen each other keeps the standing value first and holds both, an open
conflict for a person to settle. What cannot be folded is set aside with a reason and stays. An entry waits whose base
has not arrived, waits itself, or came from a stranger and nobody has judged it yet, unless a person has taken it in and
its record is there; one that edits a record which is not there is invalid until there is one. Both are looked at again
right after that. The phone folds by the same rules
(`webapp/src/journal/fold.ts`); `fixtures/journals/` holds both to them.
"""

import heapq

from tarebook.journal import entries
from tarebook.journal.entries import Entry
from tarebook.journal.ids import raw_id
from tarebook.journal.kinds import KINDS
from tarebook.journal.record import INVALID, STRANGER, WAITING, Head, Kept, Record


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
        else:
            self._look_behind(kept)
        for needed in self.needs(name):
            self.waiters.setdefault(needed, set()).add(name)
        if not self._unsettled(name):
            self._wake(name)

    def _look_behind(self, kept: Kept) -> None:
        """An entry that the record's have seen is here, set aside: now they have seen what it had seen."""
        record = self.fetch_record(kept.entry.record) if kept.entry else None
        if record and kept.id in record.foreseen:
            self._foresee(record, self._seen_by(kept.read_entry))
            self._walk_from_heads(record)
            self.changed_records.add(kept.read_entry.record)

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
        taken = self.fetch_verdict(kept.id) is True
        if kept.intake and not taken:
            return kept.intake
        wrong = misfit(entry, self.fetch_record(entry.record))
        may_wait = not taken or wrong == INVALID
        return WAITING if may_wait and any(self._unsettled(base) for base in entry.base) else wrong

    def _unsettled(self, name: str) -> bool:
        """Whether it may still be folded, for all that is known: not here, waiting, or a stranger's and not judged."""
        kept = self.fetch_kept(name)
        if kept is None:
            return True
        return kept.reason in (WAITING, STRANGER) and self.fetch_verdict(name) is not False

    def needs(self, name: str) -> list[str]:
        """What an entry set aside waits for: its bases that are not settled, or the record that it edits. One taken in
        waits for either."""
        kept = self.fetch_kept(name)
        if kept is None or kept.reason not in (WAITING, INVALID):
            return []
        if kept.reason == WAITING:
            entry = kept.read_entry
            record = {entry.record} if self.fetch_verdict(name) is True else set()
            return sorted(record.union(filter(self._unsettled, entry.base)))
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
        seen = self._seen_of(record, entry)
        if seen is not None and len(record.heads) == 1:
            record.saw = {record.heads[0]: record.claims}
        is_late = self._may_be_late(record, entry)
        fields = entries.known(KINDS[entry.kind], entry.set)
        for name, value in fields.items():
            head = Head(entry.id, value, entry.writer, entry.device)
            record.fields[name] = self._placed(record.fields.get(name, []), head, seen, is_late)
        if seen is not None and "deleted" not in fields and _is_work_unseen(record, seen):
            stands = Head(entry.id, False, entry.writer, entry.device)
            knowing = seen - _deletions(record)  # of a deletion that it knew of, it says nothing
            record.fields["deleted"] = self._placed(record.fields["deleted"], stands, knowing, is_late)
        if seen is not None and fields.get("deleted") is True:
            self._keep_what_was_unseen(record, entry, seen)
        is_seen = seen is not None and is_late and any(self._has_seen(head, entry) for head in record.heads)
        remaining = [head for head in record.heads if seen is not None and head not in seen]
        record.heads = remaining if is_seen else [*remaining, entry.id]
        record.foreseen.discard(entry.id)
        self._note_what_heads_saw(record, entry.id, seen, is_late)
        if entry.kind == "verdict" and "entry" in entry.set:
            self._judge(entry.set["entry"], entry.set["take"])

    def _keep_what_was_unseen(self, record: Record, deletion: Entry, seen: set[str]) -> None:
        """A deletion never beats work it has not seen: whose branch it ends says that the record stands."""
        claims = record.fields["deleted"]
        holders = {claim.entry for claim in claims}
        if deletion.id not in holders:
            return
        unseen = [self._entry(head) for head in record.heads if head not in seen and head not in holders]
        claims.extend(Head(work.id, False, work.writer, work.device) for work in unseen)

    def _seen_of(self, record: Record, entry: Entry) -> set[str] | None:
        """What of the record's heads, and of its fields', the entry has seen; None is all of it.

        Who builds on heads has seen what they saw: only a past that ends elsewhere has to be walked, or one of an
        entry that comes late. So a branch nobody else has seen costs each of its entries the same, however long it is.
        """
        heads = set(record.heads)
        if heads == set(entry.base):
            return None
        if heads.issuperset(entry.base) and not self._may_be_late(record, entry):
            return set(entry.base).union(*(record.saw[base] for base in entry.base))
        seen = self._seen_by(entry)
        self._foresee(record, seen)
        return seen

    def _may_be_late(self, record: Record, entry: Entry) -> bool:
        return entry.id in record.foreseen

    def _foresee(self, record: Record, seen: set[str]) -> None:
        for name in seen:
            kept = self.fetch_kept(name)
            if kept is None or kept.reason is not None:
                record.foreseen.add(name)

    def _note_what_heads_saw(self, record: Record, name: str, seen: set[str] | None, is_late: bool) -> None:
        if len(record.heads) == 1:
            record.saw = {}
        elif is_late:
            self._walk_from_heads(record)
        else:
            mine = record.claims & seen if seen else set()
            record.saw = {head: saw for head, saw in record.saw.items() if not seen or head not in seen} | {name: mine}

    def _walk_from_heads(self, record: Record) -> None:
        if len(record.heads) > 1:
            known = record.claims | set(record.heads)
            record.saw = {head: known & self._seen_by(self._entry(head)) for head in record.heads}

    def _placed(self, heads: list[Head], new: Head, seen: set[str] | None, is_late: bool) -> list[Head]:
        """The field's heads with `new` in the place of the first it has seen, or after all of them."""
        if seen is None:
            return [new]
        if is_late and any(self._has_seen(head.entry, self._entry(new.entry)) for head in heads):
            return heads  # what its writer's later entries say already stands
        if not seen:
            return [*heads, new]
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


def _is_work_unseen(record: Record, seen: set[str]) -> bool:
    """Whether the record was deleted by somebody whom an edit that has seen so much had not seen."""
    return not _deletions(record) <= seen


def _deletions(record: Record) -> set[str]:
    """Names of the entries that say of the record, as it stands, that it is deleted."""
    return {claim.entry for claim in record.fields.get("deleted", ()) if claim.value is True}
