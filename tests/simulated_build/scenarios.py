"""The scenarios of the simulated build, and what each is aimed to reach.

Every condition is built twice: with everything written down, and with two changes that nobody wrote down. What is not
modelled (a car that repeats worse than its scales' records say) has no aims: its figures say what is lost.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from tests.simulated_build.evidence import MIDDLE
from tests.simulated_build.setting import Setting

Range = tuple[float, float]


@dataclass(frozen=True)
class Aims:
    """Shares from and to. `covers`: of runs whose 95 % interval holds the truth. None where nothing is aimed at.

    `told`: of runs where anybody is told that something does not fit. `shown_under`: of cars that are trimmed to the
    minimum and what to keep in hand, against a risk of 5 %.
    """

    covers: Range | None = None
    invents: Range | None = None
    names_all: Range | None = None
    told: Range | None = None
    shown_under: Range | None = (0.0, 0.07)
    ratio: Range | None = (0.0, 1.0)

    @property
    def aimed(self) -> bool:
        return self.covers is not None


@dataclass(frozen=True)
class Scenario:
    name: str
    about: str
    setting: Setting
    aims: Aims


NONE = Aims(covers=(0.94, 0.96), invents=(0.0, 0.05), told=(0.0, 0.05))
FEW = Aims(covers=(0.94, 0.98), invents=(0.0, 0.05), told=(0.0, 0.05))
# What is known to a half-width is not off by more: an interval that is made of such covers more often.
SURE = Aims(covers=(0.94, 1.0), invents=(0.0, 0.05), told=(0.0, 0.05))
SEEN = Aims(covers=(0.94, 0.98), ratio=None)  # with a slip that can be seen, or scales as they are
ONE = Aims(covers=(0.94, 0.98), names_all=(0.90, 1.0))
BOTH = Aims(covers=(0.90, 1.0), ratio=None)  # scales that wander, and something unlogged
TWO = Aims(covers=(0.93, 0.96), names_all=(0.90, 1.0))
_CONDITIONS = (
    ("plain", "", Setting()),
    ("repeats", ", cars repeat to 0.5 kg and the records say so", Setting(repeats=0.5, stated=0.5)),
    ("fuel", ", fuel known to ± 1 kg", Setting(fuel_within=1.0 / MIDDLE)),
    ("guesses", ", ten parts guessed", Setting(guessed=10)),
)
FEWER, MANY = (2, 4, 6), (4, 6, 12)  # weigh-ins
LOST = Aims(ratio=None, shown_under=None)
_STEP = Setting(wander="walk", steps=1, least_kg=1.0)
_SURE_WALK = Setting(wander="walk", asked=True, checked=400.0, home=True)
_EVENT = Setting(event=True, asked=True, checked=400.0)
_WALK_EVENT = replace(_EVENT, wander="walk")
_UNSAID = Setting(repeats=0.5, stated=0.1)


def _pair(name: str, about: str, setting: Setting, none: Aims = NONE, two: Aims = TWO) -> tuple[Scenario, Scenario]:
    return (
        Scenario(name, "nothing unlogged" + about, setting, none),
        Scenario(f"{name}-two", "two unlogged" + about, replace(setting, steps=2), two),
    )


SLIPS = (  # kind, what went wrong, at how many weigh-ins
    ("unlogged", "something unlogged, 0.5 to 15 kg", MANY),
    ("twice", "a job entered twice", MANY),
    ("wrong_side", "a job on the wrong side of a weigh-in", MANY),
    ("pounds", "pounds taken for kilograms", MANY),
    ("unit", "a part 2.2, 10, 16 or 28.35 times too heavy or too light", MANY),
    ("container", "a crate not taken out", (6, 12)),
    ("other_scale", "a weigh-in noted on another scale", (6, 12)),
    ("other_driver", "another of the known drivers sat there", (6, 12)),
    ("somebody", "somebody in the car, or not in it", (6, 12)),
    ("fuel", "fuel read wrongly, anything between empty and full", (6, 12)),
    ("ballast", "ballast forgotten at a weigh-in", (6, 12)),
    ("wet", "1 to 8 kg of water", (6, 12)),
    ("part_off", "a part off that is noted on", (6, 12)),
    ("zero", "a weigh-in on scales that were not zeroed", (6, 12)),
    ("any", "any of these slips", MANY),
)


def _name(kind: str) -> str:
    """Of a scenario with a slip: all but the mix as their kind, with a word more where a condition is named so."""
    return {"any": "mix", "fuel": "fuel_slip", "zero": "zero_once"}.get(kind, kind)


def _each(name: str, about: str, many: tuple[int, ...], setting: Setting, aims: Aims = SEEN) -> list[Scenario]:
    """A scenario for each number of weigh-ins."""
    return [Scenario(f"{name}-{n}", f"{about}, {n} weigh-ins", replace(setting, weigh_ins=n), aims) for n in many]


_ALL = (
    *(scenario for condition in _CONDITIONS for scenario in _pair(*condition)),
    Scenario("least-two", "two unlogged, each 4.3 u and no more", Setting(steps=2, most=4.3), TWO),
    *_pair("unsaid", ", repeat to 0.5 kg, records say 0.1", _UNSAID, LOST, LOST),
    *_each("unsaid", "repeat to 0.5 kg, records say 0.1", FEWER, _UNSAID, SEEN),
    *_each("plain", "nothing unlogged", FEWER, Setting(), FEW),
    *_each(
        "noted", "nothing unlogged, checks and zeroing recorded", (2, *MANY), Setting(asked=True, checked=100.0), FEW
    ),
    *_each("home", "nothing unlogged, pads only", FEWER, Setting(home=True), FEW),
    *_each("event", "nothing unlogged, pads checked with 400 kg, once at an event", MANY, _EVENT, SURE),
    *_each("one", "one unlogged", MANY, Setting(steps=1), ONE),
    *_each("walk", "gains walk by 0.05 % a weigh-in", MANY, Setting(wander="walk")),
    *_each("slope", "gains go one way by 0.05 % a weigh-in", MANY, Setting(wander="slope")),
    *_each("walk-home", "gains walk, pads only", MANY, Setting(wander="walk", home=True)),
    *_each("walk-noted", "gains walk, checks recorded", MANY, Setting(wander="walk", asked=True, checked=100.0)),
    *_each("walk-sure", "gains walk, pads only, checked with 400 kg", MANY, _SURE_WALK),
    *_each("walk-event", "gains walk, pads checked with 400 kg, once at an event", MANY, _WALK_EVENT),
    *_each("walk-one", "gains walk, one unlogged", MANY, _STEP, BOTH),
    *_each("slope-one", "gains go one way, one unlogged", MANY, replace(_STEP, wander="slope"), BOTH),
    *_each("zero", "4 kg on the empty pads, nobody asked", MANY, Setting(zero=4.0)),
    *_each("zero-event", "4 kg on the empty pads, once at an event", MANY, Setting(zero=4.0, event=True)),
    *_each("zero-said", "4 kg on the empty pads, not zeroed by the record", MANY, Setting(zero=4.0, asked=True)),
    *(each for kind, about, many in SLIPS for each in _each(_name(kind), about, many, Setting(slip=kind))),
)
SCENARIOS = {scenario.name: scenario for scenario in _ALL}
