"""What a scenario of the simulated build asks for, and what a slip in it is."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

MOST_WEIGH_INS = 12
EVEN = 0.3  # of the greatest difference between two readings


@dataclass(frozen=True)
class Setting:
    """What a scenario changes.

    `repeats`: kg, what a whole car repeats to on any scale; `stated`: what the scales' records say of it, None when
    they are silent. `fuel_within`: half-width of the litres noted. `guessed`: parts nobody weighed. `steps`: unlogged
    changes, of at least `least` and at most `most` times their own standard uncertainty, and of `least_kg` anyhow.
    `weigh_ins`: 2 to 12; `home`: all of them on the pads; `event`: but one in the middle, on the official platform.

    What may be wrong, or said to be right: `wander` is "walk" or "slope", of the gains of the scales at home from one
    weigh-in to the next; `zero` kg are on the empty pads. `asked`: whether somebody noted what was seen to before a
    weigh-in; `checked`: kg that the scales at home were checked with before the first. `slip`: a kind of
    `slips.DRAWS`, or "any".
    """

    weigh_ins: int = MOST_WEIGH_INS
    repeats: float = 0.1
    stated: float | None = 0.1
    fuel_within: float = 0.2
    guessed: int = 0
    steps: int = 0
    least: float = 4.3
    most: float = 8.0
    least_kg: float = 0.0
    home: bool = False
    event: bool = False
    wander: str | None = None
    zero: float = 0.0
    asked: bool = False
    checked: float = 0.0
    slip: str | None = None


@dataclass(frozen=True)
class Slip:
    """One thing written down otherwise than it was: its `kind`, and by how much each reading is off by it, kg."""

    kind: str
    effect: tuple[float, ...]

    @property
    def gaps(self) -> tuple[int, ...]:
        """Those in which it shows: the readings before and after are off by different amounts, beside rounding."""
        apart = [abs(after - before) for before, after in pairwise(self.effect)]
        return tuple(gap for gap, each in enumerate(apart) if each > EVEN * max(apart))
