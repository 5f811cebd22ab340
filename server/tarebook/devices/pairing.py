"""Pairing: a one-time code of 128 random bits makes a device of whoever shows it within ten minutes.

Codes are kept as hashes. A code is used up in one statement, so that two who show it at once get one device.
"""

from __future__ import annotations

import json
import secrets
import time
from collections import deque
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from sqlalchemy import delete, select, update
from sqlalchemy.orm import Session

from tarebook.devices import tokens
from tarebook.errors import TarebookError
from tarebook.journal import author
from tarebook.journal.author import Change
from tarebook.journal.fold import STRANGER
from tarebook.journal.records import set_aside
from tarebook.store.models import PairCodeRow, utc_now

GOOD_FOR = timedelta(minutes=10)
TRIES, WITHIN_SECONDS = 20, 60.0


@dataclass(frozen=True)
class Paired:
    garage: str
    device: str
    name: str
    token: str


def new_code(session: Session, garage: str) -> str:
    """A fresh code for this garage; forgets those that are past. Wants a write session."""
    session.execute(delete(PairCodeRow).where(PairCodeRow.garage == garage, PairCodeRow.good_until < utc_now()))
    code = secrets.token_urlsafe(16)
    good_until = (datetime.now(UTC) + GOOD_FOR).isoformat(timespec="milliseconds")
    made = {"here": True, "made_at": utc_now(), "good_until": good_until}
    session.add(PairCodeRow(garage=garage, hash=tokens.hashed(code), **made))
    session.flush()
    return code


def redeem(session: Session, code: str, name: str, wanted: str | None = None) -> Paired:
    """Uses the code up and makes a device. Raises `pair_code_wrong`. Wants a write session.

    `wanted`: the name the app had for its device before. A garage that was restored may have forgotten the device;
    it gets its name back, and what it sent meanwhile as a stranger is taken in.
    """
    now = utc_now()
    unused = PairCodeRow.hash == tokens.hashed(code), PairCodeRow.used_at.is_(None), PairCodeRow.good_until > now
    garage = session.scalar(select(PairCodeRow.garage).where(*unused))
    done = session.execute(update(PairCodeRow).where(*unused).values(used_at=now))
    if garage is None or done.rowcount != 1:  # type: ignore[attr-defined]
        raise TarebookError("pair_code_wrong")
    return admit(session, garage, name, wanted)


def admit(session: Session, garage: str, name: str, wanted: str | None = None) -> Paired:
    """Makes a device without a code: for the demo, and for the home computer itself."""
    device, token = tokens.issue(session, garage, name, wanted)
    if device.id == wanted:
        _take_in(session, garage, device.id)
    return Paired(garage, device.id, device.name, token)


def _take_in(session: Session, garage: str, device: str) -> None:
    strangers = [row for row in set_aside(session, garage) if row["reason"] == STRANGER]
    own = [row["id"] for row in strangers if json.loads(row["text"])["device"] == device]
    author.write(session, garage, [Change("verdict", None, {"entry": name, "take": True}) for name in own])


class Tries:
    """Counts failed tries of this process, over a sliding minute. Raises `rate_limited`."""

    def __init__(self) -> None:
        self.failed: deque[float] = deque()

    def check(self) -> None:
        now = time.monotonic()
        while self.failed and self.failed[0] < now - WITHIN_SECONDS:
            self.failed.popleft()
        if len(self.failed) >= TRIES:
            raise TarebookError("rate_limited")

    def fail(self) -> None:
        self.failed.append(time.monotonic())
