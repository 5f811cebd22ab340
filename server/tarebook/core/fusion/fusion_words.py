"""What one more weigh-in would give, in words.

The phone's copy of the table is written by `python -m tarebook.contract`.
"""

from tarebook.core.fusion.weigh_next import Next
from tarebook.core.numbers.shown import show_doubt
from tarebook.core.words.said import Said, Sentences

FUSION_SENTENCES = Sentences({
    "next": "One more weigh-in on {scale}: ± {then} instead of ± {now}",
    "next_same": "One more weigh-in on {scale} would hardly make it surer",
    "next_platform": "a platform scale nobody has checked",
})  # fmt: skip
_said = FUSION_SENTENCES.said


def next_sentence(following: Next, scale: str | None, unit: str) -> Said:
    """What one more weigh-in would give. `scale`: its name; None for a platform nobody knows."""
    then, now = show_doubt(2.0 * following.u_then, unit), show_doubt(2.0 * following.u_now, unit)
    name = scale or FUSION_SENTENCES["next_platform"]
    return _said("next_same", scale=name) if then == now else _said("next", scale=name, then=then, now=now)
