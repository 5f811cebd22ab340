"""What does not fit among the weigh-ins, and what it may have been, in words.

A kind of slip is told by its likeliest instance where that is nearly all of it ("Front seats counted twice? about
70 %"), else in general ("Something counted twice? about 60 %"). The phone's copy of the table is written by
`python -m tarebook.contract`.
"""

from collections.abc import Callable

from tarebook.core.causes.changes import Change
from tarebook.core.causes.search import Cause, Likely
from tarebook.core.causes.slip import Slip
from tarebook.core.numbers.shown import show_odds
from tarebook.core.words.said import Said, Sentences, size_of

Names = Callable[[str, str], str]
"""What a record of a kind is called, by its id: a weigh-in by its day."""

CAUSE_SENTENCES = Sentences({
    "change_in": "{mass} went in without a note, ± {within}",
    "change_out": "{mass} came out without a note, ± {within}",
    "change_in_or_off": "{mass} went in without a note, ± {within}, or a weigh-in beside it is off",
    "change_out_or_off": "{mass} came out without a note, ± {within}, or a weigh-in beside it is off",
    "change_high": "This weigh-in shows {mass} too much, ± {within}",
    "change_low": "This weigh-in shows {mass} too little, ± {within}",
    "unexplained": "No slip in the records explains this well.",
    "moved_unweighed": "A part that moved between has no weight and counts as nothing.",
    "odds": "{cause} about {odds}",
    "of_weigh_in": "Weigh-in of {day}",
    "any_twice": "Something counted twice?",
    "twice_part": "{part} counted twice?",
    "twice_job": "{job} counted twice?",
    "any_wrong_side": "A job on the wrong side of a weigh-in?",
    "wrong_side_done": "{job} already done at the weigh-in of {day}?",
    "wrong_side_undone": "{job} not yet done at the weigh-in of {day}?",
    "any_unit": "A unit mixed up, or the point misplaced?",
    "unit_pounds": "{of}: pounds taken for kilograms?",
    "unit_kilograms": "{of}: kilograms taken for pounds?",
    "unit_ounces": "{of}: pounds taken for ounces?",
    "unit_sixteenth": "{of}: ounces taken for pounds?",
    "unit_grams": "{of}: ounces taken for grams?",
    "unit_gram_ounces": "{of}: grams taken for ounces?",
    "unit_ten": "{of}: ten times as much, the point misplaced?",
    "unit_tenth": "{of}: a tenth as much, the point misplaced?",
    "any_tare": "The container or the person left in a weight?",
    "tare_in": "{of} weighed with its container, or with the person?",
    "tare_out": "{of}: container or person taken out twice?",
    "any_other_scale": "Another scale than noted?",
    "other_scale": "The weigh-in of {day} on {scale}?",
    "any_other_driver": "Another driver than noted?",
    "other_driver": "{driver} in the car at the weigh-in of {day}?",
    "any_person": "Somebody in the car, or not in it, against the notes?",
    "person_on": "Somebody in the car at the weigh-in of {day}?",
    "person_driver": "{driver} in the car at the weigh-in of {day}?",
    "person_off": "{driver} not in the car at the weigh-in of {day}?",
    "any_fuel": "Fuel noted wrongly?",
    "fuel": "Fuel noted wrongly at the weigh-in of {day}?",
    "any_ballast": "Ballast in the car and not noted, or noted and not in it?",
    "ballast_place": "Ballast at {place} not noted at the weigh-in of {day}?",
    "ballast_on": "More ballast in the car than noted at the weigh-in of {day}?",
    "ballast_off": "Less ballast in the car than noted at the weigh-in of {day}?",
    "any_wet": "Something wet when it was weighed?",
    "wet": "Car wet at the weigh-in of {day}?",
    "wet_part": "{of} wet when it was weighed?",
    "any_put_back": "A part in or out against the notes?",
    "put_back_on": "{part} in the car since the weigh-in of {day}, against the notes?",
    "put_back_off": "{part} out of the car since the weigh-in of {day}, against the notes?",
    "put_once_on": "{part} in the car at the weigh-in of {day}, against the notes?",
    "put_once_off": "{part} out of the car at the weigh-in of {day}, against the notes?",
    "any_zero": "A scale not at zero?",
    "zero": "Scale not at zero at the weigh-in of {day}?",
    "any_guess": "A guess far off?",
    "guess": "{of} guessed far off?",
    "any_unwritten": "Something nobody wrote down?",
    "unwritten": "Something nobody wrote down between the weigh-ins of {day} and {until}?",
    "any_misread": "A weigh-in off by itself?",
    "misread": "Weigh-in of {day} off by itself?",
    "any_chance": "Nothing wrong, only scatter?",
    "chance": "Nothing wrong, only scatter?",
})  # fmt: skip
_said = CAUSE_SENTENCES.said
_MOSTLY = 0.9


def change_sentence(change: Change, unit: str) -> Said:
    """What does not fit, without where: that is between the weigh-ins `change` names."""
    is_more = change.size.value > 0.0
    if change.kind == "outlier":
        return _said("change_high" if is_more else "change_low", **size_of(change.size, unit))
    ending = "_or_off" if change.kind == "either" else ""
    return _said(("change_in" if is_more else "change_out") + ending, **size_of(change.size, unit))


def cause_sentence(cause: Cause, names: Names) -> Said:
    """A kind of slip with its odds."""
    first = cause.likely[0]
    is_one = first.odds >= _MOSTLY * cause.odds
    told = slip_sentence(first.slip, names) if is_one else _said(f"any_{cause.code}")
    return _with_odds(told, cause.odds)


def likely_sentence(likely: Likely, names: Names) -> Said:
    """One slip with its odds."""
    return _with_odds(slip_sentence(likely.slip, names), likely.odds)


def _with_odds(told: Said, odds: float) -> Said:
    text = CAUSE_SENTENCES["odds"].format(cause=told.text, odds=show_odds(odds))
    return Said(told.code, {**told.data, "odds": show_odds(odds)}, text)


def slip_sentence(slip: Slip, names: Names) -> Said:
    """What may have happened, asked."""
    kinds = ("job", "other", "part", "driver", "scale", "place")
    of = {kind: names(_KIND.get(kind, kind), named) for kind in kinds if (named := getattr(slip, kind))}
    days = {"day": slip.weigh_in, "until": slip.until}
    said = {name: names("weigh_in", weigh_in) for name, weigh_in in days.items() if weigh_in}
    holder = of.get("part") or of.get("driver") or CAUSE_SENTENCES["of_weigh_in"].format(day=said.get("day", ""))
    return _said(_code(slip), **of, **said, of=holder)


_KIND = {"other": "job", "place": "ballast_place"}


def _code(slip: Slip) -> str:
    if slip.code == "twice":
        return "twice_part" if slip.part else "twice_job"
    if slip.code == "unit":
        return f"unit_{slip.unit}"
    if slip.code == "tare":
        return "tare_out" if slip.kg is not None and slip.kg < 0.0 else "tare_in"
    if slip.code == "wet":
        return "wet_part" if slip.part else "wet"
    if slip.code == "put_back" and slip.until is None:
        return f"put_once_{slip.way}"
    if slip.code == "ballast" and slip.place:
        return "ballast_place"
    if slip.code == "person" and slip.way == "on" and slip.driver:
        return "person_driver"
    if slip.code in ("wrong_side", "person", "ballast", "put_back"):
        return f"{slip.code}_{slip.way}"
    return slip.code
