"""One slip the records could hide, and the list of those that were tried.

A slip names the records it would be in. What it is told as, its kind (`code`) says: those of `core/causes/priors`.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from math import log

from tarebook.core.causes.looks import Fit, shared
from tarebook.core.causes.priors import PRIORS

Of = Mapping[str, str | float | None]
_FAR_LESS = 25.0  # a slip this much less likely (in ln) than another says nothing


@dataclass(frozen=True, slots=True)
class Slip:
    """`code`: its kind. The others are ids of the records it is in, as far as it is in any.

    `weigh_in`: where it is, `until` the later one of a gap. `job`, and the `other` it is the same as. `part` or
    `driver` it is of; `weighing`: the reading that is wrong; `field`: that of a weigh-in. `scale`: it truly stood on.
    `unit`: which of the factors a reading should be multiplied by. `way`: of a part, a person or ballast, "on" or "off"
    in truth; of a job, "done" or "undone" at the weigh-in in truth. `kg`: the size in the looks, where it is known.
    """

    code: str
    weigh_in: str | None = None
    until: str | None = None
    job: str | None = None
    other: str | None = None
    part: str | None = None
    driver: str | None = None
    weighing: str | None = None
    scale: str | None = None
    place: str | None = None
    field: str | None = None
    unit: str | None = None
    way: str | None = None
    kg: float | None = None


@dataclass(slots=True)
class Tried:
    """Slips with how likely they make the looks. `weights`: of all instances of a kind, told or not."""

    weights: dict[str, float] = field(default_factory=dict)
    likely: list[tuple[float, Slip, Fit]] = field(default_factory=list)
    best: float = 0.0

    def add(self, fit: Fit, code: str, of: Of, weight: float = 1.0) -> None:
        """`of`: the other fields of the slip; `weight`: among its kind."""
        self.also(code, weight)
        if self.tells(fit.likely):
            self.best = max(self.best, fit.likely)
            self.likely.append((fit.likely + log(weight), Slip(code, **of), fit))  # type: ignore[arg-type]

    def tells(self, likely: float) -> bool:
        """Whether a slip with this ln L, or less, says anything beside the best."""
        return likely > self.best - _FAR_LESS

    def also(self, code: str, weight: float) -> None:
        """Instances of a kind, tried or too unlikely to be."""
        self.weights[code] = self.weights.get(code, 0.0) + weight

    def odds(self) -> dict[Slip, float]:
        """The chance of each slip, all together one; what is one and the same slip is one."""
        together: dict[Slip, float] = {}
        for (_, slip, _), chance in zip(self.likely, shared(self._logs()), strict=True):
            together[slip] = together.get(slip, 0.0) + chance
        return together

    def likeliest(self) -> Fit:
        """What the likeliest of all would have put into the looks."""
        logs = self._logs()
        return self.likely[logs.index(max(logs))][2]

    def _logs(self) -> list[float]:
        return [likely + log(PRIORS[slip.code] / self.weights[slip.code]) for likely, slip, _ in self.likely]
