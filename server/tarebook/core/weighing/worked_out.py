"""A part that was worked out before it was made, and weighed after: what the scale says against what was reckoned.

The difference carries the doubt of both. When it is larger than both allow (twice the standard uncertainty of the
difference), something was not as reckoned, and the usual causes are named (common practice, no source).
"""

from dataclasses import dataclass

from tarebook.core.garage.records import Part
from tarebook.core.numbers.shown import lay_out, show_mass
from tarebook.core.numbers.uncertain import Uncertain, expanded, subtract
from tarebook.core.weighing.claims import claimed
from tarebook.core.weighing.weighing import Mass
from tarebook.core.words.said import Sentences, size_of

WORKED_OUT_SENTENCES = Sentences({
    "heavier": "{mass} heavier than worked out, ± {within}: thicker than nominal, or a different alloy?",
    "heavier_with_bolts": "{mass} heavier than worked out, ± {within}: weighed with its bolts, thicker than nominal, "
    "or a different alloy?",
    "lighter": "{mass} lighter than worked out, ± {within}: thinner than nominal, more cut away, or a different alloy?",
    "agree": "Agrees with what was worked out: {difference}.",
})  # fmt: skip
_said = WORKED_OUT_SENTENCES.said


@dataclass(frozen=True, slots=True)
class Against:
    """Masses of one piece, kg. `difference`: weighed − worked out. `beyond`: more than both doubts allow."""

    worked_out: Uncertain
    weighed: Uncertain
    difference: Uncertain
    beyond: bool
    with_bolts: bool


def against(part: Part, mass: Mass) -> Against | None:
    """What was weighed against what was worked out; None unless there are both."""
    worked_out, basis = claimed(part)
    if worked_out is None or basis != "worked_out" or mass.mass is None or mass.basis != "weighed":
        return None
    difference = subtract(mass.mass, worked_out)
    beyond = _is_beyond(difference)
    bolts = any(reading.with_bolts for reading in mass.readings)
    return Against(worked_out, mass.mass, difference, beyond, bolts)


def _is_beyond(difference: Uncertain) -> bool:
    """More than its doubt, and still so to the digit in which both are shown: 0.02 ± 0.02 is none."""
    U = expanded(difference)  # noqa: N806
    shown = lay_out("mass", abs(difference.value), "kg", U)
    return abs(difference.value) > U and shown.parts != shown.within


def against_sentence(found: Against, unit: str) -> str:
    """The difference in one sentence. `unit`: a unit of mass."""
    difference = found.difference
    if not found.beyond:
        shown = show_mass(difference.value, unit, expanded(difference), signed=True)
        return _said("agree", difference=shown).text
    heavier = "heavier_with_bolts" if found.with_bolts else "heavier"
    code = heavier if difference.value > 0.0 else "lighter"
    return _said(code, **size_of(difference, unit)).text
