"""A garage as it would be with one weighing, check or weigh-in more that comes out as expected.

What is expected is what is believed now: the car at its weight, a scale with the gain it is believed to have today and
the zero the weigh-ins tell of. So nothing moves but the doubt, and that is what one who asks wants to know.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from tarebook.core.fusion.behaviour import Group, groups
from tarebook.core.fusion.believed import believed, zero_believed
from tarebook.core.fusion.evidence import Evidence, evidence
from tarebook.core.fusion.fusion import Fusion, fused
from tarebook.core.garage.records import Garage, ScaleCheck, WeighIn, Weighing
from tarebook.core.numbers.quantity import Quantity, read, read_mass
from tarebook.core.numbers.uncertain import Uncertain, total, weighted_sum
from tarebook.core.standing.given import Given, given_by
from tarebook.core.weighing.scale import ScaleModel
from tarebook.core.weighing.trade_scale import ASSUMED_DIVISION
from tarebook.core.weighing.weighing import masses
from tarebook.core.whole_car.ready import UNREADY
from tarebook.core.whole_car.weigh_in import LOOKS

NEXT = "next"
READY = ("zeroed", *UNREADY)
FUEL_WITHIN = "0.5 L"  # of a tank filled to the mark or drained: common practice, no source
_LAYOUTS = {"corner_pads": "corners", "axle_pads": "axles"}
_STEPS = {"kitchen": 0.001, "bench": 0.01, "hanging": 0.02, "bathroom": 0.1}  # kg, where nobody noted any


@dataclass(frozen=True, slots=True)
class Asked:
    """A garage on a `day` (a date) with the fusion of all its weigh-ins, and what that was made from."""

    given: Given
    fusion: Fusion
    among: tuple[Group, ...]
    risk: float
    day: str

    @property
    def garage(self) -> Garage:
        return self.given.garage


def asked(garage: Garage, day: str, risk: float, class_sheet: str | None = None) -> Asked | None:
    """None while no weigh-in counts."""
    known = masses(garage)
    given = given_by(garage, known, class_sheet)
    looks = evidence(given.weighed, given.now, given.nets, given.condition)
    if not isinstance(looks, Evidence):
        return None
    among = groups(garage, known.scales, looks.counted)
    return Asked(given, fused(looks, among, risk), among, risk, day)


def doubt_with(now: Asked, garage: Garage) -> float:
    """The standard uncertainty (kg) that the weight would have in this garage."""
    sheet = now.given.sheet
    then = asked(garage, now.day, now.risk, sheet.id if sheet else None)
    return then.fusion.weight.u if then else now.fusion.weight.u


def with_weigh_in(now: Asked, scale: str | None, first: Sequence[str], check: ScaleCheck | None = None) -> Garage:
    """One more weigh-in. `scale` None: a platform nobody knows. `first`: what is seen to before; `check`: made then."""
    if check:
        now = replace(now, given=replace(now.given, garage=with_check(now, check)))
    counted = now.fusion.evidence.counted
    last = counted[-1].record
    on_it = [each.record for each in counted if each.record.scale == scale] if scale else []
    ready = on_it[-1].ready if on_it else last.ready
    if "zeroed" in first:
        ready = (*dict.fromkeys((*(ready or READY), "zeroed")),)
    record = replace(
        last,
        id=NEXT,
        at=max(now.day, last.at or ""),
        scale=scale,
        official=scale is None,
        ready=ready,
        jobs=now.given.now.jobs,
        ballast=_ballast(now, last),
        fuel_within=read("volume", FUEL_WITHIN) if "fuel" in first else last.fuel_within,
    )
    return _weighed(now, record, "zeroed" in (ready or ()))


def _weighed(now: Asked, record: WeighIn, zeroed: bool) -> Garage:
    """With the readings the scale is expected to show."""
    garage, last = now.garage, now.fusion.evidence.counted[-1].aboard
    named = garage.scales.get(record.scale or "")
    layout = _LAYOUTS.get(named.kind, "total") if named else "total"
    aboard = [each for each in (last.fuel, last.driver) if each]
    ballast = Uncertain(record.ballast.value if record.ballast else 0.0)
    car = weighted_sum((now.fusion.weight, now.fusion.evidence.target, total([*aboard, ballast])), (1.0, -1.0, 1.0))
    shown = car.value
    if named:
        shown = car.value * (1.0 + gain_on(now, named.id)) + (
            0.0 if zeroed else zero_believed(now.fusion, now.among, named.id)
        )
    step = (now.given.known.scales[named.id].division if named else None) or ASSUMED_DIVISION
    looks = LOOKS[layout]
    read = {name: _shown(shown / len(looks), step) for name in looks}
    bare = dict.fromkeys(("lf", "rf", "lr", "rr", "front", "rear", "total"))
    whole = replace(record, layout=layout, **{**bare, **read})  # type: ignore[arg-type]
    return replace(garage, weigh_ins={**garage.weigh_ins, NEXT: whole})


def with_check(now: Asked, like: ScaleCheck) -> Garage:
    """The scale of this check checked today with its known mass, as its display shows it."""
    garage, model = now.garage, now.given.known.scales[like.scale]
    step = step_of(now, model)
    shown = round(like.known.value * (1.0 + gain_on(now, like.scale)) / step) * step
    check = replace(like, id=NEXT, shown=_shown(shown, step), at=now.day)
    checks = {**garage.checks_of, like.scale: [*garage.checks_of.get(like.scale, []), check]}
    return replace(garage, checks_of=checks)


def with_weighing(now: Asked, of: str, scale: str, mass: float) -> Garage:
    """A part or a driver weighed on this scale: it weighs what it was held to."""
    garage, model = now.garage, now.given.known.scales[scale]
    shown = _shown(mass * (1.0 + model.gain.value), step_of(now, model))
    look = Weighing(NEXT, of, "direct", shown, None, None, None, scale, None, now.day)
    return replace(garage, weighings_of={**garage.weighings_of, of: [*garage.weighings_of.get(of, []), look]})


def step_of(now: Asked, model: ScaleModel) -> float:
    """The steps of a scale, kg; of one nobody noted as its kind most often has."""
    return model.division or _STEPS.get(now.garage.scales[model.id].kind, ASSUMED_DIVISION)


def gain_on(now: Asked, scale: str) -> float:
    """The gain a scale is believed to have that day."""
    ageing = believed(now.garage, now.given.known, now.fusion, now.among, scale, now.day)
    return ageing.beliefs[-1].gain


def _ballast(now: Asked, last: WeighIn) -> Quantity | None:
    known = now.given.now.ballast
    return last.ballast if known is None else _shown(known.value, 0.001)


def _shown(kg: float, step: float) -> Quantity:
    """A display that shows so much, to more digits than it has."""
    return replace(read_mass(f"{max(kg, 0.0):.6f} kg"), last_digit=step)
