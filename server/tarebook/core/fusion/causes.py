"""What does not fit, told: between which weigh-ins, how much, and what it most likely is.

The causes are codes of `core/fusion/fusion_words`, the likeliest first. Nothing is accused: the weights cannot tell a
spare wheel from a misread tank of the same size.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from tarebook.core.fusion.fusion import Fusion
from tarebook.core.fusion.misfit import BEYOND_CHANCE, candidates, look_of
from tarebook.core.garage.records import Garage
from tarebook.core.ledger.net import JobNet
from tarebook.core.ledger.since import pieces_between
from tarebook.core.numbers.uncertain import Uncertain
from tarebook.core.whole_car.weighed import Weighed

_SOMEBODY = (35.0, 130.0)  # kg: a person, or what may be taken for one; common practice, no source
_TANK = 60.0  # kg a tank of unknown size may hold: common practice, no source
_ROUGH = frozenset(("guessed", "quoted"))


@dataclass(frozen=True, slots=True)
class Change:
    """Something named that does not fit: `size` kg more in the car than written down.

    `kind` "step": it went in or came out between the weigh-ins `first` and `second`; at least between `earliest` and
    `latest` (95 %). "outlier": the weigh-in `first`, which is `second` too, is off by itself. "either": a step next to
    the first or the last weigh-in, or that weigh-in is off; the weights cannot tell. `causes`: codes, likeliest first.
    """

    kind: str
    first: str
    second: str
    earliest: str
    latest: str
    size: Uncertain
    causes: tuple[str, ...]


def changes(garage: Garage, nets: Mapping[str, JobNet], fusion: Fusion) -> tuple[Change, ...]:
    """What is named, in order of time."""
    count = len(fusion.values)
    order = sorted(fusion.names, key=lambda name: (name if name < count - 1 else look_of(count, name), name))
    return tuple(_change(garage, nets, fusion, name) for name in order)


def _change(garage: Garage, nets: Mapping[str, JobNet], fusion: Fusion, name: int) -> Change:
    counted, size = fusion.evidence.counted, fusion.size(name)
    count = len(counted)
    if name >= count - 1:
        look = counted[look_of(count, name)]
        here = look.record.id
        return Change("outlier", here, here, here, here, size, tuple(_of_look(garage, look, size)))
    low, high = _within(fusion, name)
    first, second = counted[name], counted[name + 1]
    alone = {0: first, count - 2: second}.get(name)
    causes = [*_of_step(nets, first, second, size), *(_of_look(garage, alone, size) if alone else ())]
    return Change(
        kind="either" if alone else "step",
        first=first.record.id,
        second=second.record.id,
        earliest=counted[low].record.id,
        latest=counted[high + 1].record.id,
        size=size,
        causes=tuple(dict.fromkeys(causes)),
    )


def _within(fusion: Fusion, name: int) -> tuple[int, int]:
    """The first and the last step that fit nearly as well as the named one."""
    told = fusion.beside_others(name)
    found = candidates(told, fusion.values, fusion.told.least)
    enough = found.better(name) - BEYOND_CHANCE
    near = [at for at in range(found.count - 1) if found.better(at) >= enough]
    return min(near), max(near)


def _of_step(nets: Mapping[str, JobNet], first: Weighed, second: Weighed, size: Uncertain) -> list[str]:
    then, now = first.jobs or (), second.jobs or ()
    lines = [line for job in set(then) ^ set(now) for line in nets[job].lines]
    causes = ["put_in" if size.value > 0.0 else "taken_out"]
    if any(pieces_between(now, then, nets).values()):
        causes.append("moved_unweighed")
    if any(line.basis in _ROUGH for line in lines):
        causes.append("rough_parts")
    causes.append("job_list")
    if first.record.scale != second.record.scale:
        causes.append("scale_changed")
    return causes


def _of_look(garage: Garage, look: Weighed, size: Uncertain) -> list[str]:
    record, off = look.record, abs(size.value)
    causes = []
    if _SOMEBODY[0] <= off <= _SOMEBODY[1]:
        causes.append("somebody_in" if size.value > 0.0 else "driver_missing")
    if record.fuel is not None and off <= _tankful(garage):
        causes.append("fuel_misread")
    causes.append("not_zeroed")
    if len(garage.scales) > 1:
        causes.append("wrong_scale")
    return causes


def _tankful(garage: Garage) -> float:
    """What a tank may hold, kg; a litre weighs a little less."""
    return 1000.0 * garage.car.tank_size.value if garage.car and garage.car.tank_size else _TANK
