"""Shares of many runs with their binomial doubt, and tables: p of n runs is known to ± 2·√(p(1 − p)/n) (95 %)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt


@dataclass(frozen=True)
class Share:
    """How many of how many."""

    count: int
    of: int

    @property
    def value(self) -> float:
        return self.count / self.of

    @property
    def doubt(self) -> float:
        return 2.0 * sqrt(self.value * (1.0 - self.value) / self.of)

    def __str__(self) -> str:
        return f"{100 * self.value:.1f} ± {100 * self.doubt:.1f} %"


def lines(headings: Sequence[str], rows: Sequence[Sequence[str]]) -> str:
    """A table in markdown, its columns even."""
    every = [headings, ["---"] * len(headings), *rows]
    widths = [max(len(row[column]) for row in every) for column in range(len(headings))]
    return "\n".join("| " + " | ".join(map(str.ljust, row, widths)) + " |" for row in every)
