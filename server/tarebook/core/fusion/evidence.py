"""What each weigh-in says of the car now: one look each at one and the same weight.

A weigh-in, less the fuel, driver and ballast then on board, plus the net of the jobs since, plus what the class weighs
with, is a look at the weight now. All looks share what they are made from: the gain of a scale, the density of fuel,
the parts that moved since both. So the weight before any work needs no unknown of its own: with it unknown altogether,
the surest mean of these looks is the least-squares answer for it, all gains and all errors of the ledger together.

The last weigh-in that can count is what the others are held against. An earlier one is left out when what was on board
at either of the two is not known. Parts without a mass that moved between it and the last are unknowns: the earlier one
counts only as far as others tell them. A look is a sum of terms that is never taken for itself: any weighting of the
looks is summed once, over the terms, so that what cancels is gone.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import accumulate, pairwise
from math import fsum

from tarebook.core.garage.records import Warned, warned
from tarebook.core.ledger.net import JobNet
from tarebook.core.ledger.since import net_between, pieces_between
from tarebook.core.numbers.uncertain import Uncertain, total, weighted_sum
from tarebook.core.whole_car.aboard import Aboard
from tarebook.core.whole_car.condition import Condition, at_condition
from tarebook.core.whole_car.weigh_in import Loads
from tarebook.core.whole_car.weighed import Now, Terms, Weighed


@dataclass(frozen=True, slots=True)
class Evidence:
    """The weigh-ins that count, in order, the last being what the others are held against.

    `own`: terms of each car as it was; `written`: the net of the jobs from each to the next, from the last to now;
    `target`: what the class weighs with, and the ballast now. `flat`: for each part of unknown mass that moved
    (`unweighed`), the pieces more that each look would need. `left_out`: weigh-ins that cannot count, and why.
    """

    counted: tuple[Weighed, ...]
    own: tuple[Terms, ...]
    written: tuple[Uncertain, ...]
    target: Uncertain
    flat: tuple[tuple[float, ...], ...]
    unweighed: tuple[str, ...]
    left_out: dict[str, Warned]

    def expanded(self, weights: Sequence[float]) -> Terms:
        """The terms of a weighting of the looks."""
        own = [(item, sign * weight) for terms, weight in zip(self.own, weights, strict=True) for item, sign in terms]
        written = list(zip(self.written, accumulate(weights), strict=True))
        return (*own, *written, (self.target, fsum(weights)))

    def weighted(self, weights: Sequence[float]) -> Uncertain:
        """A weighting of the looks, kg, with every source."""
        terms = self.expanded(weights)
        return weighted_sum([item for item, _ in terms], [weight for _, weight in terms])

    def values(self) -> list[float]:
        """The weight now by each look, kg."""
        after = [fsum([*(item.value for item in self.written[at:]), self.target.value]) for at in range(len(self.own))]
        return [
            fsum([*(sign * item.value for item, sign in terms), rest])
            for terms, rest in zip(self.own, after, strict=True)
        ]

    def about(self, loads: Sequence[float]) -> Evidence:
        """The same with every scale's gain acting on these loads (kg) in place of the readings."""
        own = tuple(
            ((_acting_on(load, each.loads), 1.0), *terms[1:])
            for each, terms, load in zip(self.counted, self.own, loads, strict=True)
        )
        return replace(self, own=own)

    def shared_with(self, item: Uncertain) -> list[float]:
        """The covariance of each look with an item."""
        moves = [(part, self.moved_by(name)) for name, part in item.sources.items()]
        return [fsum(part * column[at] for part, column in moves) for at in range(len(self.own))]

    def moved_by(self, source: str) -> list[float]:
        """How far one standard deviation of a source moves each look, kg."""
        moves: list[float] = []
        later = self.target.sources.get(source, 0.0)
        for terms, written in zip(reversed(self.own), reversed(self.written), strict=True):
            later += written.sources.get(source, 0.0)
            here = later
            for item, sign in terms:
                here += sign * item.sources.get(source, 0.0)
            moves.append(here)
        return moves[::-1]


def evidence(
    weighed: Sequence[Weighed], now: Now, nets: Mapping[str, JobNet], condition: Condition
) -> Evidence | Warned:
    """What the weigh-ins given, in order, say of the car now; or why none of them says anything."""
    reasons = {each.record.id: _unusable(each, condition) for each in weighed}
    usable = [each for each in weighed if reasons[each.record.id] is None]
    if not usable:
        whole = [each.record.id for each in weighed if each.loads.total is not None]
        reason = reasons[whole[-1]] if whole else None
        return reason or (warned("reading_missing") if weighed else warned("no_weigh_in"))
    last = usable[-1]
    for each in usable[:-1]:
        reasons[each.record.id] = _incomparable(each.aboard, last.aboard, condition)
    counted = tuple(each for each in usable if reasons[each.record.id] is None)
    lists = [*(each.jobs or () for each in counted), now.jobs]
    flat = _flat(lists[:-1], nets)
    return Evidence(
        counted=counted,
        own=tuple(map(_own, counted)),
        written=tuple(net_between(after, before, nets) for before, after in pairwise(lists)),
        target=_target(last.aboard, now, condition),
        flat=tuple(flat.values()),
        unweighed=tuple(flat),
        left_out={name: reason for name, reason in reasons.items() if reason is not None},
    )


def _unusable(weighed: Weighed, condition: Condition) -> Warned | None:
    whole = weighed.loads.total
    if whole is not None and weighed.jobs is None:
        return warned("jobs_not_confirmed", weigh_in=weighed.record.id)
    answer = at_condition(whole, weighed.aboard, condition)
    return answer if isinstance(answer, dict) else None


def _incomparable(then: Aboard, last: Aboard, condition: Condition) -> Warned | None:
    """Why the car of a weigh-in cannot be held against that of the last; with the last it is as the last was."""
    for each in (then, last):
        if condition.fuel == "as_it_is" and each.fuel is None:
            return warned("fuel_unknown", weigh_in=each.weigh_in)
        if each.driver is None:
            return warned("driver_unknown", weigh_in=each.weigh_in)
    return None


def _own(weighed: Weighed) -> Terms:
    """The car as it was, less what is known to have been on board."""
    whole, then = weighed.loads.total or Uncertain(0.0), weighed.aboard
    return ((whole, 1.0), *((item, -1.0) for item in (then.fuel, then.driver, then.ballast) if item is not None))


def _target(last: Aboard, now: Now, condition: Condition) -> Uncertain:
    """What the class weighs with, and the ballast now; as it was at the last weigh-in where nobody says otherwise."""
    return total([item for item in counted_of(last, now, condition) if item is not None])


def counted_of(last: Aboard, now: Now, condition: Condition) -> tuple[Uncertain | None, Uncertain | None, Uncertain]:
    """Fuel, driver and ballast that the weight counts, kg, as far as they are known."""
    fuel = last.fuel if condition.fuel == "as_it_is" else condition.fuel_mass
    is_replaced = condition.driver == "in" and last.driver is not None
    ballast = last.ballast if now.ballast is None else now.ballast
    return fuel, condition.driver_mass if is_replaced else None, ballast


def _flat(lists: Sequence[Sequence[str]], nets: Mapping[str, JobNet]) -> dict[str, tuple[float, ...]]:
    """Parts without a mass that moved between the weigh-ins → the pieces of each that every look lacks."""
    moved: list[dict[str, int]] = [{}]
    for then, after in reversed(list(pairwise(lists))):
        later = moved[-1]
        between = pieces_between(after, then, nets)
        moved.append({part: later.get(part, 0) + between.get(part, 0) for part in {**later, **between}})
    parts = sorted({part for pieces in moved for part, more in pieces.items() if more})
    return {part: tuple(-float(pieces.get(part, 0)) for pieces in reversed(moved)) for part in parts}


def _acting_on(load: float, loads: Loads) -> Uncertain:
    """The whole car of a weigh-in, its scale's gain taken to act on this load (kg)."""
    whole = loads.total or Uncertain(0.0)
    through = 1.0 + loads.gain.value
    gains = {source: -load * part / through for source, part in loads.gain.sources.items()}
    return Uncertain(whole.value, {**whole.sources, **gains})
