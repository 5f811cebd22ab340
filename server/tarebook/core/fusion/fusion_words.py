"""What does not fit among the weigh-ins, its likely causes and what one more would give, in words.

The causes here are all there are; "misnoted" stands for the three before it where nobody looks at the size.

The phone's copy of the table is written by `python -m tarebook.contract`.
"""

from tarebook.core.fusion.causes import Change
from tarebook.core.fusion.weigh_next import Next
from tarebook.core.numbers.shown import show_doubt
from tarebook.core.words.said import Said, Sentences, size_of

FUSION_SENTENCES = Sentences({
    "change_in": "{mass} went in without a note, ± {within}",
    "change_out": "{mass} came out without a note, ± {within}",
    "change_in_or_off": "{mass} went in without a note, ± {within}, or a weigh-in beside it is off",
    "change_out_or_off": "{mass} came out without a note, ± {within}, or a weigh-in beside it is off",
    "change_high": "This weigh-in shows {mass} too much, ± {within}",
    "change_low": "This weigh-in shows {mass} too little, ± {within}",
    "cause_put_in": "Something was put in, or put back, and not written down. Tools and a spare wheel count too.",
    "cause_taken_out": "Something came out and was not written down.",
    "cause_moved_unweighed": "A part that moved between has no weight and counts as nothing.",
    "cause_rough_parts": "A part of the jobs between weighs something else than was guessed or quoted.",
    "cause_job_list": "A job is ticked in the list of one weigh-in though it was not in the car, or is missing there.",
    "cause_scale_changed": "It was weighed on another scale from then on: the difference may be the scales'.",
    "cause_somebody_in": "Somebody sat in the car.",
    "cause_driver_missing": "The driver was counted and was not in the car.",
    "cause_fuel_misread": "The fuel was read or noted wrongly.",
    "cause_misnoted": "Fuel, driver or ballast was noted otherwise than it was.",
    "cause_not_zeroed": "A scale was not level or not set to zero, or a reading was copied wrongly.",
    "cause_wrong_scale": "It stood on another scale than the one noted.",
    "next": "One more weigh-in on {scale}: ± {then} instead of ± {now}",
    "next_same": "One more weigh-in on {scale} would hardly make it surer",
    "next_platform": "a platform scale nobody has checked",
})  # fmt: skip
_said = FUSION_SENTENCES.said


def change_sentence(change: Change, unit: str) -> Said:
    """What does not fit, without where: that is between the weigh-ins `change` names."""
    is_more = change.size.value > 0.0
    if change.kind == "outlier":
        return _said("change_high" if is_more else "change_low", **size_of(change.size, unit))
    ending = "_or_off" if change.kind == "either" else ""
    return _said(("change_in" if is_more else "change_out") + ending, **size_of(change.size, unit))


def cause_sentence(cause: str) -> Said:
    """A likely cause, by its code."""
    return _said(f"cause_{cause}")


def next_sentence(following: Next, scale: str | None, unit: str) -> Said:
    """What one more weigh-in would give. `scale`: its name; None for a platform nobody knows."""
    then, now = show_doubt(2.0 * following.u_then, unit), show_doubt(2.0 * following.u_now, unit)
    name = scale or FUSION_SENTENCES["next_platform"]
    return _said("next_same", scale=name) if then == now else _said("next", scale=name, then=then, now=now)
