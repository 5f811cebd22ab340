"""The plain sentences a standing is told in, from one table of templates.

A sentence here is what a person reads first, so it says one thing: how far above or under the minimum, or that it is
too close to call. Where a part without a weight has moved since the weigh-in, no sentence is sure of anything: it says
what is weighed, and which way the truth may lie. The phone's copy of the table is written by
`python -m tarebook.contract`.
"""

from collections.abc import Iterable

from tarebook.core.fusion.scatter import Scatter
from tarebook.core.garage.records import warned
from tarebook.core.ledger.since import Since
from tarebook.core.numbers.shown import show_chance, show_doubt, show_in_hand, show_mass, show_odds
from tarebook.core.numbers.uncertain import expanded
from tarebook.core.standing.estimate import Fused
from tarebook.core.standing.foretold import Foretold
from tarebook.core.standing.gap import Gap
from tarebook.core.standing.history import Past
from tarebook.core.standing.official import OfficialReading
from tarebook.core.standing.standing import Standing
from tarebook.core.words.said import Said, Sentences, missed, size_of

SENTENCES = Sentences({
    "above": "{mass} above the minimum, sure to ± {within}",
    "under": "Under the minimum by {mass}, sure to ± {within}",
    "close": "Too close to call: {chance} chance that the official scale shows under the minimum",
    "probably_under": "Probably under the minimum: {chance} chance that the official scale shows under it",
    "above_as_weighed": "{mass} above the minimum by what is weighed; {moved}",
    "under_as_weighed": "Under the minimum by {mass} by what is weighed; {moved}",
    "close_as_weighed": "Too close to call by what is weighed: {chance} chance that the official scale shows under the "
    "minimum; {moved}",
    "probably_under_as_weighed": "Probably under the minimum by what is weighed: {chance} chance that the official "
    "scale shows under it; {moved}",
    "out_one": "1 part taken off since has no weight, so it may be lighter",
    "out_more": "{count} parts taken off since have no weight, so it may be lighter",
    "in_one": "1 part put on since has no weight, so it may be heavier",
    "in_more": "{count} parts put on since have no weight, so it may be heavier",
    "off_one": "1 part taken off has no weight, so it may be lighter",
    "off_more": "{count} parts taken off have no weight, so it may be lighter",
    "on_one": "1 part put on has no weight, so it may be heavier",
    "on_more": "{count} parts put on have no weight, so it may be heavier",
    "off_and_on": "{count} parts moved have no weight, so it may be lighter or heavier",
    "both_ways": "{count} parts moved since have no weight, so it may be lighter or heavier",
    "minimum_unread": "The class minimum cannot be read: {why}",
    "adders_unread": "What is added to the minimum cannot be read: {why}",
    "lighter": "{mass} lighter by the jobs written down, sure to ± {within}; the car itself has not been weighed yet",
    "heavier": "{mass} heavier by the jobs written down, sure to ± {within}; the car itself has not been weighed yet",
    "lighter_as_weighed": "{mass} lighter by what is weighed of the jobs written down; {moved}; the car itself has not "
    "been weighed yet",
    "heavier_as_weighed": "{mass} heavier by what is weighed of the jobs written down; {moved}; the car itself has not "
    "been weighed yet",
    "in_hand": "Keep {mass} in hand",
    "in_hand_none": "Nothing needs to be kept in hand",
    "gap_more": "{mass} more is in the car than written down",
    "gap_less": "{mass} less is in the car than written down",
    "gap_fits_more": "{mass} more is in the car than is written down, ± {within}: nothing to look for",
    "gap_fits_less": "{mass} more came off than is written down, ± {within}: nothing to look for",
    "gap_line_more": "{mass} more is in the car than is written down, ± {within}: something is not logged",
    "gap_line_less": "{mass} more came off than is written down, ± {within}: something is not logged",
    "either": "{right}, or {off} if the reading of {day} is off (about {odds}): weigh the car again to know",
    "one_only": "One weigh-in cannot show a slip in what is written down; a second would",
    "since_written": "If everything since {day} is written down",
    "scatter": "Your readings scatter more than the record of {scale} says: repeating to {mass} would explain it",
    "foretold_inside": "Predicted {mass}, read {read}: inside",
    "foretold_outside": "Predicted {mass}, read {read}: outside",
    "foretold_score": "{inside} of {all} inside ±",
})  # fmt: skip
_said = SENTENCES.said
EVEN_ODDS = 0.5


def margin_sentence(standing: Standing, unit: str) -> Said:
    """How far from the minimum, in one sentence; or what is missing to tell. `unit`: a unit of mass."""
    if standing.margin is None:
        return _missing(standing, unit)
    moved = moved_since(standing.since)
    ending = "_as_weighed" if moved else ""
    if standing.verdict == "close" and standing.official is not None:
        chance = standing.official.chance_under
        code = "probably_under" if chance > EVEN_ODDS else "close"
        return _said(code + ending, chance=show_chance(chance), **moved)
    side = "above" if standing.margin.value > 0.0 else "under"
    size = size_of(standing.margin, unit)
    return _said(side + ending, mass=size["mass"], **(moved or {"within": size["within"]}))


def in_hand_sentence(reading: OfficialReading, unit: str) -> Said:
    """What to keep above the minimum."""
    if reading.in_hand <= 0.0:
        return _said("in_hand_none")
    return _said("in_hand", mass=show_in_hand(reading.in_hand, unit, expanded(reading.expected)))


def moved_since(since: Since | None) -> dict[str, str]:
    """`moved`: what went in or came out since without a weight; nothing when everything has one."""
    return _moved(len(since.unweighed_out), len(since.unweighed_in), ("out", "in", "both_ways")) if since else {}


def _moved(off: int, on: int, words: tuple[str, str, str]) -> dict[str, str]:
    """So many parts off and on, told with the sentences named for the one, the other, and both."""
    if not off + on:
        return {}
    way = words[2] if off and on else words[0 if off else 1] + ("_one" if off + on == 1 else "_more")
    return {"moved": _said(way, count=str(off + on)).text}


def gap_sentence(gap: Gap, unit: str) -> Said:
    """What two weigh-ins found beside what is written down, as a headline."""
    if not gap.significant:
        return gap_line(gap, unit)
    mass = show_mass(abs(gap.difference.value), unit, expanded(gap.difference))
    return _said("gap_more" if gap.difference.value > 0.0 else "gap_less", mass=mass)


def gap_line(gap: Gap, unit: str) -> Said:
    """The same as one of a list, with whether there is anything to look for."""
    way = "more" if gap.difference.value > 0.0 else "less"
    return _said(f"gap_line_{way}" if gap.significant else f"gap_fits_{way}", **size_of(gap.difference, unit))


def either_sentence(fused: Fused, unit: str, day: str) -> Said | None:
    """The two answers, where the weigh-ins leave two; `day`: of the last of them, in words."""
    if len(fused.answers) < 2:
        return None
    off, right = sorted(fused.answers, key=lambda answer: not answer.off)
    masses = (show_mass(each.weight.value, unit, expanded(each.weight)) for each in (right, off))
    return _said("either", **dict(zip(("right", "off"), masses, strict=True)), odds=show_odds(off.odds), day=day)


def one_only_sentence(fused: Fused) -> Said | None:
    """That a single weigh-in proves nothing of the ledger; what a second would bring, `lower_doubt` tells."""
    return _said("one_only") if len(fused.counted) == 1 else None


def since_sentence(day: str) -> Said:
    """On what the interval rests: what nobody wrote down since the last weigh-in cannot be seen."""
    return _said("since_written", day=day)


def scatter_sentence(scatter: Scatter, scale: str, unit: str) -> Said:
    """Readings that scatter more than the scale's record says. `scale`: its name."""
    return _said("scatter", scale=scale, mass=show_doubt(scatter.repeats, unit))


def foretold_sentence(foretold: Foretold, unit: str) -> Said:
    """What was foretold of a weigh-in, and what came of it."""
    mass, read = (show_mass(each.value, unit, expanded(each)) for each in (foretold.expected, foretold.read))
    return _said("foretold_inside" if foretold.inside else "foretold_outside", mass=mass, read=read)


def score_sentence(history: Iterable[Past]) -> Said | None:
    """How often the word given before an official weigh-in held; None while none was given."""
    told = [past.foretold.inside for past in history if past.foretold]
    return _said("foretold_score", inside=str(sum(told)), all=str(len(told))) if told else None


def _missing(standing: Standing, unit: str) -> Said:
    reason = standing.reasons["margin"]
    if reason["code"] == "no_weigh_in":
        return _by_jobs(standing, unit)
    why = missed(reason)
    if reason["data"].get("list") == "class_sheets":
        return _said("adders_unread" if reason["data"]["field"] == "adders" else "minimum_unread", why=why.text)
    return why


def _by_jobs(standing: Standing, unit: str) -> Said:
    """Without a weigh-in: what the jobs in the car made of it, and which of their parts have no weight."""
    if not standing.removed.value:
        return missed(warned("no_weigh_in"))
    code = "lighter" if standing.removed.value > 0.0 else "heavier"
    moved = _moved(len(standing.unweighed_off), len(standing.unweighed_on), ("off", "on", "off_and_on"))
    size = size_of(standing.removed, unit)
    return _said(code + "_as_weighed", mass=size["mass"], **moved) if moved else _said(code, **size)
