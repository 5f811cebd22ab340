"""What an entry had seen of its record, told by the heads it builds on: against walking its whole past every time.

Random histories: writers that do not see each other, bases that are old, that never come or come late, entries from a
stranger, deletions and what brings back, verdicts in any order.
"""

from __future__ import annotations

import json
from random import Random
from typing import Any

import pytest

from tarebook.journal import state
from tarebook.journal.entries import Entry
from tarebook.journal.fold import Fold
from tarebook.journal.record import Kept, Record
from tests.journal.plainly import plainly
from tests.typescript import unlike


class Walking(Fold):
    """Knows nothing that it has not walked."""

    def _seen_of(self, record: Record, entry: Entry) -> set[str] | None:
        return None if set(record.heads) == set(entry.base) else self._seen_by(entry)

    def _may_be_late(self, record: Record, entry: Entry) -> bool:
        return True

    def _note_what_heads_saw(self, record: Record, name: str, seen: set[str] | None, is_late: bool) -> None:
        pass


class Stored(Fold):
    """Every record through its line in the database, at every step."""

    def fetch_record(self, record: str) -> Record | None:
        found = super().fetch_record(record)
        if found is not None:
            self.records[record] = state.load(found.kind, state.dump(found))
        return self.records.get(record)


class Counting(Fold):
    """How often an entry kept before was asked for."""

    asked = 0

    def fetch_kept(self, entry: str) -> Kept | None:
        self.asked += 1
        return super().fetch_kept(entry)


def entry(name: str, record: str, base: list[str], fields: dict[str, Any], kind: str = "job") -> str:
    return json.dumps(
        {"id": name, "device": "phone", "writer": "w", "n": 1, "kind": kind, "record": record, "set": fields,
         "base": base, "photos": [], "made_at": "2026-05-02T10:00:00Z"}
    )  # fmt: skip


def history(random: Random, length: int) -> list[tuple[str, str | None]]:
    """Texts in the order they come in, and why the intake set each aside. Nobody has seen what is made after it."""
    names = [f"e-{at}" for at in range(length)]
    found: list[tuple[str, str | None]] = []
    branches: list[list[str]] = [[], []]
    for at, name in enumerate(names):
        if at and random.random() < 0.15:
            judged = {"entry": random.choice(names), "take": random.random() < 0.7}
            found.append((entry(name, f"verdict-{at}", [], judged, "verdict"), None))
            continue
        tips = random.choice(branches)
        seen_before = random.sample(names[:at], min(at, random.randint(1, 2)))
        base = random.choices([[*tips], [*branches[0], *branches[1]], [], seen_before], [12, 3, 2, 2])[0]
        keys = random.sample(["hours", "note"], random.randint(1, 2))
        fields: dict[str, Any] = {key: random.choice(["1", "2", None]) for key in keys}
        if random.random() < 0.2:
            fields = {"deleted": random.random() < 0.7}
        tips[:] = [name]
        aside = random.choice([None] * 6 + ["stranger"])
        found.append((entry(name, "job-1", base, {"name": "Seats", **fields}), aside))
    if random.random() < 0.5:
        random.shuffle(found)
    return found


@pytest.mark.parametrize("seed", range(400))
def test_it_is_what_walking_finds(seed: int) -> None:
    random = Random(seed)
    folds = (Fold(), Stored(), Walking())
    for number, (text, aside) in enumerate(history(random, random.randint(3, 24)), start=1):
        for fold in folds:
            fold.add(number, text, aside)
        assert plainly(folds[0]) == plainly(folds[1]) == plainly(folds[2]), f"after number {number}"


def test_the_phone_finds_the_same() -> None:
    answered = []
    for seed in range(1_000, 1_600):
        random, fold = Random(seed), Fold()
        lines = []
        for number, (text, aside) in enumerate(history(random, random.randint(3, 30)), start=1):
            fold.add(number, text, aside)
            lines.append({"number": number, "text": text, "aside": aside})
        answered.append(({"function": "journal.fold", "in": lines}, plainly(fold)))
    assert unlike(answered) == []


@pytest.mark.parametrize("base", ["own branch", "nothing"])
def test_four_times_the_entries_are_four_times_the_work(base: str) -> None:
    """Counted, not timed: how often the fold asks for an entry kept before."""

    def asked(length: int) -> int:
        fold = Counting()
        for at in range(length):
            seen = [f"e-{at - 2}"] if base == "own branch" and at > 1 else []
            fold.add(at + 1, entry(f"e-{at}", "job-1", seen, {"name": "Seats", "hours": str(at)}))
        return fold.asked

    assert asked(1200) < 5 * asked(300)
