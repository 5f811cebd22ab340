"""What imports have brought into a garage so far, read from the journal itself.

An import writes all its entries under one writer's name, `import.<its own name>.<the file's>`, and what takes it back
under `undo.` and the same; so the journal, wherever it is restored, knows every import without a table of its own.
"""

import re
import secrets
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

from sqlalchemy import select
from sqlalchemy.orm import Session

from tarebook.garage.intake import HOME
from tarebook.importing.records import made_id
from tarebook.journal import entries
from tarebook.journal.entries import Entry
from tarebook.store.models import EntryRow, RecordRow

_IMPORT, _UNDO = "import.", "undo."
_MOST_NAME = 80 - len(_IMPORT) - 17


@dataclass
class Brought:
    """A record as imports have set it: the values, the last entry of theirs, and the one that made it."""

    kind: str
    first: str
    last: str
    fields: dict[str, Any] = field(default_factory=dict)


@dataclass
class Earlier:
    """`records`: what imports set, by id; `deleted`: of every record the garage has, whether it is deleted now.
    `imports`: the entries of each import that was not taken back, by its name, oldest first."""

    records: dict[str, Brought] = field(default_factory=dict)
    deleted: dict[str, bool] = field(default_factory=dict)
    imports: dict[str, list[Entry]] = field(default_factory=dict)
    before: dict[str, dict[str, Any]] = field(default_factory=dict)
    """What imports had set of a record before an entry that changed it, by the entry."""
    settled: set[str] = field(default_factory=set)
    """Entries of imports that were taken back, and those that took them back."""

    def withdrawn(self, record: str) -> bool:
        """Whether it is deleted, by an import or by what took one back, and not by a person."""
        brought = self.records.get(record)
        return self.deleted.get(record, False) and brought is not None and brought.fields.get("deleted") is True

    def standing(self, record: str) -> Brought | None:
        """The record as imports have set it, unless one of them has withdrawn it."""
        return None if self.withdrawn(record) else self.records.get(record)

    def weighing(self, job: str, way: str) -> tuple[str | None, str]:
        """(the last weighing of a line's part that stands, the id of the next)"""
        last = None
        for name in weighings(job, way):
            if name not in self.deleted:
                return last, name
            last = name if self.standing(name) else last
        raise AssertionError("names do not end")

    def of_file(self, file: str) -> list[str]:
        """The imports of files so called, oldest first."""
        return [name for name in self.imports if file_of(name) == safe(file)]


def read_earlier(session: Session, garage: str) -> Earlier:
    """Everything imports and what took them back have written, in the order of the journal."""
    found = Earlier()
    for row in session.execute(select(RecordRow.id, RecordRow.deleted).where(RecordRow.garage == garage)):
        found.deleted[row.id] = row.deleted
    for entry in _ours(session, garage):
        name = entry.writer.partition(".")[2]
        if entry.writer.startswith(_IMPORT):
            found.imports.setdefault(name, []).append(entry)
        else:
            found.settled |= {entry.id, *(each.id for each in found.imports.pop(name, ()))}
        record = found.records.setdefault(entry.record, Brought(entry.kind, entry.id, entry.id))
        if record.fields:
            found.before[entry.id] = dict(record.fields)
        record.last = entry.id
        record.fields.update(entry.set)
    return found


def job_of_each(earlier: Earlier) -> dict[str, str]:
    """The job of the line that each record belongs to, stages apart."""
    found = {record: record for record, brought in earlier.records.items() if brought.kind == "job"}
    for record, brought in earlier.records.items():
        if brought.kind == "job_part":
            found |= dict.fromkeys((record, brought.fields["part"]), brought.fields["job"])
    for record, brought in earlier.records.items():
        if brought.kind == "weighing":
            found[record] = found[brought.fields["of"]]
    return found


def _ours(session: Session, garage: str) -> Iterator[Entry]:
    query = select(EntryRow.text).where(EntryRow.garage == garage, EntryRow.sent_by == HOME, EntryRow.reason.is_(None))
    for text in session.scalars(query.order_by(EntryRow.number).execution_options(yield_per=500)):
        if b'"writer":"import.' in text or b'"writer":"undo.' in text:
            entry = entries.read(text.decode("utf-8"))
            if entry is not None and entry.device == HOME and entry.writer.startswith((_IMPORT, _UNDO)):
                yield entry


def weighings(job: str, way: str) -> Iterator[str]:
    """The ids of a line's weighings of one part: the first, and those that correct it."""
    number = 0
    while True:
        yield made_id(job, way, "weighing", *([str(number)] if number else []))
        number += 1


def new_import(file: str) -> str:
    """A name for an import of a file so called."""
    return f"{secrets.token_hex(8)}.{safe(file)}"


def file_of(name: str) -> str:
    """The file's name in that of an import."""
    return name.partition(".")[2]


def import_writer(name: str) -> str:
    return _IMPORT + name


def undo_writer(name: str) -> str:
    return _UNDO + name


def safe(file: str) -> str:
    """A file's name as it fits into that of a writer."""
    return re.sub(r"[^!-~]", "_", file)[:_MOST_NAME]
