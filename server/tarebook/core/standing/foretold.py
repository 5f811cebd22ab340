"""What an official weigh-in was foretold to show, held against what it showed: how the tool's own word is tested.

With such a weigh-in the phone keeps what it foretold of it: what that scale should show by all that was known before,
with the doubt of the weight, of the scale's gain and of how it repeats. What it showed has a doubt of its own, its
steps. The two share nothing, so the one comes out inside the other when

    E_n = |foretold − read| / √(U²(foretold) + U²(read)) ≤ 1

with expanded uncertainties (k = 2): the E_n score by which laboratories are compared [ISO 13528; ISO/IEC 17043].
"""

from dataclasses import dataclass

from tarebook.core.garage.records import WeighIn
from tarebook.core.numbers.uncertain import Uncertain, beyond_doubt, scale, subtract
from tarebook.core.whole_car.weigh_in import Loads


@dataclass(frozen=True, slots=True)
class Foretold:
    """What the scales of a weigh-in were `expected` to show and what was `read` on them, kg; `inside`: E_n ≤ 1."""

    expected: Uncertain
    read: Uncertain
    inside: bool


def foretold_of(record: WeighIn, loads: Loads) -> Foretold | None:
    """None of a weigh-in that is not official, was not foretold, or lacks a reading."""
    if not record.official or record.foretold is None or record.foretold_within is None or loads.total is None:
        return None
    expected = Uncertain(record.foretold.value, {"foretold": 0.5 * record.foretold_within.value})
    read = _as_shown(loads, loads.total)
    return Foretold(expected, read, inside=not beyond_doubt(subtract(expected, read)))


def _as_shown(loads: Loads, whole: Uncertain) -> Uncertain:
    """What the display said of the whole car, its gain left in, with the doubt of the look alone."""
    look = {
        name: part
        for name, part in whole.sources.items()
        if name not in loads.gain.sources and not name.startswith("rep:")
    }
    return scale(Uncertain(whole.value, look), 1.0 + loads.gain.value)
