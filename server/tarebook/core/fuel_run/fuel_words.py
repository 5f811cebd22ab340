"""A run on fuel in two sentences: how light the car gets against the minimum, and what to start with.

The phone's copy of the table is written by `python -m tarebook.contract`.
"""

from tarebook.core.fuel_run.fuel_run import FuelRun, Moment
from tarebook.core.numbers.shown import lay_out, show_chance, show_in_hand, show_mass
from tarebook.core.numbers.uncertain import beyond_doubt, expanded
from tarebook.core.standing.sentences import moved_since
from tarebook.core.words.said import Said, Sentences, missed, size_of

FUEL_SENTENCES = Sentences({
    "at_the_start": "at the start",
    "at_the_flag": "at the flag",
    "after_lap": "after lap {lap}",
    "when_dry": "when the tank runs dry, in lap {lap}",
    "lightest": "Lightest {where}: {weight}",
    "lightest_above": "Lightest {where}: {weight}, {margin} above the minimum",
    "lightest_under": "Lightest {where}: {weight}, {margin} under the minimum",
    "lightest_close": "Lightest {where}: {weight}; {chance} chance that the official scale shows under the minimum",
    "as_weighed": "{said}, by what is weighed; {moved}",
    "start_to_keep": "Start with at least {volume} to keep enough in hand at the flag",
    "start_to_arrive": "Start with at least {volume} to reach the flag",
    "start_above_tank": "The run asks for {volume} at the start, more than the tank holds",
    "start_never": "Even with a full tank the car has {mass} too little in hand at the flag",
})  # fmt: skip
_said = FUEL_SENTENCES.said
_ROUNDING = 1e-9  # of a volume: what its last bits may add is not rounded up


def lightest_sentence(run: FuelRun, unit: str) -> Said:
    """How light the car gets, or what is missing to tell. `unit`: a unit of mass."""
    reason = run.reasons.get("weight") or run.reasons.get("start")
    if reason:
        return missed(reason)
    moment = run.laps[-1 if run.worst is None else run.worst]
    said = _against_minimum(run, moment, unit)
    moved = moved_since(run.since)
    return _said("as_weighed", said=said.text, **moved) if moved else said


def start_sentence(run: FuelRun, mass_unit: str, volume_unit: str) -> Said:
    """What to start with, or what is missing to tell."""
    if run.least is None:
        return missed(run.reasons["least"])
    if run.least.lacking is not None:
        assert run.empty.weight is not None  # nothing can be lacking in a weight that cannot be told
        return _said("start_never", mass=show_in_hand(run.least.lacking, mass_unit, expanded(run.empty.weight)))
    volume = lay_out("volume", run.least.fuel * (1.0 - _ROUNDING), volume_unit, up=True).text
    if run.full is not None and run.least.fuel > run.full.fuel.value:
        return _said("start_above_tank", volume=volume)
    return _said("start_to_arrive" if run.least.decided_by == "distance" else "start_to_keep", volume=volume)


def _against_minimum(run: FuelRun, moment: Moment, unit: str) -> Said:
    weight = moment.weight
    assert weight is not None  # a run without a weight has a reason
    told = {"where": _where(run, moment.lap or 0), "weight": show_mass(weight.value, unit, expanded(weight))}
    if moment.judged is None:
        return _said("lightest", **told)
    margin, chance = moment.judged.margin, moment.judged.chance_under
    side = "above" if margin.value > 0.0 else "under"
    if not beyond_doubt(margin) or (side == "above" and chance > run.risk):
        return _said("lightest_close", **told, chance=show_chance(chance))
    return _said(f"lightest_{side}", **told, margin=size_of(margin, unit)["mass"])


def _where(run: FuelRun, lap: int) -> str:
    if lap == 0:
        return FUEL_SENTENCES["at_the_start"]
    last = lap == run.laps[-1].lap
    code = "after_lap" if not last else "when_dry" if run.runs_dry else "at_the_flag"
    return _said(code, lap=str(lap)).text
