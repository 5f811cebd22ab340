"""The door to the estimator: what the car weighs now, from all that was weighed and all that was done to it.

`estimate` is asked by `core/standing` and by nobody else; it may be replaced by a better estimator without any other
room noticing. This one takes every weigh-in that can count as a look at the weight now (`core/fusion/evidence`),
combines them (`core/fusion`), says what does not fit (`core/causes`) and what one more weigh-in would tell
(`core/fusion/weigh_next`).
"""

from collections.abc import Sequence
from dataclasses import dataclass

from tarebook.core.causes.changes import Change, changes
from tarebook.core.causes.search import Asked
from tarebook.core.fusion.behaviour import groups
from tarebook.core.fusion.evidence import evidence
from tarebook.core.fusion.fusion import Fusion, fused
from tarebook.core.fusion.mixture import Spread
from tarebook.core.fusion.possible import Possible
from tarebook.core.fusion.scatter import Scatter
from tarebook.core.fusion.weigh_next import Next, weigh_next
from tarebook.core.garage.records import Warned, warned
from tarebook.core.ledger.since import Since, since_weigh_in
from tarebook.core.numbers.uncertain import Uncertain
from tarebook.core.standing.given import Given
from tarebook.core.whole_car.weighed import Weighed


@dataclass(frozen=True, slots=True)
class Counted:
    """A weigh-in that counts: `alone`, the weight now (kg) by it and the jobs since; its `share` in the weight.

    `residual`: it less what the others say, None when they say nothing of it. Of both only the size of the doubt is
    kept, not what it is made of. Shares add up to one; one that is below zero makes good an error another shares.
    """

    weigh_in: str
    alone: Uncertain
    share: float
    residual: Uncertain | None


@dataclass(frozen=True, slots=True)
class Fused:
    """What the weight is made of. `counted` in order of time; `left_out`: weigh-ins that cannot count, and why.

    `changes`: what is named as not fitting. `lower`: the last weigh-in differs, and whether it is off or the car
    changed cannot be told: of the `answers` the first counts. `unweighed`: parts without a mass that moved between
    weigh-ins. `scatter`: what the readings scatter beyond their scales' records. `weigh_next`: what one more weigh-in
    would give, the best first.
    """

    counted: tuple[Counted, ...]
    left_out: dict[str, Warned]
    changes: tuple[Change, ...]
    lower: bool
    answers: tuple[Possible, ...]
    scatter: Scatter | None
    unweighed: tuple[str, ...]
    weigh_next: tuple[Next, ...]
    warnings: tuple[Warned, ...]


@dataclass(frozen=True, slots=True)
class Estimate:
    """`weight`: the car now at the condition, kg.

    `last`: the last weigh-in that counts; `rests_on`: the last that is taken to be right, and `since` then.
    """

    weight: Uncertain
    last: Weighed
    rests_on: Weighed
    since: Since
    fused: Fused
    _fusion: Fusion

    def learned(self, gain: Uncertain) -> Uncertain:
        """A scale's gain with what all the weigh-ins tell of it."""
        return self._fusion.learned(gain)

    def spread(self, gain: Uncertain, repeats: float, about: float) -> Spread:
        """How what a scale shows spreads about what it should show, `about` being the variance of that, kg².

        `gain`: before the weigh-ins told of it. `repeats`: how the scale repeats, kg.
        """
        return self._fusion.spread(gain, repeats, about)


def estimate(given: Given, weighed: Sequence[Weighed], risk: float) -> Estimate | Warned:
    """The weight now from all of these weigh-ins, or why there is none. `risk`: of two answers, what decides."""
    garage, nets, now = given.garage, given.nets, given.now
    found = evidence(weighed, now, nets, given.condition)
    if isinstance(found, dict):
        return found
    fusion = fused(found, groups(garage, given.known.scales, found.counted), risk)
    # Where the answer that counts says that the last is off, it rests on the one before.
    rests_on = found.counted[-2 if fusion.answers[0].off and len(found.counted) > 1 else -1]
    since = since_weigh_in(rests_on.record.id, rests_on.jobs or (), now.jobs, nets)
    together = Fused(
        counted=_counted(fusion),
        left_out=found.left_out,
        changes=changes(Asked(garage, given.known, nets, now.jobs), fusion),
        lower=fusion.lower,
        answers=fusion.answers,
        scatter=fusion.scatter,
        unweighed=found.unweighed,
        weigh_next=weigh_next(garage, given.known, fusion),
        warnings=tuple(_warnings(fusion)),
    )
    return Estimate(fusion.weight, found.counted[-1], rests_on, since, together, fusion)


def _counted(fusion: Fusion) -> tuple[Counted, ...]:
    looks = zip(fusion.evidence.counted, fusion.values, fusion.mean.weights.tolist(), strict=True)
    return tuple(
        Counted(each.record.id, Uncertain(value, {"looks": float(fusion.told.doubts[at])}), share, fusion.residual(at))
        for at, (each, value, share) in enumerate(looks)
    )


def _warnings(fusion: Fusion) -> list[Warned]:
    counted, found = fusion.evidence.counted, []
    found += [warned("weigh_in_tells_nothing", weigh_in=counted[at].record.id) for at in fusion.told.nothing_new]
    if fusion.evidence.unweighed:
        found.append(warned("unweighed_between", parts=list(fusion.evidence.unweighed)))
    if fusion.lower:
        code = "two_differ" if fusion.told.freedom == 1 else "last_differs"
        found.append(warned(code, weigh_in=counted[-1].record.id))
    return found
