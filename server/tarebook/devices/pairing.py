"""Pairing: a one-time code makes a device of whoever shows it in time; a phone also needs a yes on the home computer.

An invitation has a full code and a short one. Either uses it up, in one statement, so that two who show it at once do
not both get in. An invitation for `here` is the link that is opened on the home computer itself: whoever sits there
needs no second word, and nobody else can use it.
"""

import json
from dataclasses import dataclass

from sqlalchemy import delete, or_, select, update
from sqlalchemy.orm import Session

from tarebook.devices import codes, joining, tokens
from tarebook.devices.joining import Asked, Waiting
from tarebook.devices.moments import GOOD_FOR, good_until, seconds_left
from tarebook.errors import TarebookError
from tarebook.garage import author
from tarebook.garage.records import set_aside
from tarebook.journal.record import STRANGER
from tarebook.store.models import PairCodeRow, PairJoinRow, utc_now

__all__ = [
    "GOOD_FOR",
    "Invitation",
    "Paired",
    "admit",
    "collect",
    "invite",
    "is_full",
    "new_code",
    "redeem",
    "withdraw",
]


@dataclass(frozen=True)
class Paired:
    garage: str
    device: str
    name: str
    token: str


@dataclass(frozen=True)
class Invitation:
    """`id` says which it is and gives nothing away; `full` and `short` are the codes."""

    id: str
    full: str
    short: str
    seconds: int


def invite(session: Session, garage: str, here: bool = False) -> Invitation:
    """A fresh invitation to this garage; forgets those that are past. Wants a write session."""
    _forget_past(session, garage)
    full, short, until = codes.new_full(), codes.new_short(), good_until()
    row = PairCodeRow(
        garage=garage, hash=tokens.hashed(full), short_hash=None if here else codes.short_hash(short), here=here,
        made_at=utc_now(), good_until=until,
    )  # fmt: skip
    session.add(row)
    session.flush()
    return Invitation(row.hash, full, short, seconds_left(until))


def _forget_past(session: Session, garage: str) -> None:
    now = utc_now()
    for table, made_at in ((PairCodeRow, PairCodeRow.made_at), (PairJoinRow, PairJoinRow.asked_at)):
        past = or_(table.good_until <= now, made_at > now)
        session.execute(delete(table).where(table.garage == garage, past))


def new_code(session: Session, garage: str) -> str:
    """A fresh code for a browser on this computer. Wants a write session."""
    return invite(session, garage, here=True).full


def withdraw(session: Session, garage: str, invitation: str) -> None:
    """Makes an invitation of no use; whoever had its code already goes on. Wants a write session."""
    session.execute(delete(PairCodeRow).where(PairCodeRow.garage == garage, PairCodeRow.hash == invitation))


def is_full(session: Session, code: str) -> bool:
    """Whether this is the full code of an invitation, used or not."""
    return session.scalar(select(PairCodeRow.hash).where(PairCodeRow.hash == tokens.hashed(code))) is not None


def redeem(session: Session, code: str, name: str, wanted: str | None = None, here: bool = False) -> Paired | Asked:
    """Uses an invitation up. Raises `pair_code_wrong`. Wants a write session.

    `here`: the one who asks is on this computer. `wanted`: the name the app had for its device before. A garage that
    was restored may have forgotten the device; it gets its name back, and what it sent meanwhile as a stranger is
    taken in.
    """
    now = utc_now()
    row = session.scalar(
        select(PairCodeRow)
        .where(or_(PairCodeRow.hash == tokens.hashed(code), PairCodeRow.short_hash == codes.short_hash(code)))
        .where(PairCodeRow.used_at.is_(None), PairCodeRow.made_at <= now, PairCodeRow.good_until > now)
    )
    if row is None or (row.here and not here):
        raise TarebookError("pair_code_wrong")
    this = PairCodeRow.garage == row.garage, PairCodeRow.hash == row.hash, PairCodeRow.used_at.is_(None)
    if session.execute(update(PairCodeRow).where(*this).values(used_at=now)).rowcount != 1:  # type: ignore[attr-defined]
        raise TarebookError("pair_code_wrong")
    if row.here:
        return admit(session, row.garage, name, wanted)
    return joining.ask(session, row.garage, row.hash, name, wanted)


def collect(session: Session, join: str) -> Paired | Waiting:
    """What a waiting phone gets: its token once, after a yes. Raises `pair_refused`, `pair_over`."""
    answer = joining.collect(session, join)
    return answer if isinstance(answer, Waiting) else admit(session, answer.garage, answer.name, answer.wanted)


def admit(session: Session, garage: str, name: str, wanted: str | None = None) -> Paired:
    """Makes a device without asking for a code: for the demo, and once all else is settled."""
    device, token = tokens.issue(session, garage, name, wanted)
    if device.id == wanted:
        _take_in(session, garage, device.id)
    return Paired(garage, device.id, device.name, token)


def _take_in(session: Session, garage: str, device: str) -> None:
    strangers = [row for row in set_aside(session, garage) if row["reason"] == STRANGER]
    own = [row["id"] for row in strangers if json.loads(row["text"])["device"] == device]
    author.take_in(session, garage, own)
