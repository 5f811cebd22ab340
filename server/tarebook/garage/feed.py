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
from tarebook.garage import receipts
from tarebook.store.journal_rows import mark_at
from tarebook.store.models import EntryRow, GarageRow

PAGE_ENTRIES = 1000
PAGE_BYTES = 2 * 1024 * 1024


@dataclass(frozen=True)
class Page:
    """`entries`: `{number, text, aside, id?, receipt?, sent_by?}`; `aside`: a reason only the server could know; `id`:
    only where the journal had to name the text itself (unreadable, id_reuse); the last two are of `receipts.told`.
    `mark`: that of the journal up to the last of them. `more`: whether another page follows."""

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
    lines = _page(session, garage, since, limit)
    last = lines[-1]["number"] if lines else since
    reached = mark_at(session, garage.id, last) or ""
    return Page(garage.epoch, garage.head, garage.durable, lines, reached, last < garage.head)


def _page(session: Session, garage: GarageRow, since: int, limit: int) -> list[dict[str, Any]]:
    here = EntryRow
    columns = select(here.number, here.id, here.hash, here.text, here.intake, here.reason, here.sent_by, here.sent_for)
    query = columns.where(here.garage == garage.id, here.number > since).order_by(here.number)
    page: list[dict[str, Any]] = []
    size = 0
    for row in session.execute(query.limit(min(limit, PAGE_ENTRIES)).execution_options(yield_per=200)):
        size += len(row.text)
        if page and size > PAGE_BYTES:
            break
        page.append(_line(garage.receipt_key, row))
    return page


def _line(key: bytes, row: Any) -> dict[str, Any]:
    device = None if row.reason == "unreadable" else row.sent_for or row.sent_by
    told = receipts.told(key, row.hash, device, row.sent_by, row.intake is None or row.reason is None)
    named = {"id": row.id} if row.reason in ("unreadable", "id_reuse") else {}
    return {"number": row.number, "text": row.text.decode("utf-8"), "aside": row.intake, **named, **told}
