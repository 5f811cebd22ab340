"""One slip of a hand in the core, and what the tests said to it."""

import random
from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path

from tests.machine import ROOT

CORES = {"python": ROOT / "server" / "tarebook" / "core", "typescript": ROOT / "webapp" / "src" / "core"}
SUFFIX = {"python": ".py", "typescript": ".ts"}
EQUIVALENT = Path(__file__).with_name("equivalent.tsv")
HUMPS = {"fuelRun": "fuel_run", "wholeCar": "whole_car"}


@dataclass
class Slip:
    """In `file` (absolute), `now` stands where the characters from `start` to `end` were."""

    file: str
    start: int
    end: int
    now: str
    by: str = field(default="", compare=False)  # "tests", "comparison", or nothing when it survived
    test: str = field(default="", compare=False)
    seconds: float = field(default=0.0, compare=False)

    @property
    def language(self) -> str:
        return "python" if self.file.endswith(".py") else "typescript"

    @property
    def room(self) -> str:
        name = Path(self.file).relative_to(CORES[self.language]).parts[0]
        return HUMPS.get(name, name)

    @cached_property
    def text(self) -> str:
        return Path(self.file).read_text(encoding="utf-8")

    @property
    def changed(self) -> str:
        """The whole module as it is with the slip."""
        return self.text[: self.start] + self.now + self.text[self.end :]

    @property
    def name(self) -> tuple[str, str, str]:
        """By which the table of the equivalent knows it: the file, and its line without and with the slip."""
        first = self.text.rfind("\n", 0, self.start) + 1
        last = self.text.find("\n", self.end)
        now = self.text[first : self.start] + self.now + self.text[self.end : last]
        return str(Path(self.file).relative_to(ROOT)), one_line(self.text[first:last]), one_line(now)

    @property
    def sentence(self) -> str:
        """Where it is and what was changed, for a reader."""
        file, was, now = self.name
        return f"{file}:{self.text.count(chr(10), 0, self.start) + 1}\n    - {was}\n    + {now}"


def one_line(text: str) -> str:
    return " ".join(text.split())


def sample(slips: Iterable[Slip], each: int, seed: int) -> list[Slip]:
    """At most `each` of every room of every language, the same for the same seed."""
    rooms: dict[tuple[str, str], list[Slip]] = {}
    for slip in slips:
        rooms.setdefault((slip.language, slip.room), []).append(slip)
    draws = {name: random.Random(f"{seed} {name}") for name in rooms}
    return [slip for name, all_ in sorted(rooms.items()) for slip in draws[name].sample(all_, min(each, len(all_)))]


def equivalent() -> dict[tuple[str, str, str], str]:
    """Slips that change nothing anybody could see, each with the reason."""
    rows = [line.split("\t") for line in EQUIVALENT.read_text(encoding="utf-8").splitlines()[1:]]
    return {(file, was, now): why for file, was, now, why in rows}
