"""A phone reduced to what sync asks of it, and a network that can lose either half of an exchange.

What it holds survives any crash; it holds every text it ever saved or pulled. What the server has is what was pulled
under the present cursor, never what a push answered: a copy restored behind a phone's back answers no more.
"""

from __future__ import annotations

import json
from dataclasses import dataclass, field
from itertools import count
from typing import Any

from tarebook.journal.fold import Fold
from tarebook.journal.record import Record
from tests.home import Device, Home

_serial = count(1)


class LostError(Exception):
    """The network lost the request or the answer."""


@dataclass
class Network:
    """`drop`: what happens to the next exchanges, in turn: "request", "answer" or None."""

    drop: list[str | None] = field(default_factory=list)

    def exchange(self, ask: Any) -> Any:
        fate = self.drop.pop(0) if self.drop else None
        if fate == "request":
            raise LostError
        answer = ask()
        if fate == "answer":
            raise LostError
        return answer


@dataclass
class ModelPhone:
    device: Device
    network: Network = field(default_factory=Network)
    clock: int = 2026
    held: dict[str, None] = field(default_factory=dict)
    proofs: dict[str, dict[str, str]] = field(default_factory=dict)  # by text; they outlive a restored server
    rows: list[dict[str, Any]] = field(default_factory=list)
    epoch: str = ""
    mark: str = ""
    writer: str = field(default_factory=lambda: f"w-{next(_serial)}")
    n: int = 0

    def crash(self) -> None:
        """The page is gone and opened again: another writer, the same store."""
        self.writer, self.n = f"w-{next(_serial)}", 0

    def clone(self) -> ModelPhone:
        """The same store copied into another browser, token and all."""
        held, proofs = dict(self.held), dict(self.proofs)
        return ModelPhone(self.device, Network(), self.clock, held, proofs, list(self.rows), self.epoch, self.mark)

    @property
    def pending(self) -> list[str]:
        """Texts the server is not known to have, in the order they came to be held."""
        here = {row["text"] for row in self.rows}
        return [text for text in self.held if text not in here]

    def fold(self, with_pending: bool = True) -> Fold:
        fold = Fold()
        for row in self.rows:
            fold.add(row["number"], row["text"], row["aside"])
        for index, text in enumerate(self.pending if with_pending else ()):
            fold.add(10**9 + index, text)
        return fold

    def save(self, kind: str, record: str, fields: dict[str, Any], **more: Any) -> str:
        """Writes an entry on what the phone shows now, and calls it saved. Gives its text."""
        known: Record | None = self.fold().records.get(record)
        self.n += 1
        entry = {
            "id": f"{self.clock}-{next(_serial)}", "device": self.device.id, "writer": self.writer, "n": self.n,
            "kind": kind, "record": record, "set": fields, "photos": [], "made_at": f"{self.clock}-05-02T10:00:00Z",
            "base": known.heads if known else [],
        }  # fmt: skip
        return self.save_text(json.dumps({**entry, **more}))

    def save_text(self, text: str) -> str:
        self.held[text] = None
        return text

    def push(self, most: int = 500) -> int:
        """Sends what the server is not known to have. Gives the status."""
        texts = self.pending[:most]
        proofs = [self.proofs.get(text) for text in texts]
        answer = self.network.exchange(lambda: self.device.push(*texts, epoch=self.epoch, receipts=proofs))
        if answer.status_code == 409:
            self.reset()
        if answer.status_code == 200:
            for text, result in zip(texts, answer.json["results"], strict=True):
                self.keep_proof(text, result)
        return int(answer.status_code)

    def keep_proof(self, text: str, told: dict[str, Any]) -> None:
        if "receipt" in told:
            self.proofs[text] = {name: told[name] for name in ("receipt", "sent_by") if name in told}

    def pull(self, limit: int = 1000) -> int:
        """Brings pages until there are no more; each page and its cursor are kept together. Gives the last status."""
        while True:
            last = self.rows[-1] if self.rows else {"number": 0}
            cursor = (self.epoch, last["number"], self.mark)
            answer = self.network.exchange(lambda at=cursor: self.device.pull(*at, limit=limit))
            if answer.status_code != 200:
                if answer.status_code == 409:
                    self.reset()
                return int(answer.status_code)
            self.epoch, self.mark = answer.json["epoch"], answer.json["mark"]
            for row in answer.json["entries"]:
                self.rows.append(row)
                self.held.setdefault(row["text"])
                self.keep_proof(row["text"], row)
            if not answer.json["more"]:
                return 200

    def reset(self) -> None:
        """The server's journal is not the one this cursor was of: begin again, and keep everything."""
        self.rows, self.epoch, self.mark = [], "", ""

    def sync(self, home: Home) -> None:
        """Without faults until nothing is left to do; pairs again when the server does not know the device."""
        self.network.drop.clear()
        for _round in range(6):
            status = self.pull()
            if status in (401, 403):
                self.pair_again(home)
            elif status == 200 and not self.pending:
                return
            elif status == 200:
                self.push(most=7)
        while self.pending:
            before = len(self.pending)
            self.push()
            self.pull()
            assert len(self.pending) < before

    def pair_again(self, home: Home) -> None:
        self.device = home.pair("phone", wanted=self.device.id)
