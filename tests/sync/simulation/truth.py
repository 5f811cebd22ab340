"""What must be true, from nothing but what phones called saved and what the server's journal says it took in.

The fold is not asked: which entry had seen which is walked here, over the bases as they stand in the texts.
"""

from __future__ import annotations

import json
from collections.abc import Container, Iterable, Mapping, Set
from dataclasses import dataclass, field
from functools import lru_cache
from typing import Any

Figures = Mapping[str, Mapping[str, Any]]
"""By record: its values, with `deleted` and `conflicts: {field: [values]}` where there are such."""


@dataclass
class Truth:
    """`saved`: every text a phone has called saved. `texts`: by name, all texts met that go by it. `accepted`: names of
    entries that a server has counted once; `heard`: those of which some phone was told so. What no phone was told, no
    phone can prove to a server that was restored from before it: neither an entry, nor what made one count that had
    waited. `given`: names of those whose receipt some phone was given, whether they counted then or not."""

    saved: dict[str, None] = field(default_factory=dict)
    texts: dict[str, dict[str, dict[str, Any]]] = field(default_factory=dict)
    accepted: dict[str, None] = field(default_factory=dict)
    heard: set[str] = field(default_factory=set)
    given: set[str] = field(default_factory=set)
    takes: dict[str, bool] = field(default_factory=dict)

    def save(self, texts: Iterable[str]) -> None:
        for text in texts:
            self.saved[text] = None
            self.meet(text)

    def meet(self, text: str) -> None:
        entry = _entry(text)
        if entry is None or text in self.texts.setdefault(entry["id"], {}):
            return
        self.texts[entry["id"]][text] = entry
        judged = entry["set"].get("entry") if entry["kind"] == "verdict" else None
        if judged is not None:
            self.takes[judged] = entry["set"]["take"] or self.takes.get(judged, False)

    def accept(self, text: str) -> None:
        """The server counts this entry."""
        self.meet(text)
        entry = _entry(text)
        if entry is not None:
            self.accepted[entry["id"]] = None

    def hear(self, answer: Mapping[str, Any], counted: Set[str]) -> None:
        """What the answer to a push, or a page of the journal, tells a phone. `counted`: what the server counted when
        it gave the page, or came to count by the push. Who has the last page has all that makes those count."""
        results = answer.get("results", ())
        self.heard.update(one["id"] for one in results if one["why"] is None)
        self.given.update(one["id"] for one in results if "receipt" in one)
        lines = (_entry(line["text"]) for line in answer.get("entries", ()) if "receipt" in line)
        self.given.update(entry["id"] for entry in lines if entry is not None)
        if not answer.get("more"):
            self.heard.update(counted & self.given)

    def missing(self, figures: Figures, aside: Container[str] = ()) -> list[str]:
        """Accepted edits that neither show, nor are followed by one that saw them, nor are a side of a conflict.
        `aside`: names of the entries that do not count."""
        sets: dict[tuple[str, str], list[str]] = {}
        for name in self.accepted:
            for one in self._entry(name)["set"]:
                sets.setdefault((self._entry(name)["record"], one), []).append(name)
        gone = []
        for (record, one), names in sets.items():
            shown = _shown(figures.get(record), one)
            for name in names:
                entry = self._entry(name)
                if not self._is_promised(name, aside) or _same(entry["set"][one], shown):
                    continue
                if not any(name in self._seen_by(later) for later in names if later != name):
                    gone.append(f"{name} set {one} of {record} to {entry['set'][one]!r}, which is {shown!r}")
        return gone

    def buried(self, figures: Figures, aside: Container[str] = ()) -> list[str]:
        """Accepted work on a record that counts as deleted, though no deletion had seen it and it had seen none."""
        found = []
        for name in self.accepted:
            entry = self._entry(name)
            record = figures.get(entry["record"], {})
            if not record.get("deleted") or not entry["set"] or "deleted" in entry["set"]:
                continue
            if not self._is_promised(name, aside):
                continue
            ends = [one for one in self.texts if self._entry(one)["record"] == entry["record"] and self._ends(one)]
            if not any(name in self._seen_by(one) or one in self._seen_by(name) for one in ends):
                found.append(f"{name} set {sorted(entry['set'])} of {entry['record']}, which counts as deleted")
        return found

    def _ends(self, name: str) -> bool:
        return self._entry(name)["set"].get("deleted") is True

    def wrongly_invalid(self, aside: Mapping[str, str]) -> list[str]:
        """Entries that no program finds wrong by themselves, and that are set aside as if they were."""
        named = [name for name, reason in aside.items() if reason == "invalid" and name in self.texts]
        return [name for name in named if not self._left_out(name) and not self._is_ambiguous(name)]

    def _is_promised(self, name: str, aside: Container[str]) -> bool:
        """Whether an accepted entry has to count: a phone was told that it does, nobody has left it out, and it is not
        aside because another took its name, or one that it rests on."""
        is_taken = len(self.texts[name]) > 1 or (name in aside and self._is_ambiguous(name))
        return name in self.heard and not is_taken and not self._left_out(name)

    def _is_ambiguous(self, name: str) -> bool:
        """Whether two entries go by its name, or by one that it rests on: which was meant only its writer knows."""
        return any(len(self.texts.get(one, ())) > 1 for one in {name, *self._seen_by(name)})

    def _entry(self, name: str) -> dict[str, Any]:
        return next(iter(self.texts[name].values()))

    def _seen_by(self, name: str) -> set[str]:
        """Names of all entries that an entry rests on, whatever became of them."""
        seen: set[str] = set()
        walk = [base for entry in self.texts.get(name, {}).values() for base in entry["base"]]
        while walk:
            base = walk.pop()
            if base not in seen:
                seen.add(base)
                walk += [one for entry in self.texts.get(base, {}).values() for one in entry["base"]]
        return seen

    def _left_out(self, name: str) -> bool:
        """Whether a person has left it out, or one that it rests on, and nobody has taken that in."""
        return any(self.takes.get(one) is False for one in {name, *self._seen_by(name)})


@lru_cache(10_000)
def _entry(text: str) -> dict[str, Any] | None:
    try:
        found = json.loads(text)
    except ValueError:
        return None
    return found if isinstance(found, dict) and "base" in found and isinstance(found.get("set"), dict) else None


def _shown(record: Mapping[str, Any] | None, one: str) -> list[Any]:
    """What the figures have of a field: one value, or the sides of a conflict."""
    if record is None:
        return []
    sides: list[Any] | None = record.get("conflicts", {}).get(one)
    return sides or [record.get(one, False if one == "deleted" else None)]


def _same(value: Any, shown: list[Any]) -> bool:
    return value in shown
