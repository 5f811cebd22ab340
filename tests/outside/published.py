"""Published values in `fixtures/outside/`: each entry names its source, and what was printed with which tolerance.

What a test looks up of an entry while it runs counts as checked; `conftest.py` prints how many values of each source
that were, and `test_every_published_value.py` fails for an entry no test looks at.
"""

import json
import os
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

FOLDER = Path(__file__).resolve().parents[2] / "fixtures" / "outside"
CHECKED: dict[str, set[str]] = {}
"""Entry id → the keys of what was printed that a running test has looked up."""


class Printed(dict[str, Any]):
    """What a source prints, by key; it notes which keys a test looks up."""

    def __init__(self, identity: str, content: dict[str, Any]) -> None:
        super().__init__(content)
        self.identity = identity

    def __getitem__(self, key: str) -> Any:
        self._note(key)
        return super().__getitem__(key)

    def values(self) -> Any:
        self._note(*self)
        return super().values()

    def items(self) -> Any:
        self._note(*self)
        return super().items()

    def _note(self, *keys: str) -> None:
        # Looking around while tests are collected checks nothing.
        if os.environ.get("PYTEST_CURRENT_TEST", "").endswith("(call)"):
            CHECKED.setdefault(self.identity, set()).update(keys)


def all_entries() -> Iterator[dict[str, Any]]:
    for path in sorted(FOLDER.glob("*.json")):
        yield from json.loads(path.read_text(encoding="utf-8"))["entries"]


def entries(name: str) -> dict[str, dict[str, Any]]:
    """Entry id → entry of one file."""
    content = json.loads((FOLDER / f"{name}.json").read_text(encoding="utf-8"))
    return {each["id"]: {**each, "expected": Printed(each["id"], each["expected"])} for each in content["entries"]}


def agrees(found: float, entry: dict[str, Any], key: str) -> bool:
    """True when `found` is what the source printed under `key`, within the entry's tolerance (0: to the last bit)."""
    tolerance = entry["tolerance"]
    allowed = tolerance.get(key, tolerance.get("*", 0.0)) if isinstance(tolerance, dict) else tolerance
    return bool(abs(found - entry["expected"][key]) <= allowed)


def by_source(checked: dict[str, set[str]]) -> dict[str, tuple[int, int]]:
    """Source → (values, entries) checked; a list that was printed counts as so many values."""
    found: dict[str, tuple[int, int]] = {}
    for entry in {each["id"]: each for each in all_entries()}.values():
        keys = checked.get(entry["id"], set()) & entry["expected"].keys()
        if keys:
            values, number = found.get(short(entry["source"]), (0, 0))
            found[short(entry["source"])] = (
                values + sum(_numbers(entry["expected"][key]) for key in keys),
                number + 1,
            )
    return found


def short(source: str) -> str:
    """A source's name without where in it to look."""
    return re.split(r"[,;(]| ch\. | https?://", source)[0].strip()


def _numbers(printed: Any) -> int:
    if isinstance(printed, dict | list):
        return sum(_numbers(each) for each in (printed.values() if isinstance(printed, dict) else printed))
    return 1
