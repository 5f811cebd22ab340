"""The search for causes: every single slip the records could hide, tried against what does not fit.

Each slip has its likelihood from all looks (`core/causes/looks`), so that its size and its place both count, and its
odds beforehand (`core/causes/priors`). What is told are kinds of slip, each with the odds of all its instances, and
the likeliest instances of it: three lines are three different stories. Nothing is accused: a spare wheel and a misread
tank of one size are the same to a scale.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from tarebook.core.causes.looks import Fit, Looks, Matrix
from tarebook.core.causes.of_jobs import try_jobs
from tarebook.core.causes.of_weigh_ins import try_weigh_ins
from tarebook.core.causes.of_weighings import try_weighings
from tarebook.core.causes.priors import PRIORS, UNSPECIFIC
from tarebook.core.causes.slip import Slip, Tried
from tarebook.core.causes.trail import Trail
from tarebook.core.fusion.evidence import Evidence
from tarebook.core.fusion.fusion import Fusion
from tarebook.core.garage.records import Garage
from tarebook.core.ledger.net import JobNet
from tarebook.core.numbers.plain import plain_sum
from tarebook.core.weighing.weighing import Masses

_LINES, _INSTANCES = 3, 3
_LEAST = 0.05  # what is less likely is not told


@dataclass(frozen=True, slots=True)
class Likely:
    """One slip and its odds."""

    slip: Slip
    odds: float


@dataclass(frozen=True, slots=True)
class Cause:
    """A kind of slip (`code`) with its odds, 0 to 1, against all others and none. `likely`: its likeliest instances."""

    code: str
    odds: float
    likely: tuple[Likely, ...]


@dataclass(frozen=True, slots=True)
class Asked:
    """What the search reads beside what the looks tell. `now`: the jobs in the car now."""

    garage: Garage
    known: Masses
    nets: Mapping[str, JobNet]
    now: Sequence[str]

    def trail(self, evidence: Evidence) -> Trail:
        lists = (*(frozenset(each.jobs or ()) for each in evidence.counted), frozenset(self.now))
        return Trail(self.garage, self.known, self.nets, evidence, lists)


def causes(asked: Asked, fusion: Fusion, told: Matrix) -> tuple[Cause, ...]:
    """The likeliest kinds of slip, at most three, and "chance" among them.

    `told`: what the looks tell beside their mean and what else is named.
    """
    return told_of(every_odds(asked, fusion, told))


def causes_of_all(asked: Asked, fusion: Fusion, told: Matrix) -> tuple[Cause, ...] | None:
    """The same of all that is named together, where without the likeliest single slip nothing would stand out."""
    looks, tried = Looks(told, fusion.values), every_slip(asked, fusion, told)
    return told_of(tried.odds()) if looks.without(tried.likeliest()).name_nothing() else None


def every_odds(asked: Asked, fusion: Fusion, told: Matrix) -> dict[Slip, float]:
    """The odds of every slip that says anything, and of none ("chance"); together one."""
    return every_slip(asked, fusion, told).odds()


def every_slip(asked: Asked, fusion: Fusion, told: Matrix) -> Tried:
    """Every slip the records could hide, with how well it explains the looks."""
    trail, looks, tried = asked.trail(fusion.evidence), Looks(told, fusion.values), Tried()
    tried.add(Fit(0.0, looks.singles[-1], 0.0), "chance", {})
    for each in (try_weigh_ins, try_weighings, try_jobs):
        each(trail, looks, tried)
    return tried


def told_of(odds: Mapping[Slip, float]) -> tuple[Cause, ...]:
    by_code: dict[str, list[Likely]] = {}
    for slip, each in odds.items():
        by_code.setdefault(slip.code, []).append(Likely(slip, each))
    kinds = [
        Cause(code, plain_sum(each.odds for each in likely), _likeliest(likely)) for code, likely in by_code.items()
    ]
    order = list(PRIORS)
    kinds.sort(key=lambda cause: (-_graded(cause.odds), order.index(cause.code)))
    slips = [cause for cause in kinds if cause.code != "chance"][:_LINES]
    return tuple(cause for cause in kinds if cause.odds >= _LEAST and (cause.code == "chance" or cause in slips))


def _likeliest(likely: list[Likely]) -> tuple[Likely, ...]:
    ordered = sorted(likely, key=lambda each: -_graded(each.odds))
    return tuple(each for each in ordered[:_INSTANCES] if each.odds >= _LEAST or each is ordered[0])


def _graded(odds: float) -> int:
    """For an order that does not hang on the last digit."""
    return int(odds * 1e9)


def is_explained(found: Sequence[Cause]) -> bool:
    """Whether something that a record tells of is the likeliest."""
    return bool(found) and found[0].code not in UNSPECIFIC
