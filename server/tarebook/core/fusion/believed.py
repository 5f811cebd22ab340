"""What a scale's gain is believed to have been on each day that tells of it, and when its next check pays.

The belief on a day is the gain by its record plus what it has wandered since, with all that the looks tell of that day
(`views`), averaged over how scales may behave and what may have changed (`average`). What a wandering gain moves on a
day it moves in the looks of other days too, as far as they lie on the same side of the check (`behaviour`).

A check pays from the day on which what wandering may have added since the last one, averaged over behaviours, exceeds
the doubt that check left in the gain: from then on most of the doubt is age. A scale nobody has checked: now.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import exp, sqrt

import numpy as np

from tarebook.core.fusion.average import averaged, covariance_by_set, mixed
from tarebook.core.fusion.behaviour import Behaviour, Group, behaviours, day_of, month_of, walked_alike
from tarebook.core.fusion.fusion import Fusion
from tarebook.core.fusion.precision import Array
from tarebook.core.garage.records import Garage
from tarebook.core.numbers.uncertain import Uncertain
from tarebook.core.weighing.scale import ScaleModel
from tarebook.core.weighing.weighing import Masses
from tarebook.core.whole_car.weighed import Weighed

_FREE = ("corner_pads", "axle_pads")  # that may wander though no weigh-in on them counts yet
_NEVER = 120.0  # months: a check that pays later than this is not worth a date


@dataclass(frozen=True, slots=True)
class Belief:
    """The gain of a scale on a day (`at`, a date): relative, ± `u`, its standard uncertainty.

    `sort`: what tells of the day: "weigh_in" or "check", with its id in `record`; "day", the one asked for.
    `read`: what a check alone shows of the gain.
    """

    at: str
    sort: str
    record: str | None
    gain: float
    u: float
    read: float | None


@dataclass(frozen=True, slots=True)
class Ageing:
    """One scale over time, its `beliefs` in order of time.

    `due`: the day from which its next check pays. `now`: it pays already. Neither for a gain that stays as it is.
    """

    scale: str
    beliefs: tuple[Belief, ...]
    due: str | None
    now: bool


def believed(
    garage: Garage, known: Masses, fusion: Fusion | None, among: Sequence[Group], scale: str, day: str
) -> Ageing:
    """A scale of the garage until `day`, a date. `fusion` is that of the looks `among`; None where there is none."""
    model, looks = known.scales[scale], fusion.evidence.counted if fusion else ()
    group = next((each for each in among if each.scale == scale), None)
    on_it = [each for each in looks if each.record.scale == scale]
    days = _days(garage, model, [(str(each.record.at)[:10], each.record.id) for each in on_it], day)
    free = bool(group.wander) if group else not on_it and _may_wander(garage, scale)
    since = _since(model, looks, group)
    months = np.array([(month_of(each.at) or 0.0) - since if free and since is not None else 0.0 for each in days])
    item = on_it[-1].loads.gain if on_it else model.gain
    rates = _rates(fusion, among)
    if fusion:
        gains, variances = _told(fusion, item, group, months)
    else:
        gains, variances = np.full(len(days), item.value), np.full(len(days), item.u * item.u)
    if not (group and group.wander):
        variances = variances + _added(rates, months)
    beliefs = tuple(
        Belief(each.at, each.sort, each.record, gain, sqrt(max(0.0, variance)), each.read)
        for each, gain, variance in zip(days, gains.tolist(), variances.tolist(), strict=True)
    )
    due = _due(model, rates) if free else None
    unchecked = model.assumed or month_of(model.checked) is None
    return Ageing(scale, beliefs, due, free and (unchecked or (due is not None and due <= day)))


def zero_believed(fusion: Fusion, among: Sequence[Group], scale: str) -> float:
    """By how much the zero of a scale, where nobody set it, is off, kg, as the looks tell."""
    group = next((each for each in among if each.scale == scale), None)
    column = np.zeros(len(fusion.values))
    column[list(group.unset) if group else []] = 1.0
    by_view = [each.behaviour.zero**2 * (each.told.beside @ column) for each in fusion.views]
    return float(fusion.sets.share @ averaged(fusion.sets, np.array(by_view), fusion.apart).values)


@dataclass(frozen=True, slots=True)
class _Day:
    at: str
    sort: str
    record: str | None
    read: float | None


def _days(garage: Garage, model: ScaleModel, weigh_ins: Sequence[tuple[str, str]], day: str) -> list[_Day]:
    """The days something tells of, in order of time, and the one asked for."""
    found = [_Day(at, "weigh_in", record, None) for at, record in weigh_ins]
    found += [
        _Day(str(check.at)[:10], "check", check.id, check.shown.value / check.known.value - 1.0)
        for check in garage.checks_of.get(model.id, [])
        if check.id in model.checks
    ]
    told = [each for each in found if month_of(each.at) is not None and each.at <= day]
    told.sort(key=lambda each: (each.at, each.sort, each.record or ""))
    return [*told, _Day(day, "day", None, None)]


def _may_wander(garage: Garage, scale: str) -> bool:
    named = garage.scales.get(scale)
    return named is not None and named.kind in _FREE and named.accuracy_class is None


def _since(model: ScaleModel, looks: Sequence[Weighed], group: Group | None) -> float | None:
    """The month wandering is counted from: that of the last check, else of the first weigh-in on it."""
    if group:
        for at, months in zip(group.wander, group.months, strict=True):
            month = month_of(looks[at].record.at)
            if month is not None:
                return month - months
    return month_of(model.checked)


def _told(fusion: Fusion, item: Uncertain, group: Group | None, months: Array) -> tuple[Array, Array]:
    """The gain and its variance at so many months since the check, with what all looks tell."""
    by_item, values = np.array(fusion.evidence.shared_with(item)), np.array(fusion.values)
    totals = [each.loads.total or fusion.weight for each in fusion.evidence.counted]
    loads = np.array([each.value for each in totals]) - (values - fusion.weight.value)
    wander = list(group.wander) if group else []
    theirs = np.array(group.months if group else ())
    alike, along = walked_alike(months, theirs), np.multiply.outer(months, theirs)
    gains, variances = [], []
    for at, month in enumerate(months.tolist()):
        by_view, of_item = [], []
        for view in fusion.views:
            how = view.behaviour
            shared = by_item.copy()
            shared[wander] -= loads[wander] * (how.walk**2 * alike[at] + how.slope**2 * along[at])
            weights = -(view.told.beside @ shared)
            moved = _added((how.walk**2, how.slope**2), np.array(month)) if wander else 0.0
            by_view.append(weights)
            of_item.append(item.u * item.u + float(moved) + float(weights @ shared))
        by_looks = averaged(fusion.sets, np.array(by_view), fusion.apart)
        by_set = covariance_by_set(fusion.sets, by_looks, by_looks, np.array(of_item))
        gains.append(item.value + float(fusion.sets.share @ by_looks.values))
        variances.append(mixed(fusion.sets, by_looks, by_looks, by_set))
    return np.array(gains), np.array(variances)


def _rates(fusion: Fusion | None, among: Sequence[Group]) -> tuple[float, float]:
    """The mean squares of the rates of walk and slope: as the looks tell, or as thought beforehand."""
    if fusion and any(month for group in among for month in group.months):
        thought_of: list[Behaviour] = [each.behaviour for each in fusion.views]
        chances = np.bincount(fusion.sets.view, fusion.sets.share, len(fusion.views)).tolist()
    else:
        thought_of = list(behaviours((Group("", (0,), (1.0,), ()),)))
        chances = [exp(each.likely) for each in thought_of]
    pairs = list(zip(chances, thought_of, strict=True))
    return sum(chance * how.walk**2 for chance, how in pairs), sum(chance * how.slope**2 for chance, how in pairs)


def _added(rates: tuple[float, float], months: Array) -> Array:
    """The variance that wandering adds in so many months."""
    walk, slope = rates
    added: Array = walk * np.abs(months) + slope * months * months
    return added


def _due(model: ScaleModel, rates: tuple[float, float]) -> str | None:
    """The day on which wandering since the last check has added as much as that check left."""
    checked, left = month_of(model.checked), model.gain.u * model.gain.u
    walk, slope = rates
    if model.assumed or checked is None or walk + slope <= 0.0:
        return None
    months = 2.0 * left / (walk + sqrt(walk * walk + 4.0 * slope * left)) if left > 0.0 else 0.0
    return day_of(checked + months) if months < _NEVER else None
