"""What does not fit, told: between which weigh-ins, how much, and what it most likely is."""

from dataclasses import dataclass

from tarebook.core.causes.search import Asked, Cause, causes, causes_of_all, is_explained
from tarebook.core.fusion.fusion import Fusion
from tarebook.core.fusion.misfit import candidates, look_of
from tarebook.core.fusion.naming import BEYOND_CHANCE
from tarebook.core.numbers.uncertain import Uncertain

Causes = tuple[Cause, ...]


@dataclass(frozen=True, slots=True)
class Change:
    """Something named that does not fit: `size` kg more in the car than written down.

    `kind` "step": it went in or came out between the weigh-ins `first` and `second`; at least between `earliest` and
    `latest` (95 %). "outlier": the weigh-in `first`, which is `second` too, is off by itself. "either": a step next to
    the first or the last weigh-in, or that weigh-in is off; the weights cannot tell. `causes`: likeliest first;
    where one slip explains all that is named, they are the same of each.
    """

    kind: str
    first: str
    second: str
    earliest: str
    latest: str
    size: Uncertain
    causes: Causes

    @property
    def explained(self) -> bool:
        """Whether the likeliest cause is one that a record tells of."""
        return is_explained(self.causes)


def changes(asked: Asked, fusion: Fusion) -> tuple[Change, ...]:
    """What is named, in order of time."""
    count = len(fusion.values)
    order = sorted(fusion.names, key=lambda name: (name if name < count - 1 else look_of(count, name), name))
    together = causes_of_all(asked, fusion, fusion.told.beside.tolist()) if len(order) > 1 else None
    return tuple(_change(asked, fusion, name, together) for name in order)


def _change(asked: Asked, fusion: Fusion, name: int, together: Causes | None) -> Change:
    counted, size = fusion.evidence.counted, fusion.size(name)
    count = len(counted)
    found = causes(asked, fusion, fusion.beside_others(name).tolist()) if together is None else together
    if name >= count - 1:
        here = counted[look_of(count, name)].record.id
        return Change("outlier", here, here, here, here, size, found)
    low, high = _within(fusion, name)
    first, second = counted[name], counted[name + 1]
    return Change(
        kind="either" if name in (0, count - 2) else "step",
        first=first.record.id,
        second=second.record.id,
        earliest=counted[low].record.id,
        latest=counted[high + 1].record.id,
        size=size,
        causes=found,
    )


def _within(fusion: Fusion, name: int) -> tuple[int, int]:
    """The first and the last step that fit nearly as well as the named one."""
    found = candidates(fusion.beside_others(name), fusion.apart, fusion.told.least)
    enough = found.better[name] - BEYOND_CHANCE
    near = [at for at in range(found.count - 1) if found.better[at] >= enough]
    return min(near), max(near)
