"""What every kind of fuzz shares: cases made from seeds, outcomes counted, findings that say how to make them again.

A case is a function of a seeded Random; it gives one word for what came of it, and raises when a promise was broken.
"""

from __future__ import annotations

import signal
import time
import traceback
from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from random import Random
from types import FrameType

Case = Callable[[Random], str]
Opened = Callable[[Path], AbstractContextManager[Case]]
"""Makes what a kind's cases work on, in an empty folder, and gives the case."""
MOST_SECONDS = 5.0  # of this process's time: a busy machine makes no finding


class TooLongError(Exception):
    """A case took more time than anything may."""


@dataclass
class Tally:
    """What came of one kind. `findings`: what broke, by its last lines → the names of the cases that show it."""

    name: str
    cases: int = 0
    seconds: float = 0.0
    outcomes: Counter[str] = field(default_factory=Counter)
    findings: dict[str, list[str]] = field(default_factory=dict)

    def line(self) -> str:
        found = ", ".join(f"{count} {word}" for word, count in sorted(self.outcomes.items()))
        return (
            f"{self.name:<9} {self.seconds / 60:6.1f} min {self.cases:8} cases {len(self.findings):3} findings  {found}"
        )

    def found(self) -> Iterator[str]:
        for what, cases in self.findings.items():
            yield f"FINDING {self.name}, {len(cases)} times, first in case {cases[0]}:\n{what}"


@contextmanager
def limited(seconds: float = MOST_SECONDS) -> Iterator[None]:
    """Raises `TooLongError` inside when so much of this process's time is used up."""

    def too_long(_signal: int, _frame: FrameType | None) -> None:
        raise TooLongError(f"more than {seconds} s")

    before = signal.signal(signal.SIGPROF, too_long)
    signal.setitimer(signal.ITIMER_PROF, seconds)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, before)


def run(name: str, opened: Opened, folder: Path, seed: int, minutes: float, most: int = 10**9, first: int = 1) -> Tally:
    """Cases one after the other, until the minutes are over or there were so many."""
    tally = Tally(name)
    started = time.monotonic()
    with _heard(tally, "at the end"), opened(folder) as case:
        for number in range(first, first + most):
            tally.cases += 1
            with _heard(tally, f"{seed}:{number}"):
                tally.outcomes[case(Random(f"{name}:{seed}:{number}"))] += 1
            tally.seconds = time.monotonic() - started
            if tally.seconds > 60 * minutes:
                break
    return tally


@contextmanager
def _heard(tally: Tally, key: str) -> Iterator[None]:
    """Whatever is raised inside is a finding."""
    try:
        yield
    except Exception as fault:
        at = [f"{place.name}:{place.lineno}" for place in traceback.extract_tb(fault.__traceback__)[-3:]]
        named = f"{type(fault).__name__} at {', '.join(at)}\n"
        known = next((said for said in tally.findings if said.startswith(named)), None)
        what = "".join(traceback.format_exception(fault)[-6:])[-2000:]
        tally.findings.setdefault(known or named + what, []).append(key)
