"""Random histories of people who edit, take back, delete, bring back and weigh out of each other's sight.

Three phones and the server must end alike; and no value may vanish that no later entry on its field had seen. The truth
beside them is walked here over the bases in the texts; the fold is not asked.
"""

from __future__ import annotations

import json
from collections import Counter, defaultdict
from typing import Any

import pytest

from tarebook.journal.fold import Fold
from tarebook.journal.hanging import brought_back
from tests.typescript import answers

HISTORIES, AT_ONCE, STEPS = 500, 50, 60
MOVES = {
    "new", "edit", "focus", "undo", "undo a beginning", "weigh", "delete", "bring back", "settle", "sync", "back up",
    "restore",
}  # fmt: skip


@pytest.fixture(scope="module")
def histories() -> list[dict[str, Any]]:
    told = []
    for first in range(0, HISTORIES, AT_ONCE):
        asked = [{"seed": seed, "steps": STEPS} for seed in range(first, first + AT_ONCE)]
        told += answers([{"function": "journal.two_people", "in": one} for one in asked])
    return told


def folded(lines: list[dict[str, Any]]) -> dict[str, Any]:
    """What the server shows of a journal, as a phone does."""
    fold = Fold()
    for line in lines:
        fold.add(line["number"], line["text"], line["aside"])
    back = brought_back(fold.records)
    shown = {}
    for name, record in fold.records.items():
        sides = {field: [head.value for head in heads] for field, heads in record.conflicts.items()}
        if name in back:
            sides["deleted"] = [head.value for head in record.fields["deleted"]] + [False] * len(back[name])
        told = {"kind": record.kind, "values": record.values, "heads": record.heads, "conflicts": sides}
        shown[name] = {**told, "deleted": record.deleted and name not in back}
    return shown


def seen_by(entries: dict[str, dict[str, Any]], name: str) -> set[str]:
    seen: set[str] = set()
    walk = list(entries[name]["base"])
    while walk:
        base = walk.pop()
        if base not in seen:
            seen.add(base)
            walk += entries[base]["base"]
    return seen


def test_three_phones_and_the_server_end_alike(histories: list[dict[str, Any]]) -> None:
    for seed, told in enumerate(histories):
        for phone in told["shown"]:
            assert phone == folded(told["lines"]), f"seed {seed}"


def test_no_value_vanishes_that_nobody_had_seen(histories: list[dict[str, Any]]) -> None:
    for seed, told in enumerate(histories):
        entries = {entry["id"]: entry for entry in (json.loads(line["text"]) for line in told["lines"])}
        pasts = {name: seen_by(entries, name) for name in entries}
        sets = defaultdict(list)
        for name, entry in entries.items():
            for field in entry["set"]:
                sets[entry["record"], field].append(name)
        for (record, field), names in sets.items():
            if field in ("deleted", "hung"):
                continue
            rec = told["shown"][0][record]
            shown = rec["conflicts"].get(field) or [rec["values"].get(field)]
            for name in names:
                is_last = not any(name in pasts[later] for later in names)
                assert not is_last or entries[name]["set"][field] in shown, f"seed {seed}: {name} of {record}"


def test_nothing_deleted_had_work_that_no_deletion_knew(histories: list[dict[str, Any]]) -> None:
    for seed, told in enumerate(histories):
        shown = told["shown"][0]
        entries = {entry["id"]: entry for entry in (json.loads(line["text"]) for line in told["lines"])}
        for record, rec in shown.items():
            if not rec["deleted"]:
                continue
            own = [entry for entry in entries.values() if entry["record"] == record]
            ends = {entry["id"]: seen_by(entries, entry["id"]) for entry in own if entry["set"].get("deleted")}
            for entry in own:
                had_seen = seen_by(entries, entry["id"])
                known = "deleted" in entry["set"] or any(entry["id"] in past for past in ends.values())
                assert known or had_seen & ends.keys(), f"seed {seed}: {entry['id']} of {record}"
            hung = {name for end in ends for name in entries[end]["set"].get("hung", ())}
            below = [name for name, one in shown.items() if one["values"].get("of") == record and not one["deleted"]]
            assert set(below) <= hung or rec["kind"] != "part", f"seed {seed}: {below} on {record}"


def test_every_move_was_made_and_conflicts_were_met(histories: list[dict[str, Any]]) -> None:
    counts: Counter[str] = Counter()
    for told in histories:
        counts.update(told["moves"])
    print(f"\n{HISTORIES} histories of {STEPS} steps: {dict(counts)}")
    assert set(counts) == MOVES
    assert sum(bool(rec["conflicts"]) for told in histories for rec in told["shown"][0].values()) > HISTORIES // 2
