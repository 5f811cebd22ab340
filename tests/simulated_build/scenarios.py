"""The scenarios of the simulated build, and what each is aimed to reach.

Every condition is built twice: with everything written down, and with two changes that nobody wrote down. What is not
modelled (a car that repeats worse than its scales' records say) has no aims: its figures say what is lost.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from tests.simulated_build.evidence import MIDDLE
from tests.simulated_build.world import Setting

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


@dataclass(frozen=True)
class Scenario:
    name: str
    about: str
    setting: Setting
    aims: Aims


NONE = Aims(covers=(0.94, 0.96), invents=(0.0, 0.05))
FEW = Aims(covers=(0.94, 0.98), invents=(0.0, 0.05), told=(0.0, 0.05))
TWO = Aims(covers=(0.93, 0.96), names_all=(0.90, 1.0))
_CONDITIONS = (
    ("plain", "", Setting()),
    ("repeats", ", cars repeat to 0.5 kg and the records say so", Setting(repeats=0.5, stated=0.5)),
    ("fuel", ", fuel known to ± 1 kg", Setting(fuel_within=1.0 / MIDDLE)),
    ("guesses", ", ten parts guessed", Setting(guessed=10)),
)
FEWER = (2, 4, 6)  # weigh-ins of a garage that does not weigh as often as the rest
LOST = Aims(ratio=None, shown_under=None)
_UNSAID = Setting(repeats=0.5, stated=0.1)


def _pair(name: str, about: str, setting: Setting, none: Aims = NONE, two: Aims = TWO) -> tuple[Scenario, Scenario]:
    return (
        Scenario(name, "nothing unlogged" + about, setting, none),
        Scenario(f"{name}-two", "two unlogged" + about, replace(setting, steps=2), two),
    )


_ALL = (
    *(scenario for condition in _CONDITIONS for scenario in _pair(*condition)),
    *(Scenario(f"plain-{n}", f"nothing unlogged, {n} weigh-ins", Setting(weigh_ins=n), FEW) for n in FEWER),
    Scenario("least-two", "two unlogged, each 4.3 u and no more", Setting(steps=2, most=4.3), TWO),
    *_pair("unsaid", ", repeat to 0.5 kg, records say 0.1", _UNSAID, LOST, LOST),
)
SCENARIOS = {scenario.name: scenario for scenario in _ALL}
