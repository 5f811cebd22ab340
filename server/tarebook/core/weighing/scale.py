"""How far a scale may be off: one look at its display, and its gain.

A scale shows s = (1 + g)·m, rounded to its division. The rounding of a look is a rectangle one division wide,
u = d/√12 (JCGM 100:2008, F.2.2.1), with the scale's own repeatability where somebody noted it or repeats show it
(`repeats`). The gain g is one error shared by every reading of that scale, `cal:<scale>`: it adds up over ten parts
instead of averaging out.

The gain comes from checks with known masses, ĝ = Σ k(s−k)/u² ÷ Σ k²/u²: least squares of s − k against k, so that the
heavy check decides. A known mass is an error of its own, `known:<its name>`, shared by every scale checked with it.
Without checks, or when the checks tell less than is assumed anyway, the gain is zero ± an assumption by kind of scale.
"""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from math import sqrt
from typing import TypeVar

from tarebook.core.garage.records import Garage, Scale, ScaleCheck, Warned, warned
from tarebook.core.numbers.plain import dot, plain_sum
from tarebook.core.numbers.quantity import Quantity
from tarebook.core.numbers.uncertain import Uncertain, rectangular
from tarebook.core.weighing.repeats import NONE, Scatter, repeats_to, scatters_on

T = TypeVar("T")

UNNAMED = ""
"""The scale of a weighing that names none: all of them count as one scale, since most often they are."""

# Relative standard uncertainty of the gain: common practice, no source.
ASSUMED_GAIN = {
    "kitchen": 0.003,
    "bench": 0.002,
    "hanging": 0.01,
    "bathroom": 0.01,
    "corner_pads": 0.002,
    "axle_pads": 0.005,
    "platform": 0.001,
}
ASSUMED_GAIN_UNNAMED = 0.02
FAR_OFF = 0.2  # a scale this far off is a slip of the finger or of the unit, not a gain
ASSUMED_KNOWN_WITHIN = 0.01  # of a known mass nobody said the tolerance of; common practice, no source


@dataclass(frozen=True, slots=True)
class ScaleModel:
    """What is known of one scale's errors. `gain` is relative; `division`, `repeatability`, `capacity` are kg.

    `assumed`: the gain is the assumption for its kind. `checks`: the checks that were used, by id; `checked`: when the
    last of them was made, as it was written. `repeatability` is as noted, 0 where nobody did; `of_parts` and `of_car`
    are what repeats on it show.
    """

    id: str
    gain: Uncertain
    assumed: bool
    division: float | None
    repeatability: float
    capacity: float | None
    checks: tuple[str, ...]
    warnings: tuple[Warned, ...]
    of_parts: Scatter = NONE
    of_car: Scatter = NONE
    checked: str | None = None

    @property
    def repeats(self) -> float:
        """Standard deviation (kg) of a part's reading on lifting it on again: as noted, with what repeats show."""
        return repeats_to(self.repeatability, 0.0, self.of_parts)

    def division_for(self, shown: Quantity) -> float:
        """The division in kg: the scale's own, else the place of the last digit typed."""
        return self.division if self.division is not None else shown.last_digit

    def look(self, shown: Quantity) -> float:
        """Standard uncertainty of one look at the display, kg."""
        division = self.division_for(shown)
        return sqrt(_square(division) / 12.0 + _square(self.repeats))


def scale_models(garage: Garage) -> dict[str, ScaleModel]:
    """The model of every scale of the garage by id, and of `UNNAMED`."""
    parts, car = scatters_on(garage)
    nobodys = Uncertain(0.0, {"cal:": ASSUMED_GAIN_UNNAMED})
    unnamed = ScaleModel(UNNAMED, nobodys, True, None, 0.0, None, (), (), parts.get("", NONE), car.get("", NONE))
    models = {
        key: scale_model(scale, garage.checks_of.get(key, []), parts.get(key, NONE), car.get(key, NONE))
        for key, scale in garage.scales.items()
    }
    return {**models, UNNAMED: unnamed}


def scale_model(
    scale: Scale, checks: Sequence[ScaleCheck], of_parts: Scatter = NONE, of_car: Scatter = NONE
) -> ScaleModel:
    """One scale from its record, its checks (in order of id), and what repeats on it show."""
    allowance = ASSUMED_GAIN[scale.kind]
    division = scale.division.value if scale.division else None
    repeatability = scale.repeatability.value if scale.repeatability else 0.0
    capacity = scale.capacity.value if scale.capacity else None
    gain = Uncertain(0.0, {f"cal:{scale.id}": allowance})
    bare = ScaleModel(scale.id, gain, True, division, repeatability, capacity, (), (), of_parts, of_car)
    near = [check for check in checks if abs(check.shown.value - check.known.value) <= FAR_OFF * check.known.value]
    slips = tuple(warned("check_far_off", scale=scale.id, check=check.id) for check in checks if check not in near)
    if not near:
        return replace(bare, warnings=slips)
    kept = distinct_looks(near, lambda each: (_known_source(each), each.known.value), lambda each: each.shown.value)
    gain, warnings = _gain_of(bare, kept)
    if gain.u > allowance:
        return replace(bare, warnings=(*slips, *warnings, warned("checks_too_rough", scale=scale.id)))
    used = tuple(check.id for check in near)
    checked = max((str(check.at) for check in near if check.at), default=None)
    return replace(bare, gain=gain, assumed=False, checks=used, warnings=(*slips, *warnings), checked=checked)


def distinct_looks(items: Iterable[T], load: Callable[[T], object], shows: Callable[[T], object]) -> list[T]:
    """One item for all looks at one load that show the same: they share their rounding, so looking again tells nothing.

    Once any of them differs, more than the rounding is at work and each look counts.
    """
    groups: dict[object, list[T]] = {}
    for item in items:
        groups.setdefault(load(item), []).append(item)
    kept: list[T] = []
    for group in groups.values():
        first = shows(group[0]) if len(group) > 1 else None
        kept.extend(group[:1] if all(shows(item) == first for item in group[1:]) else group)
    return kept


def _known_source(check: ScaleCheck) -> str:
    return f"known:{check.known_name or check.id}"


def _known_u(check: ScaleCheck) -> float:
    """Standard uncertainty of the known mass: a rectangle of the half-width stated, or assumed."""
    within = check.known_within.value if check.known_within else ASSUMED_KNOWN_WITHIN * check.known.value
    return rectangular(within)


def _gain_of(model: ScaleModel, checks: Sequence[ScaleCheck]) -> tuple[Uncertain, tuple[Warned, ...]]:
    """The weighted gain with its sources, and a warning when the checks contradict each other."""
    variances = [_square(model.look(check.shown)) + _square(_known_u(check)) for check in checks]
    gain, shares = _least_squares(checks, variances)
    looks = plain_sum(_square(share * model.look(check.shown)) for check, share in zip(checks, shares, strict=True))
    sources: dict[str, float] = {}
    for check, share in zip(checks, shares, strict=True):
        source = _known_source(check)
        sources[source] = sources.get(source, 0.0) - share * (1.0 + gain) * _known_u(check)
    ratio = _disagreement(model, checks, gain, variances)
    spread = (_square(ratio) - 1.0) * (looks + plain_sum(map(_square, sources.values())))
    estimate = Uncertain(gain, {f"cal:{model.id}": sqrt(looks + spread), **sources})
    return estimate, (warned("checks_disagree", scale=model.id, ratio=ratio),) if ratio > 1.0 else ()


def _least_squares(checks: Sequence[ScaleCheck], variances: Sequence[float]) -> tuple[float, list[float]]:
    """The gain, and the share each check's error s − k has in it."""
    weighed = list(zip(checks, variances, strict=True))
    weight = plain_sum(check.known.value * check.known.value / variance for check, variance in weighed)
    shares = [check.known.value / variance / weight for check, variance in weighed]
    return dot(shares, [check.shown.value - check.known.value for check in checks]), shares


def _disagreement(model: ScaleModel, checks: Sequence[ScaleCheck], gain: float, variances: Sequence[float]) -> float:
    """The Birge ratio when a check is off the fitted line by more than a division, else 1."""
    off = [check.shown.value - check.known.value * (1.0 + gain) for check in checks]
    chi_squared = plain_sum(_square(each) / variance for each, variance in zip(off, variances, strict=True))
    beyond = any(abs(each) > model.division_for(check.shown) for check, each in zip(checks, off, strict=True))
    return sqrt(max(1.0, chi_squared / (len(checks) - 1))) if beyond and len(checks) > 1 else 1.0


def _square(x: float) -> float:
    # Not **: powers may differ by a digit between the languages, products do not.
    return x * x
