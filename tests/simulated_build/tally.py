"""The figures of many runs, each with its doubt, against its aim, in one table.

A median lies between the values with ranks n/2 ± √n (95 %).
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from math import sqrt
from statistics import mean, median

import numpy as np

from tests.simulated_build.run import SHOWN, Outcome
from tests.simulated_build.scenarios import Range, Scenario
from tests.simulated_build.share import Share, lines

HEADINGS = (
    "scenario", "runs", "covers", "truth below", "told", "invents", "names all", "exact place", "place spans",
    "shown under", "half-width", "mean", "90 %", "last alone", "aims",
)  # fmt: skip


@dataclass(frozen=True)
class Tally:
    """All outcomes of one scenario."""

    scenario: Scenario
    outcomes: Sequence[Outcome]

    def share(self, true_of: Callable[[Outcome], bool]) -> Share:
        return Share(sum(map(true_of, self.outcomes)), len(self.outcomes))

    @property
    def covers(self) -> Share:
        return self.share(lambda each: each.covers)

    @property
    def invents(self) -> Share:
        return self.share(lambda each: each.invents)

    @property
    def told(self) -> Share:
        """Somebody is told that something does not fit, a change or either of two answers."""
        return self.share(lambda each: each.tells)

    @property
    def shown_under(self) -> Share:
        """The car, trimmed to the minimum and what to keep in hand, is shown under the minimum."""
        return self.share(lambda each: each.shown_under)

    @property
    def wide(self) -> tuple[float, float]:
        """Half of the interval, kg: its mean, and what nine of ten are within."""
        widths = [each.half_width for each in self.outcomes]
        return mean(widths), float(np.quantile(widths, 0.9))

    @property
    def names_all(self) -> Share:
        return self.share(lambda each: each.names_all)

    @property
    def places_all(self) -> Share:
        return self.share(lambda each: each.places_all)

    @property
    def ratio(self) -> float:
        """The median half-width of the interval over that by the last weigh-in alone."""
        return median(each.u / each.alone for each in self.outcomes)

    def row(self) -> tuple[str, ...]:
        """The cells, in the order of `HEADINGS`."""
        return (
            self.scenario.name,
            f"{len(self.outcomes):,}",
            str(self.covers),
            str(self.share(lambda each: each.too_heavy)),
            str(self.told),
            str(self.invents),
            *([str(self.names_all), str(self.places_all), self.span()] if self.scenario.setting.steps else [""] * 3),
            str(self.shown_under),
            middle([each.half_width for each in self.outcomes]),
            *(f"{figure:.2f} kg" for figure in self.wide),
            middle([SHOWN * each.alone for each in self.outcomes]),
            self.verdict(),
        )

    def span(self) -> str:
        """How many gaps the place of a named change holds, on average."""
        spans = [len(name.within) for each in self.outcomes for name in each.names]
        return f"{mean(spans):.1f} gaps" if spans else ""

    def verdict(self) -> str:
        """Which aims are missed, and by how much."""
        aims = self.scenario.aims
        figures = {
            "covers": (self.covers.value, aims.covers),
            "invents": (self.invents.value, aims.invents),
            "told": (self.told.value, aims.told),
            "shown under": (self.shown_under.value, aims.shown_under),
            "names all": (self.names_all.value, aims.names_all),
            "narrower": (self.ratio, aims.ratio),
        }
        wanted = {name: (value, aim) for name, (value, aim) in figures.items() if aim is not None}
        missed = [f"MISSES {name} by {by:.3f}" for name, (value, aim) in wanted.items() if (by := _beyond(value, aim))]
        return "; ".join(missed) if missed else "reached" if wanted else ""


def _beyond(value: float, aim: Range) -> float:
    """How far outside of the aim, 0 inside."""
    return max(aim[0] - value, value - aim[1], 0.0)


def middle(values: Iterable[float]) -> str:
    """The median with the range that holds it."""
    ranked = sorted(values)
    low, high = (len(ranked) / 2 + side * sqrt(len(ranked)) for side in (-1, 1))
    ends = ranked[max(0, int(low))], ranked[min(len(ranked) - 1, int(high))]
    return f"{median(ranked):.2f} ({ends[0]:.2f} to {ends[1]:.2f}) kg"


def table(tallies: Iterable[Tally]) -> str:
    """A line a scenario, in a form that may stand in a README."""
    return lines(HEADINGS, [tally.row() for tally in tallies])
