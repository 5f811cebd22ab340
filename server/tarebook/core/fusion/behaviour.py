"""How a scale may behave from one weigh-in to the next, beyond what its record says: its gain wanders, its zero is off.

A gain does not stay as it was: load cells age and a floor is never the same twice. How fast is not known, so the answer
is averaged over rates of wandering, none among them: a walk, whose variance grows with the time since the scale's own
last check (since its first weigh-in, where nobody checked it), or a slope, which grows with its square. One rate for
all scales. A scale of the trade, a platform and whatever weighed officially do not wander: the law has them looked
after. Likewise a zero nobody is known to have set: one error in every weigh-in on that scale, there or not. And what
displays scatter by themselves may be more than their records say.

Rates, chances and sizes: common practice, no source. That a scale is to be watched over time and by check standards:
NIST/SEMATECH e-Handbook of Statistical Methods, 2.2 and 2.3; random walk and drift as states of a model of their own:
A. C. Harvey, Forecasting, Structural Time Series Models and the Kalman Filter (1989), 2.3.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from math import log

import numpy as np
from numpy.typing import NDArray

from tarebook.core.garage.records import Garage
from tarebook.core.weighing.scale import ScaleModel
from tarebook.core.whole_car.weighed import Weighed

Array = NDArray[np.float64]

WANDERS, ZERO_OFF, SCATTERS = 0.5, 0.25, 0.15
"""Chances beforehand: that gains wander at all, that a zero nobody set is off, that displays scatter beyond records."""
RATES = (0.0002, 0.0005, 0.001, 0.002)  # relative, by a month: of a walk per root of a month, of a slope per month
ZERO = 4.0  # kg of a whole car, standard deviation
SCATTER = 3.0  # times what is noted
MONTH = 30.4375  # days
_DAY = re.compile(r"([0-9]{4})-([0-9]{2})-([0-9]{2})")


@dataclass(frozen=True, slots=True)
class Behaviour:
    """`walk`, `slope`: relative rates by a month. `zero`: kg, standard deviation. `likely`: ln of the chance.

    `scatter`: how many times more than noted the displays scatter by themselves.
    """

    walk: float
    slope: float
    zero: float
    scatter: float
    likely: float

    def wandering(self) -> Behaviour:
        """Its wandering alone."""
        return replace(self, zero=0.0, scatter=1.0)

    def off_zero(self) -> Behaviour:
        """Its zero alone."""
        return replace(self, walk=0.0, slope=0.0, scatter=1.0)


@dataclass(frozen=True, slots=True)
class Group:
    """The looks on one scale that may be off together, by index: `wander`, each with its `months` since; `unset`."""

    scale: str
    wander: tuple[int, ...]
    months: tuple[float, ...]
    unset: tuple[int, ...]


def groups(garage: Garage, scales: dict[str, ScaleModel], counted: Sequence[Weighed]) -> tuple[Group, ...]:
    """One for each scale that may wander or whose zero may be off."""
    when, is_dated = months(counted), any(month_of(each.record.at) is not None for each in counted)
    official = {each.record.scale for each in counted if each.record.official}
    looks: dict[str, list[int]] = {}
    for at, each in enumerate(counted):
        if each.record.scale and each.record.scale not in official:
            looks.setdefault(each.record.scale, []).append(at)
    found = []
    for name, among in looks.items():
        scale = garage.scales[name]
        tended = scale.kind == "platform" or scale.accuracy_class is not None
        checked = month_of(scales[name].checked) if is_dated else None
        since = when[among[0]] if checked is None else checked
        wander = () if tended else tuple(among)
        unset = tuple(at for at in among if counted[at].record.ready is None)
        found.append(Group(name, wander, tuple(when[at] - since for at in wander), unset))
    return tuple(each for each in found if each.wander or each.unset)


def behaviours(among: Sequence[Group]) -> tuple[Behaviour, ...]:
    """What is thought of, the steady one first; the chances add up to one."""
    moves = [(0.0, 0.0, 1.0)]
    if any(month for group in among for month in group.months):
        each = WANDERS / (2 * len(RATES))
        moves = [(0.0, 0.0, 1.0 - WANDERS), *((r, 0.0, each) for r in RATES), *((0.0, r, each) for r in RATES)]
    zeros = [(0.0, 1.0)]
    if any(group.unset for group in among):
        zeros = [(0.0, 1.0 - ZERO_OFF), (ZERO, ZERO_OFF)]
    scatters = ((1.0, 1.0 - SCATTERS), (SCATTER, SCATTERS))
    return tuple(
        Behaviour(walk, slope, zero, scatter, log(a * b * c))
        for scatter, c in scatters
        for zero, b in zeros
        for walk, slope, a in moves
    )


def scattered(behaviour: Behaviour, among: Sequence[Group], loads: Array, own: Array) -> Array:
    """What its walk and its displays add to the covariance of the looks, kg²; gains act on these loads (kg).

    `own`: the variance of each look by its display alone.
    """
    added: Array = np.diag(own) * (behaviour.scatter**2 - 1.0)
    for group in among:
        if group.wander and behaviour.walk:
            at, months = np.array(group.wander), np.array(group.months)
            added[np.ix_(at, at)] += np.outer(loads[at], loads[at]) * behaviour.walk**2 * walked_alike(months, months)
    return added


def moved(behaviour: Behaviour, among: Sequence[Group], loads: Array) -> list[Array]:
    """How far its slope and its zeros move the looks, kg: columns of errors that several looks share."""
    columns = []
    for group in among:
        if group.wander and behaviour.slope:
            among_them = loads[list(group.wander)] * np.array(group.months)
            columns.append(_at(group.wander, behaviour.slope * among_them, len(loads)))
        if group.unset and behaviour.zero:
            columns.append(_at(group.unset, np.full(len(group.unset), behaviour.zero), len(loads)))
    return columns


def _at(looks: Sequence[int], amounts: Array, count: int) -> Array:
    column = np.zeros(count)
    column[list(looks)] = amounts
    return column


def walked_alike(here: Array, there: Array) -> Array:
    """Months that a walk has gone alike at two times; before the check and after it, it goes its own ways."""
    both = np.minimum.outer(np.abs(here), np.abs(there))
    return np.where(np.multiply.outer(here, there) > 0.0, both, 0.0)


def months(counted: Sequence[Weighed]) -> list[float]:
    """When each was made; one that nobody dated a month after the one before, or before the first that is dated."""
    known = [month_of(each.record.at) for each in counted]
    first = next((at for at, month in enumerate(known) if month is not None), 0)
    month = (known[first] or 0.0) - first - 1.0
    found = []
    for each in known:
        month = month + 1.0 if each is None else each
        found.append(month)
    return found


def month_of(at: str | None) -> float | None:
    """Months since the calendar began, of a day written as YYYY-MM-DD, with or without a time after it; else None."""
    written = _DAY.match(str(at))
    try:
        return date(*map(int, written.groups())).toordinal() / MONTH if written else None
    except ValueError:
        return None


def day_of(month: float) -> str:
    """The day nearest to so many months since the calendar began, as YYYY-MM-DD."""
    return date.fromordinal(int(month * MONTH + 0.5)).isoformat()
