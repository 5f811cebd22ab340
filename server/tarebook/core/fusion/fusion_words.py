"""What one more weigh-in would give, and when a check pays, in words.

The phone's copy of the table is written by `python -m tarebook.contract`.
"""

from tarebook.core.fusion.believed import Ageing
from tarebook.core.fusion.weigh_next import Next
from tarebook.core.numbers.shown import show_doubt
from tarebook.core.words.said import Said, Sentences

FUSION_SENTENCES = Sentences({
    "next": "One more weigh-in on {scale}: ± {then} instead of ± {now}",
    "next_same": "One more weigh-in on {scale} would hardly make it surer",
    "next_platform": "a platform scale nobody has checked",
    "check_by": "Check it again by about {day}",
    "check_now": "Check it before the next weigh-in",
})  # fmt: skip
_said = FUSION_SENTENCES.said


def next_sentence(following: Next, scale: str | None, unit: str) -> Said:
    """What one more weigh-in would give. `scale`: its name; None for a platform nobody knows."""
    then, now = show_doubt(2.0 * following.u_then, unit), show_doubt(2.0 * following.u_now, unit)
    name = scale or FUSION_SENTENCES["next_platform"]
    return _said("next_same", scale=name) if then == now else _said("next", scale=name, then=then, now=now)


def check_sentence(ageing: Ageing, day: str | None) -> Said | None:
    """When its next check pays, `day` as people say it; None for a scale whose gain stays as it is."""
    if ageing.now:
        return _said("check_now")
    return _said("check_by", day=day or ageing.due) if ageing.due else None
