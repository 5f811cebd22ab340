"""One import taken back as one: every record it made is withdrawn, every value it corrected is what it was.

The base of each entry is only the import's own, so that a value somebody else gives meanwhile, on a phone that has not
been heard of yet, meets it as a conflict and is not lost. What is known to have been changed since, or is what later
records rest on (a photo, a weighing, a weigh-in that lists the job), stays with all of its line, and is told.
"""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, field

from sqlalchemy import select
from sqlalchemy.orm import Session

from tarebook.garage.author import Change, Writer, write
from tarebook.garage.records import all_records
from tarebook.importing.earlier import Earlier, job_of_each, read_earlier, undo_writer
from tarebook.journal import state
from tarebook.journal.entries import Entry
from tarebook.store.models import RecordRow


@dataclass
class Undone:
    """`withdrawn`: jobs that went; `restored`: jobs with values as they were; `kept`: names of the jobs that stay, as
    somebody has worked on them since."""

    withdrawn: int = 0
    restored: int = 0
    kept: list[str] = field(default_factory=list)


def undo(session: Session, garage: str, name: str) -> Undone:
    """Takes back the import of that name, one that `read_earlier` lists. Wants a write session."""
    earlier = read_earlier(session, garage)
    return _Undoing(session, garage, name, earlier).run()


class _Undoing:
    """One import with all that stands in the way of taking it back."""

    def __init__(self, session: Session, garage: str, name: str, earlier: Earlier) -> None:
        self.session, self.garage, self.name, self.earlier = session, garage, name, earlier
        self.entries: dict[str, list[Entry]] = defaultdict(list)
        for entry in earlier.imports[name]:
            self.entries[entry.record].append(entry)
        self.made = {
            record for record, entries in self.entries.items() if earlier.records[record].first == entries[0].id
        }
        self.unseen = self._unseen()
        self.records = all_records(session, garage)
        self.touched = {record for record in self.unseen if not earlier.deleted[record]} | self._led_to()

    def run(self) -> Undone:
        done, changes = Undone(), list[Change]()
        for job, records in self._lines().items():
            if self.touched & {*records}:
                done.kept.append(str(self.earlier.records[job].fields["name"]))
                continue
            these = list(filter(None, map(self._taken_back, records)))
            changes += these
            withdrawn = any(change.record == job and change.set.get("deleted") for change in these)
            done.withdrawn += withdrawn
            done.restored += bool(these) and not withdrawn
        changes += self._stages({change.record for change in changes if change.set.get("deleted")})
        write(self.session, self.garage, changes, writer=Writer(undo_writer(self.name)))
        return done

    def _lines(self) -> dict[str, list[str]]:
        """The records of each line, by its job."""
        jobs = job_of_each(self.earlier)
        lines: dict[str, list[str]] = defaultdict(list)
        for record in self.entries:
            if self.earlier.records[record].kind != "stage":
                lines[jobs[record]].append(record)
        return lines

    def _unseen(self) -> set[str]:
        """Records of which others have said something since. What was taken back again counts as never said."""
        own = {entry.id for entries in self.entries.values() for entry in entries} | self.earlier.settled
        query = select(RecordRow.id, RecordRow.kind, RecordRow.state).where(RecordRow.garage == self.garage)
        rows = (row for row in self.session.execute(query) if row.id in self.entries)
        return {row.id for row in rows if not own.issuperset(state.load(row.kind, row.state).heads)}

    def _led_to(self) -> set[str]:
        """Records that the import made and that others, which it did not, lead to; stages apart."""
        lines = {record for record in self.made if self.earlier.records[record].kind != "stage"}
        found = set[str]()
        for record in (record for records in self.records.values() for record in records):
            if record["id"] not in self.entries and not record.get("deleted"):
                for value in record.values():
                    found |= lines.intersection(value if isinstance(value, list) else [value])
        return found

    def _taken_back(self, record: str) -> Change | None:
        """The entry that takes back what the import has said of a record; None when a person has deleted that."""
        if record in self.unseen:
            return None
        entries, brought = self.entries[record], self.earlier.records[record]
        kind, base = brought.kind, (brought.last,)
        if record in self.made:
            return Change(kind, record, {"deleted": True}, base=base)
        former = {"deleted": False, **self.earlier.before[entries[0].id]}
        return Change(kind, record, {name: former.get(name) for entry in entries for name in entry.set}, base=base)

    def _stages(self, withdrawn: set[str | None]) -> Iterator[Change]:
        """Stages that the import made, that nobody has touched and that nothing is left in."""
        used = {job.get("stage") for job in self.records["jobs"] if job["id"] not in withdrawn}
        for record in self.made - used - self.unseen:
            if self.earlier.records[record].kind == "stage":
                yield Change("stage", record, {"deleted": True}, base=(self.earlier.records[record].last,))
