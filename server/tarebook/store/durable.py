"""How far the journal is in a verified backup: the number phones hear, so that "In a backup" is true when it is said.

An entry counts only with its photos. A photo that arrives after the backup takes the mark back to before the first
entry that speaks of it, until the next backup.
"""

from collections.abc import Collection, Iterable, Mapping

from sqlalchemy import func, or_, select
from sqlalchemy.orm import Session

from tarebook.store.journal_rows import in_chunks, mark_at
from tarebook.store.models import EntryRow, GarageRow, PhotoRow, RecordRow


def cover(session: Session, marks: Mapping[str, tuple[int, str]], photos: Collection[str]) -> None:
    """A backup holds each garage up to (number, mark of the journal there), and these photos. Wants a write session.

    A garage whose journal is another one by now, because it was restored meanwhile, is left as it is.
    """
    for garage, (number, mark) in marks.items():
        row = session.get(GarageRow, garage, with_for_update=True)
        if row is None or mark_at(session, garage, number) != mark:
            continue
        here = set(session.scalars(select(PhotoRow.sha256).where(PhotoRow.garage == garage)))
        row.durable = _before(session, garage, here.difference(photos), number)


def uncover(session: Session, garage: str, sha256: str) -> None:
    """A photo has arrived that is in no backup yet. Wants a write session."""
    row = session.get(GarageRow, garage, with_for_update=True)
    if row is not None and row.durable:
        row.durable = _before(session, garage, {sha256}, row.durable)


def _before(session: Session, garage: str, photos: set[str], number: int) -> int:
    """The largest number up to `number` such that no entry so far speaks of any of these photos."""
    first = min(_speaking(session, garage, photos), default=number + 1)
    return min(number, first - 1)


def _speaking(session: Session, garage: str, photos: set[str]) -> Iterable[int]:
    if not photos:
        return
    # The database looks itself: reading every record of a photo here would make each upload dearer than the one before.
    records = select(RecordRow.id).where(RecordRow.garage == garage, RecordRow.kind == "photo")
    named: list[str] = []
    for some in in_chunks(photos):
        named += session.scalars(records.where(or_(*(RecordRow.standing.contains(sha256) for sha256 in some))))
    here = select(func.min(EntryRow.number)).where(EntryRow.garage == garage)
    for some in in_chunks(named):
        first = session.scalar(here.where(EntryRow.record.in_(some)))
        yield from () if first is None else (first,)
    aside = select(EntryRow.number, EntryRow.text).where(EntryRow.garage == garage, EntryRow.reason.is_not(None))
    for row in session.execute(aside):
        if any(sha256.encode() in row.text for sha256 in photos):
            yield row.number
