"""A phone with the right code waits here until somebody at the home computer says yes to it.

A code can be seen over a shoulder; whoever uses it first is shown on the home computer, by name and check words, and
gets nothing before the yes. The phone asks with a secret of its own, known here by its hash, and the token is handed
out to it once.
"""

import secrets
from collections.abc import Sequence
from dataclasses import dataclass

from sqlalchemy import Update, select, update
from sqlalchemy.orm import Session

from tarebook.devices import check_words, tokens
from tarebook.devices.moments import good_until, is_good, seconds_left
from tarebook.errors import TarebookError
from tarebook.store.models import PairJoinRow, utc_now


@dataclass(frozen=True)
class Asked:
    """What the phone is told: the secret it asks again with, and what it shows meanwhile."""

    join: str
    words: list[str]
    seconds: int


@dataclass(frozen=True)
class Waiting:
    """What the home computer is told of a phone that waits."""

    id: str
    name: str
    words: list[str]
    seconds: int


def ask(session: Session, garage: str, invitation: str, name: str, wanted: str | None) -> Asked:
    """A phone that had an invitation's code begins to wait. Wants a write session."""
    secret, words, now = secrets.token_urlsafe(32), check_words.draw(), utc_now()
    row = PairJoinRow(
        garage=garage, id=secrets.token_hex(8), secret_hash=tokens.hashed(secret), code=invitation, name=name,
        wanted=wanted, words=words, asked_at=now, good_until=good_until(),
    )  # fmt: skip
    session.add(row)
    session.flush()
    return Asked(secret, words.split(), seconds_left(row.good_until))


def waiting(session: Session, garage: str, invitation: str | None = None) -> Sequence[Waiting]:
    """The phones that wait for a yes, first come first; those of one invitation when it is named."""
    query = select(PairJoinRow).where(PairJoinRow.garage == garage, PairJoinRow.confirmed.is_(None))
    named = query if invitation is None else query.where(PairJoinRow.code == invitation)
    rows = session.scalars(named.order_by(PairJoinRow.asked_at, PairJoinRow.id))
    return [_told(row) for row in rows if is_good(row.asked_at, row.good_until)]


def _told(row: PairJoinRow) -> Waiting:
    return Waiting(row.id, row.name, row.words.split(), seconds_left(row.good_until))


def decide(session: Session, garage: str, join: str, yes: bool) -> None:
    """Somebody at the home computer has said yes or no. Raises `join_unknown`. Wants a write session.

    After a yes the phone has the full time again to come for its token.
    """
    if join not in [each.id for each in waiting(session, garage)]:
        raise TarebookError("join_unknown")
    session.execute(_of(garage, join).values(confirmed=yes, good_until=good_until()))


def collect(session: Session, secret: str) -> PairJoinRow | Waiting:
    """What the phone gets when it asks: its row once, after a yes; until then that it waits. Wants a write session.

    Raises `pair_refused`, and `pair_over`: too late, handed out already, or never asked for.
    """
    row = _found(session, secret)
    if row.confirmed is None:
        return _told(row)
    given = session.execute(_of(row.garage, row.id).where(PairJoinRow.given_at.is_(None)).values(given_at=utc_now()))
    if given.rowcount != 1:  # type: ignore[attr-defined]
        raise TarebookError("pair_over")
    return row


def still_waiting(session: Session, secret: str) -> Waiting | None:
    """What a phone is told while nobody has said yes or no; None after a yes. Raises as `collect` does."""
    row = _found(session, secret)
    return _told(row) if row.confirmed is None else None


def _found(session: Session, secret: str) -> PairJoinRow:
    row = session.scalar(select(PairJoinRow).where(PairJoinRow.secret_hash == tokens.hashed(secret)))
    if row is None or row.given_at or not is_good(row.asked_at, row.good_until):
        raise TarebookError("pair_over")
    if row.confirmed is False:
        raise TarebookError("pair_refused")
    return row


def is_given(session: Session, garage: str, join: str) -> bool:
    """Whether the phone has come for its token."""
    row = session.get(PairJoinRow, (garage, join), populate_existing=True)
    return row is not None and row.given_at is not None


def _of(garage: str, join: str) -> Update:
    return update(PairJoinRow).where(PairJoinRow.garage == garage, PairJoinRow.id == join)
