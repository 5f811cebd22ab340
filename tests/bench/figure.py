"""One figure of the bench, and the table they are printed in. Nothing here judges but by printing."""

from __future__ import annotations

import os
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from statistics import median
from typing import Literal

HEADINGS = ("figure", "median", "from", "to", "runs", "aim", "median : aim", "load")


@dataclass(frozen=True)
class Figure:
    """Values of one figure, one for each run. `aim`: what it should reach; `wanted`: whether less or more is better."""

    name: str
    values: Sequence[float]
    unit: str
    aim: float | None = None
    wanted: Literal["less", "more"] = "less"
    load: float = field(default_factory=lambda: os.getloadavg()[0])

    @property
    def median(self) -> float:
        return median(self.values)

    def row(self) -> tuple[str, ...]:
        """The figure's cells, in the order of `HEADINGS`."""
        ends = (short(min(self.values)), short(max(self.values)))
        middle = f"{short(self.median)} {self.unit}"
        return self.name, middle, *ends, str(len(self.values)), self._aim(), self._against_aim(), f"{self.load:.1f}"

    def _aim(self) -> str:
        if self.aim is None:
            return ""
        return f"{'<' if self.wanted == 'less' else '>='} {short(self.aim)}"

    def _against_aim(self) -> str:
        if self.aim is None:
            return ""
        ratio, off = self.median / self.aim, abs(self.median - self.aim)
        reached = self.median < self.aim if self.wanted == "less" else self.median >= self.aim
        return f"{ratio:.2f}" if reached else f"{ratio:.2f} MISSES by {short(off)} {self.unit}"


def short(number: float) -> str:
    """Three digits that count, whole from a hundred on."""
    return f"{number:,.0f}" if abs(number) >= 99.95 else f"{number:.3g}"


def table(figures: Iterable[Figure]) -> str:
    """The figures as text, a line each, under one line of headings."""
    rows = [HEADINGS, *(figure.row() for figure in figures)]
    widths = [max(len(row[column]) for row in rows) for column in range(len(HEADINGS))]
    return "\n".join("  ".join(map(_aligned, row, widths, range(len(row)))).rstrip() for row in rows)


def _aligned(cell: str, width: int, column: int) -> str:
    return cell.ljust(width) if column in (0, 6) else cell.rjust(width)
