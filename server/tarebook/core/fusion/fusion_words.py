"""What would lower the doubt, and when a check pays, in words.

The phone's copy of the table is written by `python -m tarebook.contract`.
"""

from tarebook.core.fusion.believed import Ageing
from tarebook.core.fusion.lowering import Lowering
from tarebook.core.fusion.weigh_next import Next
from tarebook.core.numbers.shown import show_doubt, show_mass
from tarebook.core.words.said import Said, Sentences

FUSION_SENTENCES = Sentences({
    "next": "One more weigh-in on {scale}: ± {then} instead of ± {now}",
    "next_same": "One more weigh-in on {scale} would hardly make it surer",
    "next_platform": "a platform scale nobody has checked",
    "lower_weigh_in": "Weigh the car on {of}: ± {with_it} instead of ± {now}, {minutes} min",
    "lower_weigh_in_zeroed": "Set the zero, weigh the car on {of}: ± {with_it} instead of ± {now}, {minutes} min",
    "lower_weigh_in_checked_zeroed": "Check {of} with {against}, set the zero, weigh the car: "
    "± {with_it} instead of ± {now}, {minutes} min",
    "lower_weigh_in_fuel": "Fill or drain the tank, weigh on {of}: ± {with_it} instead of ± {now}, {minutes} min",
    "lower_check": "Check {of} with {against}: ± {with_it} instead of ± {now}, {minutes} min",
    "lower_weigh": "Weigh {of} on {on}: ± {with_it} instead of ± {now}, {minutes} min",
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


def lowering_sentence(lowering: Lowering, of: str | None, on: str | None, unit: str) -> Said:
    """What to do, and what it brings. `of`, `on`: names; of a platform nobody knows None."""
    then, now = (show_doubt(2.0 * u, unit) for u in (lowering.u_then, lowering.u_now))
    if then == now:
        then, now = (show_mass(2.0 * u, unit) for u in (lowering.u_then, lowering.u_now))
    code = "_".join(("lower", lowering.way, *lowering.first))
    return _said(
        code,
        of=of or FUSION_SENTENCES["next_platform"],
        on=on or "",
        against="" if lowering.against is None else show_mass(lowering.against, unit),
        with_it=then,
        now=now,
        minutes=str(lowering.minutes),
    )
