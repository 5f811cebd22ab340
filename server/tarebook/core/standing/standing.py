"""The standing: what the car weighs now, how sure that is, and how far it is from the minimum.

It answers for one trim and for the condition the class weighs in. The weight comes through the one door `estimate`;
everything else here is comparing it: with the minimum as a mass, with the minimum as the official scale would show it,
and with what was weighed and written down before. What cannot be told is None, and `reasons` says why, by name: weight,
margin, start, gap.
"""

from dataclasses import dataclass, replace
from typing import cast

from tarebook.core.fusion.lowering import Lowering
from tarebook.core.garage.records import ClassSheet, Garage, Warned, WeighIn, warned
from tarebook.core.ledger.net import mass_total
from tarebook.core.ledger.since import Since, pieces_between
from tarebook.core.numbers.uncertain import Uncertain, beyond_doubt, scale, subtract
from tarebook.core.standing.estimate import Estimate, Fused, estimate
from tarebook.core.standing.gap import Gap, gap_between, gaps_in_order
from tarebook.core.standing.given import Given, given_by
from tarebook.core.standing.history import Past, Start, past_of, start_of
from tarebook.core.standing.lower_doubt import lower_doubt
from tarebook.core.standing.official import OfficialReading, expected_reading, official_reading, official_scale
from tarebook.core.standing.trials import asked
from tarebook.core.weighing.weighing import Masses, masses
from tarebook.core.whole_car.condition import Condition, condition_warnings
from tarebook.core.whole_car.weighed import Now

RISK = 0.05  # of being shown under the minimum, when the class sheet names none: an assumption, no source


@dataclass(frozen=True, slots=True)
class Standing:
    """Masses in kg. `minimum` has its adders in it; `margin` = weight − minimum.

    `fused`: what the weight is made of; `since` the last weigh-in in it. `official.in_hand` is what to keep above the
    minimum for `risk`. `ballast`: what is on board now, and in the weight: the blocks fitted, else as at that weigh-in.
    `removed`: net of the jobs in the car now, positive when it got lighter; `unweighed_off`, `unweighed_on`: parts
    those took off or put on that have no weight. `history`: every weigh-in in order; `gaps` between those that can be
    held against each other, `gap` between the last two. `verdict`: "above" or "under" the minimum when the margin is
    beyond its expanded uncertainty (k = 2) and, for above, the chance of being shown under is within the risk; else
    "close". "unweighed": either is so by what is weighed, but what moved since without a weight may make it untrue.
    `lower_doubt`: what would lower the doubt most for its time, told when a day is given.
    """

    car: str | None
    trim: str
    condition: Condition
    verdict: str | None
    weight: Uncertain | None
    minimum: float | None
    margin: Uncertain | None
    risk: float
    official: OfficialReading | None
    fused: Fused | None
    since: Since | None
    ballast: float
    removed: Uncertain
    unweighed_off: tuple[str, ...]
    unweighed_on: tuple[str, ...]
    history: tuple[Past, ...]
    start: Start | None
    gap: Gap | None
    gaps: tuple[Gap, ...]
    lower_doubt: tuple[Lowering, ...]
    reasons: dict[str, Warned]
    warnings: tuple[Warned, ...]


def standing(
    garage: Garage,
    known: Masses | None = None,
    class_sheet: str | None = None,
    weigh_in: str | None = None,
    day: str | None = None,
) -> Standing:
    """The standing of the garage's car in the garage's trim.

    `class_sheet`: id; by default the newest of the car. `weigh_in`: id of the one to rest on alone; by default all that
    can count do. `known`: the garage's masses, when they are at hand already. `day`: a date, to be told also what done
    on it would lower the doubt; that takes a standing for each thing to do.
    """
    given = given_by(garage, known or masses(garage), class_sheet)
    chosen = [each for each in given.weighed if weigh_in in (None, each.record.id)]
    minimum, risk = _minimum(garage, given.sheet), risk_of(given.sheet)
    now = estimate(given, chosen, risk)
    start, gap = start_of(given), _gap(given)
    found = now if isinstance(now, Estimate) else None
    moved = pieces_between(given.now.jobs, (), given.nets)
    least = minimum if isinstance(minimum, float) else None
    margin = subtract(found.weight, Uncertain(least)) if found and least is not None else None
    official = _official(given, found, least, risk)
    return Standing(
        car=garage.car.id if garage.car else None,
        trim=garage.trim,
        condition=given.condition,
        ballast=_ballast(given.now, found),
        weight=found.weight if found else None,
        minimum=least,
        margin=margin,
        risk=risk,
        official=official,
        fused=found.fused if found else None,
        since=found.since if found else None,
        removed=scale(_net_now(given), -1.0),
        unweighed_off=tuple(part for part, pieces in moved.items() if pieces < 0),
        unweighed_on=tuple(part for part, pieces in moved.items() if pieces > 0),
        history=tuple(past_of(each, given.condition) for each in given.weighed),
        start=start if isinstance(start, Start) else None,
        gap=gap if isinstance(gap, Gap) else None,
        gaps=gaps_in_order(given.weighed, given.nets),
        lower_doubt=lower_doubt(trying) if day and (trying := asked(garage, day, risk, class_sheet)) else (),
        reasons=_reasons(weight=now, margin=minimum, start=start, gap=gap),
        verdict=_verdict(margin, official, risk, found),
        warnings=tuple(_warnings(given, found, official)),
    )


def _minimum(garage: Garage, sheet: ClassSheet | None) -> float | Warned:
    """The minimum with its adders, kg. One that cannot be read is no minimum: half of it would be a false comfort."""
    if sheet is None:
        return warned("no_minimum")
    for warning in garage.warnings:
        of = warning["data"]
        if of.get("list") == "class_sheets" and of.get("id") == sheet.id and of.get("field") in ("minimum", "adders"):
            return warning
    if sheet.minimum is None:
        return warned("no_minimum", class_sheet=sheet.id)
    return float(sheet.minimum.exact + (sheet.adders.exact if sheet.adders else 0))


def risk_of(sheet: ClassSheet | None) -> float:
    risk = float(sheet.risk) if sheet and sheet.risk is not None else RISK
    return risk if 0.0 < risk < 1.0 else RISK


def _official(given: Given, found: Estimate | None, minimum: float | None, risk: float) -> OfficialReading | None:
    if found is None or minimum is None:
        return None
    records = [each.record for each in given.weighed]
    theirs = official_scale(given.garage, given.known, given.sheet, records, minimum)
    learned = replace(theirs, gain=found.learned(theirs.gain))
    expected = expected_reading(found.weight, learned)
    spread = found.spread(theirs.gain, theirs.repeatability, expected.u * expected.u)
    return official_reading(found.weight, minimum, learned, risk, spread)


def _verdict(
    margin: Uncertain | None, official: OfficialReading | None, risk: float, found: Estimate | None
) -> str | None:
    if margin is None or official is None or found is None:
        return None
    if not beyond_doubt(margin):
        return "close"
    if margin.value < 0.0:
        return "unweighed" if found.since.unweighed_in else "under"
    if official.chance_under > risk:
        return "close"
    return "unweighed" if found.since.unweighed_out else "above"


def _ballast(now: Now, found: Estimate | None) -> float:
    if now.ballast is not None:
        return now.ballast.value
    return found.last.aboard.ballast.value if found else 0.0


def _net_now(given: Given) -> Uncertain:
    lines = [line for job in given.now.jobs for line in given.nets[job].lines]
    return mass_total(lines).net


def _gap(given: Given) -> Gap | Warned:
    whole = [each for each in given.weighed if each.loads.total]
    if len(whole) < 2:
        return warned("one_weigh_in")
    return gap_between(whole[-2], whole[-1], given.nets)


def _reasons(weight: object, margin: object, start: object, gap: object) -> dict[str, Warned]:
    """The answers that are no answers, by name; without a weight there is no margin either."""
    answers = {"weight": weight, "margin": weight if isinstance(weight, dict) else margin, "start": start, "gap": gap}
    return {name: cast(Warned, answer) for name, answer in answers.items() if isinstance(answer, dict)}


def _warnings(given: Given, found: Estimate | None, official: OfficialReading | None) -> list[Warned]:
    """What should be known of the weigh-in the weight rests on, of the jobs since, of the class and of its scale."""
    warnings = list(given.condition.warnings)
    if given.sheet and given.sheet.risk is not None and float(given.sheet.risk) != risk_of(given.sheet):
        warnings.append(warned("risk_unusable", class_sheet=given.sheet.id))
    warnings += _left_out(given, found)
    if official is not None and official.scale.scale is None:
        warnings.append(warned("official_scale_assumed"))
    if found is None:
        return warnings
    last = found.last
    warnings += last.loads.warnings
    warnings += condition_warnings(given.garage, last.record, last.aboard, given.condition)
    warnings += _of_ballast(given, last.record)
    if found.since.unweighed:
        warnings.append(warned("unweighed", parts=list(found.since.unweighed)))
    return [*warnings, *found.fused.warnings]


def _left_out(given: Given, found: Estimate | None) -> list[Warned]:
    """Why weigh-ins later than the last that counts do not; of none that counts the reason is given elsewhere."""
    if found is None:
        last = given.weighed[-1:]
        return [warned("reading_missing", weigh_in=each.record.id) for each in last if each.loads.total is None]
    names = [each.record.id for each in given.weighed]
    later = names[names.index(found.last.record.id) + 1 :]
    return [found.fused.left_out[name] for name in later if name in found.fused.left_out]


def _of_ballast(given: Given, last: WeighIn) -> list[Warned]:
    """Where the ballast in the weight comes from, and what may be wrong with it."""
    fitted = given.now.ballast
    if fitted is None:
        return [warned("ballast_kept", weigh_in=last.id)] if last.ballast and last.ballast.exact else []
    bare = [place.id for place in given.garage.ballast_places.values() if place.fitted and place.block is None]
    found = [warned("ballast_without_block", places=bare)] if bare else []
    if last.ballast is None and fitted.value:
        found.append(warned("ballast_unnoted", weigh_in=last.id))
    return found
