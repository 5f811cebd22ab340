"""A file into the journal, a few hundred lines at a time, each batch in one transaction.

Whether a line is known is asked inside the transaction that would add it, so two imports at once add nothing twice.
A line that was taken in and then deleted by a person stays deleted.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import islice
from pathlib import Path
from typing import Protocol

from sqlalchemy import select
from sqlalchemy.orm import Session

from tarebook.errors import TarebookError, describe
from tarebook.garage.author import Change, write
from tarebook.importing.line import Line, LineError, read_line
from tarebook.importing.records import Place, job_id, line_changes
from tarebook.importing.sheet import REPORT_COLUMNS, is_own_report, rows
from tarebook.importing.stages import Stages
from tarebook.store.database import Database
from tarebook.store.models import RecordRow

_BATCH_LINES = 200


@dataclass(frozen=True)
class Bad:
    """A line that cannot be read. `column` where one cell is at fault; `sentence` and `do` as for every refusal."""

    number: int
    column: str | None
    sentence: str
    do: str


class Teller(Protocol):
    """Who hears of every bad line as it is met, and of how far it has got."""

    def bad_line(self, bad: Bad) -> None: ...

    def progress(self, taken: Taken) -> None: ...


@dataclass
class Taken:
    """How many lines were read, taken in, known before, and unreadable."""

    lines: int = 0
    added: int = 0
    known: int = 0
    bad: int = 0


def take_in(database: Database, garage: str, path: Path, place: Place, strict: bool, teller: Teller) -> Taken:
    """Takes the file's lines into the garage.

    Raises what `rows` raises, and with `strict` `import_strict` when any line is bad, before anything is added; for a
    table that Tarebook itself has reported `import_own_report`, where there are jobs that it would double.
    """
    if is_own_report(path) and _has_jobs(database, garage):
        raise TarebookError("import_own_report", file=str(path), columns=", ".join(REPORT_COLUMNS))
    if strict:
        _all_good(path, teller)
    taken = Taken()
    numbered = _occurrences(_lines(path, taken, teller))
    while batch := list(islice(numbered, _BATCH_LINES)):
        with database.write() as session:
            new = _unknown(session, garage, batch, place)
            write(session, garage, _changes(session, garage, new, place))
        taken.added += len(new)
        taken.known += len(batch) - len(new)
        teller.progress(taken)
    return taken


def _has_jobs(database: Database, garage: str) -> bool:
    query = select(RecordRow.id).where(
        RecordRow.garage == garage, RecordRow.kind == "job", RecordRow.deleted.is_(False)
    )
    with database.read() as session:
        return session.scalar(query.limit(1)) is not None


def _changes(session: Session, garage: str, new: list[tuple[Line, int]], place: Place) -> Iterator[Change]:
    stages = Stages(session, garage, place)
    for line, occurrence in new:
        stage, made = stages.find(line.stage)
        yield from made
        yield from line_changes(line, occurrence, place, stage)


def _all_good(path: Path, teller: Teller) -> None:
    taken = Taken()
    for _line in _lines(path, taken, teller):
        pass
    if taken.bad:
        raise TarebookError("import_strict", bad=taken.bad, lines=taken.lines)


def _lines(path: Path, taken: Taken, teller: Teller) -> Iterator[Line]:
    for row in rows(path):
        taken.lines += 1
        try:
            yield read_line(row)
        except LineError as problem:
            taken.bad += 1
            said = describe(problem.code, problem.data)
            teller.bad_line(Bad(row.number, problem.column, said["sentence"], said["do"]))


def _occurrences(lines: Iterator[Line]) -> Iterator[tuple[Line, int]]:
    """Each line with how many equal ones came before it: two equal lines are two jobs."""
    seen: Counter[str] = Counter()
    for line in lines:
        yield line, seen[line.key]
        seen[line.key] += 1


def _unknown(session: Session, garage: str, batch: list[tuple[Line, int]], place: Place) -> list[tuple[Line, int]]:
    ids = [job_id(line, occurrence, place) for line, occurrence in batch]
    query = select(RecordRow.id).where(RecordRow.garage == garage, RecordRow.id.in_(ids))
    known = set(session.scalars(query))
    return [item for item, job in zip(batch, ids, strict=True) if job not in known]
