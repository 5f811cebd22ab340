"""What would lower the doubt of the weight most for its time: weigh-ins, checks and weighings, tried one by one.

Each is put into the garage as it is expected to come out (`trials`), and the weight asked for anew: what is promised is
what the standing will say. Whatever cannot bring a tenth of a kilogram even if all it touches were sure is not tried.

Minutes: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import sqrt

from tarebook.core.fusion.lowering import Lowering
from tarebook.core.fusion.weigh_next import CAR_LOOKS
from tarebook.core.garage.records import Garage, Scale, ScaleCheck
from tarebook.core.numbers.quantity import read_mass
from tarebook.core.standing.trials import NEXT, Asked, doubt_with, step_of, with_check, with_weigh_in, with_weighing
from tarebook.core.weighing.claims import SHARED

MINUTES = {
    "weigh_in": 15,
    "corner_pads": 25,
    "platform": 45,
    "check": 10,
    "weigh": 5,
    "zeroed": 2,
    "fuel": 5,
    "checked": 10,
}
"""Of a weigh-in (on pads one puts under each wheel; on a platform one drives to) and what is seen to before it."""
LEAST = 0.1  # kg of the ± there is: what brings less is not told
_MOST = 3  # that are told; of parts and drivers also: that are tried
_HOLDS = {"kitchen": 10.0, "bench": 40.0, "hanging": 60.0, "bathroom": 180.0}  # kg, where nobody noted a capacity
_PLATE = ("20 kg", "0.2 kg")  # a known mass most can lay hands on, where no check names one


@dataclass(frozen=True, slots=True)
class _Try:
    way: str
    of: str | None
    on: str | None
    first: tuple[str, ...]
    against: float | None
    minutes: int
    garage: Garage


def lower_doubt(now: Asked) -> tuple[Lowering, ...]:
    """The three that narrow ± most per minute, the best first."""
    u = now.fusion.weight.u
    best: dict[tuple[str, str | None], Lowering] = {}
    for each in (*_weigh_ins(now), *_checks(now), *_weighings(now)):
        then = doubt_with(now, each.garage)
        found = Lowering(each.way, each.of, each.on, each.first, each.against, each.minutes, u, then)
        key = (each.way, each.of)
        if found.brings >= LEAST and (key not in best or _rate(found) > _rate(best[key])):
            best[key] = found
    return tuple(sorted(best.values(), key=lambda each: (-_rate(each), each.way, each.of or ""))[:_MOST])


def _rate(found: Lowering) -> float:
    """Kilograms per minute, as far as two languages agree."""
    return round(found.brings / found.minutes, 7)


def _weigh_ins(now: Asked) -> Iterator[_Try]:
    garage, last = now.garage, now.fusion.evidence.counted[-1].record
    scales: list[Scale | None] = [
        each
        for each in garage.scales.values()
        if each.id not in garage.retired and (each.kind in CAR_LOOKS or each.id == last.scale)
    ]
    if not any(each and each.kind == "platform" for each in scales):
        scales.append(None)
    fuelled = last.fuel is not None and last.fuel.value > 0.0
    for scale in scales:
        kind, id_ = scale.kind if scale else "platform", scale.id if scale else None
        check = _check_of(now, scale) if scale and kind != "platform" else None
        firsts: list[tuple[str, ...]] = [(), *([("zeroed",)] if scale else []), *([("fuel",)] if fuelled else [])]
        for first in (*firsts, *([("checked", "zeroed")] if check else [])):
            minutes = MINUTES.get(kind, MINUTES["weigh_in"]) + sum(MINUTES[each] for each in first)
            checked = check if "checked" in first else None
            against = checked.known.value if checked else None
            yield _Try("weigh_in", id_, None, first, against, minutes, with_weigh_in(now, id_, first, checked))


def _check_of(now: Asked, scale: Scale) -> ScaleCheck:
    """With the mass it was checked with last, else the heaviest known that it can carry."""
    garage, model = now.garage, now.given.known.scales[scale.id]
    own = [each for each in garage.checks_of.get(scale.id, []) if each.id in model.checks]
    most = model.capacity or _HOLDS.get(scale.kind, float("inf"))
    others = [each for checks in garage.checks_of.values() for each in checks if each.known.value <= most]
    found = max(own or others, key=lambda each: (each.known.value, each.id), default=None)
    if found:
        return ScaleCheck(NEXT, scale.id, found.known_name, found.known, found.known_within, found.known, None)
    plate, within = map(read_mass, _PLATE)
    return ScaleCheck(NEXT, scale.id, None, plate, within, plate, None)


def _checks(now: Asked) -> Iterator[_Try]:
    """Of every scale in use."""
    garage = now.garage
    for scale in garage.scales.values():
        touched = (*now.given.known.scales[scale.id].gain.sources, f"wander:{scale.id}")
        if scale.id not in garage.retired and _may_bring(now, _variance(now, touched)):
            check = _check_of(now, scale)
            trial = with_check(now, check)
            yield _Try("check", scale.id, None, (), check.known.value, MINUTES["check"], trial)


def _weighings(now: Asked) -> Iterator[_Try]:
    """Parts that are claimed, and drivers: those that put most into the doubt."""
    garage, known, sources = now.garage, now.given.known, now.fusion.weight.sources
    found: list[tuple[float, str, float]] = []
    for part in garage.parts:
        mass = known.of[part]
        if mass.mass is None or mass.basis == "weighed" or f"claim:{part}" not in sources:
            continue
        own = abs(sources[f"claim:{part}"])
        shared = SHARED.get(mass.basis or "", "")
        of_all, theirs = abs(sources.get(shared, 0.0)), 0.0
        if claim := mass.mass.sources.get(f"claim:{part}"):
            theirs = min(of_all, own * mass.mass.sources.get(shared, 0.0) / claim)
        found.append((own * own + of_all * of_all - (of_all - theirs) * (of_all - theirs), part, mass.mass.value))
    for driver in garage.drivers:
        mass = known.of[driver]
        if mass.mass is not None:
            found.append((_variance(now, mass.mass.sources), driver, mass.mass.value))
    found.sort(key=lambda each: (-each[0], each[1]))
    for variance, of, kg in found[:_MOST]:
        scale = _scale_for(now, kg)
        if scale and _may_bring(now, variance):
            yield _Try("weigh", of, scale, (), None, MINUTES["weigh"], with_weighing(now, of, scale, kg))


def _scale_for(now: Asked, kg: float) -> str | None:
    """The scale of the garage that tells such a mass best."""
    garage, known = now.garage, now.given.known.scales
    able = [
        (sqrt(step_of(now, model) ** 2 / 12.0 + model.repeats**2 + (kg * model.gain.u) ** 2), scale.id)
        for scale in garage.scales.values()
        if scale.id not in garage.retired
        and scale.kind in _HOLDS
        and kg <= ((model := known[scale.id]).capacity or _HOLDS[scale.kind])
    ]
    return min(able)[1] if able else None


def _variance(now: Asked, sources: Iterable[str]) -> float:
    """What these sources put into the weight, kg²."""
    return sum(now.fusion.weight.sources.get(each, 0.0) ** 2 for each in dict.fromkeys(sources))


def _may_bring(now: Asked, variance: float) -> bool:
    """Whether ± would be less by what is told if this variance were gone."""
    u = now.fusion.weight.u
    return 2.0 * (u - sqrt(max(0.0, u * u - variance))) >= LEAST
