"""What the official scale is likely to show, and how much weight to keep in hand for it.

The official scale shows m·(1 + ĝ) rounded to its division. Its gain is not known better than anybody's, but if the
car was weighed on that very scale before, the gain is already in the weight and cancels in what it will show again:
both are sums over the same named sources, so the covariance takes care of itself. A gain that is a legal tolerance in
kilograms is taken at the minimum, where the answer is wanted, whatever was weighed before. A display that rounds to
nearest shows less than the minimum M when the load is half a division under M*, the first step at or above M:

    P(shown < M) = Φ((M* − d/2 − ŷ) / u)      rounding to nearest, division d
    P(shown < M) = Φ((M − ŷ) / u)             rule or division unknown

Beside u of the weight and of the gain, u has the scale's own repeatability: it will be a new look. Where the weigh-ins
leave more than one answer, P is the mean of these over the answers, each with its odds. "In hand" for a risk r is how
far above the minimum the weight must be for P to be r: the guard band of JCGM 106:2012, 8.3.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

from tarebook.core.fusion.mixture import CERTAIN, Spread, chance_below, value_for
from tarebook.core.garage.records import ClassSheet, Garage, WeighIn
from tarebook.core.numbers.uncertain import Uncertain, weighted_sum
from tarebook.core.weighing.trade_scale import platform_gain, whole_car_gain
from tarebook.core.weighing.weighing import Masses
from tarebook.core.whole_car.weigh_in import ASSUMED_REPEATABILITY, repeatability

_LAST_BITS = 1e-9  # of a division: a minimum that is a whole number of them stays one
_PASSES = 4  # each brings the guard about a thousand times nearer: u hardly depends on the weight


@dataclass(frozen=True, slots=True)
class OfficialScale:
    """`scale`: id of the scale of an earlier official weigh-in, or None when all is `assumed`. Masses in kg.

    `division`: None when unknown; `rounding`: "nearest" or "unknown".
    """

    scale: str | None
    gain: Uncertain
    repeatability: float
    division: float | None
    rounding: str


@dataclass(frozen=True, slots=True)
class OfficialReading:
    """`expected`: what the scale should show before rounding, kg. `chance_under`: that it shows less than the minimum.

    `in_hand`: what to keep above the minimum, kg, for `chance_under` to be no more than the risk asked for, in whole
    grams. `spread`: how what is shown spreads about `expected`, over all answers.
    """

    scale: OfficialScale
    expected: Uncertain
    chance_under: float
    in_hand: float
    spread: Spread


def official_scale(
    garage: Garage,
    known: Masses,
    sheet: ClassSheet | None,
    weigh_ins: Sequence[WeighIn],
    minimum: float,
) -> OfficialScale:
    """The scale of the last official weigh-in that names one, else an assumed platform.

    `weigh_ins` in order. `minimum` (kg): the load its gain is wanted at; the error keeps the name it has in the weight,
    so that the same scale's error cancels.
    """
    named = [record.scale for record in weigh_ins if record.official and record.scale]
    stated = sheet.scale_division.value if sheet and sheet.scale_division else None
    rounding = (sheet.scale_rounding if sheet else None) or "unknown"
    if not named:
        gain = platform_gain("cal:official", minimum, stated)
        return OfficialScale(None, gain, ASSUMED_REPEATABILITY["platform"], stated, rounding)
    model = known.scales[named[-1]]
    gain = whole_car_gain(garage, model, minimum, stated)
    return OfficialScale(model.id, gain, repeatability(garage, model), stated or model.division, rounding)


def official_reading(
    weight: Uncertain, minimum: float, official: OfficialScale, risk: float, spread: Spread = CERTAIN
) -> OfficialReading:
    """What the scale should show for a car of this weight, against a minimum (kg) and a risk between 0 and 1."""
    return OfficialReading(
        official,
        expected_reading(weight, official),
        chance_under(weight, minimum, official, spread),
        in_hand(weight, minimum, official, risk, spread),
        spread,
    )


def expected_reading(weight: Uncertain, official: OfficialScale) -> Uncertain:
    """What the official scale should show before rounding, kg."""
    reading = weighted_sum((weight, official.gain), (1.0 + official.gain.value, weight.value))
    through = weight.value * (1.0 + official.gain.value)
    return Uncertain(through, {**reading.sources, "rep:official": official.repeatability})


def weight_behind(reading: OfficialReading) -> Uncertain:
    """The weight a reading was foretold of, kg, with the doubt it then had; what is left of its own cancels."""
    gain, through = reading.scale.gain, 1.0 + reading.scale.gain.value
    weight = reading.expected.value / through
    without = weighted_sum((reading.expected, gain), (1.0 / through, -weight / through)).sources
    return Uncertain(weight, {name: part for name, part in without.items() if name != "rep:official"})


def threshold(minimum: float, official: OfficialScale) -> float:
    """The load (kg, as this scale feels it) under which it shows less than the minimum."""
    if official.rounding != "nearest" or not official.division:
        return minimum
    return ceil(minimum / official.division - _LAST_BITS) * official.division - 0.5 * official.division


def chance_under(weight: Uncertain, minimum: float, official: OfficialScale, spread: Spread = CERTAIN) -> float:
    """The probability that the official scale shows less than `minimum` kg."""
    reading = expected_reading(weight, official)
    return chance_below(threshold(minimum, official), reading.value, reading.u * reading.u, spread)


def in_hand(weight: Uncertain, minimum: float, official: OfficialScale, risk: float, spread: Spread = CERTAIN) -> float:
    """How far above the minimum (kg) the weight must be for `chance_under` to be no more than `risk`; whole grams up.

    0 < risk < 1; at this weight's doubt. Negative when the scale's rounding forgives more than the doubt asks for.
    """
    bare = threshold(minimum, official)
    mass = bare
    for _ in range(_PASSES):
        doubt = expected_reading(Uncertain(mass, weight.sources), official).u
        mass = value_for(bare, doubt * doubt, spread, risk) / (1.0 + official.gain.value)
    return ceil((mass - minimum) * 1000.0 - _LAST_BITS * 1000.0) / 1000.0
