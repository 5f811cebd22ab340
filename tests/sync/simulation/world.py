"""One world: a home computer, its phones, and one scheduler that decides what happens next.

Everything a run depends on comes from its seed, and every step leaves a line in the trace: the same seed gives the same
trace, byte for byte.
"""

from __future__ import annotations

import hashlib
import json
import shutil
import tempfile
from collections import Counter
from collections.abc import Callable
from contextlib import ExitStack
from dataclasses import dataclass, field
from itertools import zip_longest
from pathlib import Path
from random import Random
from typing import Any

from tests.journal.older import without
from tests.sync.simulation.phones import ask
from tests.sync.simulation.seeded import START, Clock, owned
from tests.sync.simulation.server import MEMORY, Answer, Server, migrated_quickly
from tests.sync.simulation.truth import Truth

OLDER = {"job": ["note"]}


class FoundError(AssertionError):
    """Something that must hold does not."""


@dataclass
class Phone:
    """What the scheduler knows of a phone. `disk`: its own number, or that of the phone on which it is one more tab.
    `device`: its latest name; None until it was paired."""

    number: int
    disk: int
    open: bool = True
    device: str | None = None


@dataclass
class Request:
    """A request on its way; `answer` once the server has given one. `counted`: what the server counts then, or counts
    because of what was pushed."""

    flight: int
    phone: int
    method: str
    path: str
    headers: dict[str, str]
    body: str | None
    answer: Answer | None = None
    counted: set[str] = field(default_factory=set)


@dataclass
class Kept:
    """A backup, or a copy of the server's files: where, and who had been taken off the list by then."""

    file: Path
    revoked: frozenset[str] = field(default_factory=frozenset)


class World:
    """`counts`: how often each move and each fault came about."""

    def __init__(self, seed: int, counts: Counter[str], tell: Callable[[str], None] | None = None) -> None:
        self.chance = Random(seed)
        self.counts = counts
        self.tell = tell
        self.hash = hashlib.sha256()
        self.steps = 0
        self.begun = 0
        self.clock = Clock()
        self.truth = Truth()
        self.phones: list[Phone] = []
        self.requests: list[Request] = []
        self.revoked: dict[str, str] = {}
        self.tokens: dict[str, str] = {}
        self.backups: list[Kept] = []
        self.copies: list[Kept] = []
        self.journal: list[tuple[Any, ...]] = []
        self.counted: set[str] = set()
        self.closing = ExitStack()
        self.root = Path(tempfile.mkdtemp(prefix="simulation-", dir=MEMORY))
        self.closing.callback(shutil.rmtree, self.root)
        self.closing.enter_context(owned(self.clock, Random(seed + 1)))
        self.closing.enter_context(migrated_quickly())
        self.older = ExitStack()
        self.closing.callback(self.older.close)
        self.is_older = self.chance.random() < 0.15
        if self.is_older:
            self.older.enter_context(without(OLDER))
        self.ask("world", seed=seed)
        self.server = Server(self.root)
        self.closing.callback(lambda: self.server.stop())

    def close(self) -> None:
        self.closing.close()

    def trace(self, line: str) -> None:
        line = line.replace(str(self.root), "")  # its name is the system's choice
        self.hash.update(line.encode() + b"\n")
        if self.tell:
            self.tell(f"{self.hash.hexdigest()[:6]} {line[:300]}")

    def count(self, what: str) -> None:
        self.counts[what] += 1

    def must(self, holds: bool, what: str) -> None:
        if not holds:
            raise FoundError(what)

    # Phones

    def ask(self, do: str, **given: Any) -> dict[str, Any]:
        """A command to the phones' side, and what has to be seen to after each."""
        line = ask(do, **given)
        found: dict[str, Any] = json.loads(line)
        for sent in found["sent"]:
            self.requests.append(Request(**sent))
        self.must(not found["gone"], f"a record is gone from the disk of phone {found['gone']}")
        self.trace(f"  {do} {line}")
        return found

    def new_phone(self, source: int = -1, is_tab: bool = False) -> Phone:
        """Opened at once. `source`: the phone whose disk is copied, or shared by a tab."""
        years = 0 if is_tab else self.chance.choice([0, 0, -10, 10])
        if years:
            self.count("a phone's clock is ten years off")
        milliseconds = int((START + years * 31_557_600) * 1000)
        number = self.ask("phone", milliseconds=milliseconds, isTab=is_tab, **{"from": source})["value"]
        self.phones.append(Phone(number, self.phones[source].disk if is_tab else number))
        self.open(self.phones[-1])
        return self.phones[-1]

    def open(self, phone: Phone) -> None:
        phone.open = True
        self.ask("open", phone=phone.number, unknown=OLDER["job"] if self.is_older else [])
        self.learn(phone)

    def learn(self, phone: Phone) -> None:
        """Which device the page takes itself for."""
        if phone.open:
            phone.device = self.mood(phone)["device"]

    def kill(self, phone: Phone) -> None:
        phone.open = False
        self.ask("kill", phone=phone.number)
        self.forget_requests(phone)

    def forget_requests(self, phone: Phone) -> None:
        """Nobody waits for these any more; half of them are on their way all the same."""
        for request in [one for one in self.requests if one.phone == phone.number]:
            if request.answer is not None or self.chance.random() < 0.5:
                self.requests.remove(request)

    def app(self, phone: Phone, work: str, *given: Any, cut: dict[str, Any] | None = None) -> dict[str, Any]:
        more = {} if cut is None else {"cut": cut}
        found = self.ask("app", phone=phone.number, work=work, **{"with": given}, **more)
        if found.get("cut") and cut and cut["how"] != "quota":
            phone.open = False
            self.forget_requests(phone)
        return found

    def save(self, phone: Phone, work: str, *given: Any, cut: dict[str, Any] | None = None) -> str:
        """Something a person saves. Gives what became of it."""
        found = self.app(phone, work, *given, cut=cut)
        if found.get("cut"):
            return "cut"
        if "error" in found:
            self.must(found["error"] in ("not_savable", "storage_failed", "storage_full", "fact"), str(found["error"]))
            return str(found["error"])
        self.truth.save(found["value"])
        return f"saved {len(found['value'])}"

    def look(self, phone: Phone) -> dict[str, Any]:
        looked: dict[str, Any] = self.app(phone, "look")["value"]
        return looked

    def mood(self, phone: Phone) -> dict[str, Any]:
        mood: dict[str, Any] = self.app(phone, "mood")["value"]
        return mood

    def passes(self, seconds: float) -> None:
        self.clock.now += seconds
        self.ask("pass", milliseconds=int(seconds * 1000))

    # The server

    def take_off(self, device: str) -> None:
        """From now on none of its tokens may open anything."""
        self.revoked.update({token: name for token, name in self.tokens.items() if name == device})

    def watch_server(self) -> None:
        """After each request and step that may have touched it: its numbers have no gap, what counts is known to."""
        if not self.server.has_changed():
            return
        rows = self.server.rows("select number, id, text, reason from entry order by number")
        head = self.server.rows("select head from garage")[0][0]
        self.must([row[0] for row in rows] == list(range(1, head + 1)), "the journal's numbers have a gap")
        for row in (row for row, before in zip_longest(rows, self.journal) if row and row != before):
            _number, name, text, reason = row
            decoded = text.decode()
            self.truth.meet(decoded)
            if reason is None and name not in self.truth.accepted:
                self.truth.accept(decoded)
        self.journal = rows
        self.counted = {name for _number, name, _text, reason in rows if reason is None}
