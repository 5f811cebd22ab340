"""The journal as a phone reads it: pages of entries after a cursor, and the check that the cursor still holds.

A cursor is (epoch, number, mark of the journal up to there). A server restored from an older copy cannot pass all
three, even when nobody told it and new entries have grown past the old number: the phone is told `rewound` and sends
again. The name of the entry at that number would not do: phones that sent theirs again in another order may have put
the same entry there, with others before it.
"""

from dataclasses import dataclass
from typing import Any

from sqlalchemy import select
from sqlalchemy.orm import Session

from tarebook.errors import TarebookError
from tarebook.store.journal_rows import mark_at
from tarebook.store.models import EntryRow, GarageRow

PAGE_ENTRIES = 1000
PAGE_BYTES = 2 * 1024 * 1024


@dataclass(frozen=True)
class Page:
    """`entries`: `{number, text, aside, id?}`; `aside`: a reason only the server could know; `id`: only where the
    journal had to name the text itself (unreadable, id_reuse). `mark`: that of the journal up to the last of them.
    `more`: whether another page follows."""

    epoch: str
    head: int
    durable: int | None
    entries: list[dict[str, Any]]
    mark: str
    more: bool


def check_epoch(garage: GarageRow, epoch: str) -> None:
    if epoch != garage.epoch:
        raise TarebookError("rewound", epoch=garage.epoch, head=garage.head)


def pull(session: Session, garage: GarageRow, epoch: str, since: int, mark: str, limit: int = PAGE_ENTRIES) -> Page:
    """The page after `since`, where the mark was `mark`. `since` 0 needs no mark nor epoch. Raises `rewound`."""
    if since or epoch:
        check_epoch(garage, epoch)
    if since and mark_at(session, garage.id, since) != mark:
        raise TarebookError("rewound", epoch=garage.epoch, head=garage.head)
    entries = _page(session, garage.id, since, limit)
    last = entries[-1]["number"] if entries else since
    reached = mark_at(session, garage.id, last) or ""
    return Page(garage.epoch, garage.head, garage.durable, entries, reached, last < garage.head)


def _page(session: Session, garage: str, since: int, limit: int) -> list[dict[str, Any]]:
    columns = select(EntryRow.number, EntryRow.id, EntryRow.text, EntryRow.intake, EntryRow.reason)
    query = columns.where(EntryRow.garage == garage, EntryRow.number > since).order_by(EntryRow.number)
    page: list[dict[str, Any]] = []
    size = 0
    for row in session.execute(query.limit(min(limit, PAGE_ENTRIES)).execution_options(yield_per=200)):
        size += len(row.text)
        if page and size > PAGE_BYTES:
            break
        page.append(_line(row))
    return page


def _line(row: Any) -> dict[str, Any]:
    line = {"number": row.number, "text": row.text.decode("utf-8"), "aside": row.intake}
    return {**line, "id": row.id} if row.reason in ("unreadable", "id_reuse") else line
