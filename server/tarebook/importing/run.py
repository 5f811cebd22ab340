"""A file into the garage: first looked at, which changes nothing, then taken in, a few hundred lines at a time.

What was looked at is what is taken in. Whether a line's records are there is asked again in the transaction that would
add them, so two imports at once add nothing twice. All entries of one import bear one writer's name, by which it can be
taken back as one (`undo`).
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import islice
from typing import TYPE_CHECKING

from sqlalchemy import select

from tarebook.errors import TarebookError
from tarebook.garage.author import Change, Writer, write
from tarebook.importing.earlier import Earlier, import_writer, new_import, read_earlier
from tarebook.importing.fates import FATES, Reading, read_all
from tarebook.importing.headings import REPORT_COLUMNS
from tarebook.importing.line import Line, Way
from tarebook.importing.match import Correction, Matched, corrections, match
from tarebook.importing.records import Made, Place, records_of
from tarebook.importing.sheet import Sheet
from tarebook.importing.stages import Stages
from tarebook.importing.sums import Sums
from tarebook.store.models import RecordRow

if TYPE_CHECKING:
    from sqlalchemy.orm import Session

    from tarebook.store.database import Database

_BATCH_LINES = 200


@dataclass
class Plan:
    """What taking a file in would do."""

    sheet: Sheet
    place: Place
    reading: Reading
    sums: Sums
    matched: Matched
    earlier: Earlier
    plain: Way  # which way went what a column only calls weight

    @property
    def fates(self) -> dict[str, list[int]]:
        """The numbers of the file's lines by their fate, all of `FATES`."""
        lines = {
            "taken": [line.number for line, _job in self.matched.new],
            "corrected": [correction.line.number for correction in self.matched.corrected],
            "same": sorted(line.number for line in self.matched.same),
        }
        return {fate: lines.get(fate, self.reading.others[fate]) for fate in FATES}


def look_at(database: Database, garage: str, sheet: Sheet, place: Place, plain: Way, beside: bool) -> Plan:
    """`plain`: which way went what a column only calls weight. `beside`: what would correct a line is another thing.

    Raises, for a table that Tarebook itself has reported, `import_own_report`, where there are jobs that it would
    double; and `file_unreadable`.
    """
    with database.read() as session:
        if sheet.own_report and _has_jobs(session, garage):
            raise TarebookError("import_own_report", file=str(sheet.path), columns=", ".join(REPORT_COLUMNS))
        earlier, stages = read_earlier(session, garage), Stages(session, garage, place)
    reading, sums = read_all(sheet, plain, frozenset(place.scales))
    return Plan(sheet, place, reading, sums, match(reading.lines, earlier, place, stages, beside), earlier, plain)


def take_in(database: Database, garage: str, plan: Plan, progress: Callable[[int], None]) -> str:
    """Takes in what was looked at; gives the name of the import. `progress` hears how many lines are in."""
    name = new_import(plan.place.file)
    writer, done = Writer(import_writer(name)), 0
    work = _work(plan)
    while batch := list(islice(work, _BATCH_LINES)):
        with database.write() as session:
            write(session, garage, list(_changes(session, garage, batch, plan)), writer=writer)
        done += len(batch)
        progress(done)
    return name


def _has_jobs(session: Session, garage: str) -> bool:
    jobs = select(RecordRow.id).where(RecordRow.garage == garage, RecordRow.kind == "job", RecordRow.deleted.is_(False))
    return session.scalar(jobs.limit(1)) is not None


def _work(plan: Plan) -> Iterator[tuple[Line, str] | Correction]:
    yield from plan.matched.new
    yield from plan.matched.corrected


def _changes(session: Session, garage: str, batch: list[tuple[Line, str] | Correction], plan: Plan) -> Iterator[Change]:
    stages = Stages(session, garage, plan.place)
    here = _here(session, garage, [item[1] for item in batch if isinstance(item, tuple)])
    for item in batch:
        line = item[0] if isinstance(item, tuple) else item.line
        stage, made = stages.find(line.stage)
        if isinstance(item, Correction):
            yield from made
            yield from corrections(line, item.job, plan.place, stage, plan.earlier)
        elif item[1] not in here:
            yield from made
            yield from map(_made, records_of(line, item[1], plan.place, stage))


def _made(made: Made) -> Change:
    kind, record, fields = made
    return Change(kind, record, fields, base=())


def _here(session: Session, garage: str, jobs: list[str]) -> set[str]:
    query = select(RecordRow.id).where(RecordRow.garage == garage, RecordRow.id.in_(jobs))
    return set(session.scalars(query))
