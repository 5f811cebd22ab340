"""Entries written by the server itself: an imported sheet, the demo, a verdict on a device's behalf.

They go through the same door as a phone's (`intake.push`), as device `home`, so nothing in the journal is special.
"""

import secrets
import time
import uuid
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import UTC, datetime
from typing import Any

from sqlalchemy.orm import Session

from tarebook.errors import TarebookError
from tarebook.garage import intake
from tarebook.garage.intake import BATCH_ENTRIES, HOME, StoredFold
from tarebook.garage.receipts import Proof
from tarebook.journal.entries import known
from tarebook.journal.kinds import KINDS
from tarebook.journal.state import to_json


@dataclass(frozen=True)
class Change:
    """Fields to set on a record. `record`: None makes a new one. `base`: the record's heads now when left out."""

    kind: str
    record: str | None
    set: Mapping[str, Any]
    base: tuple[str, ...] | None = None
    photos: tuple[str, ...] = field(default=())


@dataclass
class Writer:
    """Under which name entries are written, and how many it has written. A new one is nobody's else."""

    name: str = field(default_factory=lambda: secrets.token_hex(8))
    n: int = 0


def new_id() -> str:
    """A fresh UUIDv7 (RFC 9562): 48 bits of milliseconds, then 74 random bits."""
    milliseconds = time.time_ns() // 1_000_000
    number = (milliseconds & (2**48 - 1)) << 80 | 0x7 << 76 | secrets.randbits(12) << 64 | 0b10 << 62
    return str(uuid.UUID(int=number | secrets.randbits(62)))


def write(
    session: Session, garage: str, changes: Iterable[Change], device: str = HOME, writer: Writer | None = None
) -> list[str]:
    """Writes one entry for each change and returns the records' names, in order. Wants a write session.

    `writer`: who goes on writing; somebody new when left out.

    Raises `invalid` with the kind and the fields when a change does not fit the table of kinds: the server,
    unlike a phone, must not leave entries behind that are set aside.
    """
    author = _Author(session, garage, device, writer or Writer())
    written = [author.text_of(change) for change in changes]
    for start in range(0, len(written), BATCH_ENTRIES):
        texts = [text for _record, text in written[start : start + BATCH_ENTRIES]]
        _all_accepted(intake.push(session, garage, device, texts), written[start:])
    return [record for record, _text in written]


def receive(
    session: Session, garage: str, device: str, texts: Sequence[str], shown: Sequence[Proof | None] = ()
) -> intake.Pushed:
    """`intake.push`, and the home computer's verdict on what came as a stranger's before its receipt was shown: no row
    of the journal is rewritten, and every replica learns of it as of any verdict."""
    pushed = intake.push(session, garage, device, texts, shown)
    take_in(session, garage, pushed.proven)
    return pushed


def take_in(session: Session, garage: str, names: Iterable[str]) -> None:
    """Lets entries that were set aside count, by a verdict on each. Wants a write session."""
    write(session, garage, [Change("verdict", None, {"entry": name, "take": True}) for name in names])


def _all_accepted(pushed: intake.Pushed, written: list[tuple[str, str]]) -> None:
    for result, (record, _text) in zip(pushed.results, written, strict=False):
        if result.state != "accepted":
            raise TarebookError(result.why or result.state, record=record)


class _Author:
    """One writer: counts its entries, and knows the heads its own earlier entries made."""

    def __init__(self, session: Session, garage: str, device: str, writer: Writer) -> None:
        self.stored = StoredFold(session, garage)
        self.device = device
        self.writer = writer
        self.heads: dict[str, list[str]] = {}

    def text_of(self, change: Change) -> tuple[str, str]:
        """(record, the entry's text)"""
        self._refuse_unknown(change)
        self.writer.n += 1
        entry, record = new_id(), change.record or new_id()
        base = self._heads(record) if change.base is None and change.record else list(change.base or ())
        self.heads[record] = [entry]
        made_at = datetime.now(UTC).isoformat(timespec="seconds")
        return record, to_json(
            {
                "id": entry, "device": self.device, "writer": self.writer.name, "n": self.writer.n,
                "kind": change.kind, "record": record, "set": dict(change.set), "base": base,
                "photos": list(change.photos), "made_at": made_at,
            }
        )  # fmt: skip

    def _refuse_unknown(self, change: Change) -> None:
        """What another program's entry may hold, this one must not write."""
        kind = KINDS.get(change.kind)
        if kind and known(kind, change.set) != change.set:
            raise TarebookError("invalid", record=change.record)

    def _heads(self, name: str) -> list[str]:
        if name not in self.heads:
            record = self.stored.fetch_record(name)
            self.heads[name] = record.heads if record else []
        return self.heads[name]
