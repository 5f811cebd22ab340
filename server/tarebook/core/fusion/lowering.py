"""Something to do that would lower the doubt of the weight, and by how much (found by `core/standing/lower_doubt`)."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Lowering:
    """One thing to do, its `minutes`, and the standard uncertainty of the weight now and with it, kg.

    `way`: "weigh_in" on scale `of` (None: a platform nobody knows), `first` seen to "zeroed" or "fuel", or "checked"
    and "zeroed"; "check" of scale `of`, as there `against` so many kg; "weigh" the part or driver `of` on scale `on`.
    """

    way: str
    of: str | None
    on: str | None
    first: tuple[str, ...]
    against: float | None
    minutes: int
    u_now: float
    u_then: float

    @property
    def brings(self) -> float:
        """± less, kg."""
        return 2.0 * (self.u_now - self.u_then)
