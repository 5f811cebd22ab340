"""What this garage's guesses and quotes have run off by: learned from the parts that were weighed later.

Each such part tells x = ln(claim ÷ weighed mass): above zero where the claim was high, the same size for twice and for
half. The x of one basis are taken as normal, of unknown mean (the bias) and unknown variance, with the conjugate prior
(normal-inverse-χ²: Gelman et al., Bayesian Data Analysis, 3rd ed., 3.3; Murphy 2007, Conjugate Bayesian analysis of the
Gaussian distribution, 5):

    bias     m = n·x̄ ÷ (κ + n)                                          prior mean 0
    spread²  v = (w·s² + Σ(x − x̄)² + κ·n ÷ (κ + n)·x̄²) ÷ (w + n)        s: what is assumed without a lesson
    bias_u²    = v ÷ (κ + n)

v is the posterior mean of the variance with w + 2 degrees of freedom before, so both are the variances of Student's t
and need no factor of their own. κ = 1, the prior that tells as much as one part does (Kass and Wasserman 1995);
w = 4 parts: common practice, no source. With the κ of 5.3 that the 5 % assumed of guesses would ask for, a third of a
bias of 20 % stayed in after twelve parts, and 95 % intervals held 89 % instead of 92 %; honest guessers 94 % in both.

One claim that is off by a factor of ten is a slip of its own and tells nothing of the others: what lies further from
the median than three robust standard deviations is left out (the Hampel identifier: Davies and Gather 1993, JASA 88,
782), with 1.4826 median deviations for one, and never less than is assumed.

The mass is claim ÷ e^m, the median; the mean of a lognormal lies v/2 above, 1 % at a spread of 15 %, less than its
doubt. The scales' errors, a few per mille to 2 %, are small beside a guess's and count as scatter; a weighing too rough
for that is left out. Drivers teach nothing: what people weigh is known in another way.
"""

from collections.abc import Iterable, Mapping, Sequence
from math import exp, floor, log, sqrt
from statistics import median

from tarebook.core.garage.records import Garage, Part
from tarebook.core.numbers.plain import dot, plain_sum
from tarebook.core.numbers.uncertain import Uncertain, rectangular
from tarebook.core.weighing.claims import CLAIM_WITHIN, SHARED, Lesson, basis_of

# With fewer, the prior has as much say as the garage; nothing is learned then, for what is done is said.
LEAST = 3
_BIAS_WEIGHT = 1.0  # κ, parts
_SPREAD_WEIGHT = 4.0  # w, parts
_FAR = 3.0  # robust standard deviations
_OF_MEDIAN = 1.4826  # a standard deviation in median deviations from the median, of normal numbers
_ROUGH = 0.5  # of the spread assumed: a weighing less sure than that tells nothing of a claim


def learns(garage: Garage) -> bool:
    """Whether claims are corrected by what they have run off by: unless the garage says that they count as typed."""
    own = next(iter(garage.garages.values()), None)
    return own is None or own.claims != "typed"


def lessons(parts: Iterable[Part], weighed: Mapping[str, Uncertain]) -> dict[str, Lesson]:
    """By basis, what there is to learn. `weighed`: the mass of one piece, kg, of every part that was weighed, by id."""
    off: dict[str, list[float]] = {basis: [] for basis in SHARED}
    for part in parts:
        mass, basis = weighed.get(part.id), basis_of(part)
        # A stated half-width is its writer's own word on a claim, and the others are not judged by it.
        if part.claim and not part.claim_within and mass and basis in off and not _is_rough(mass, basis):
            off[basis].append(log(part.claim.value / mass.value))
    return {basis: lesson for basis, found in off.items() if (lesson := learned(basis, found))}


def _is_rough(mass: Uncertain, basis: str) -> bool:
    return mass.u > _ROUGH * rectangular(CLAIM_WITHIN[basis]) * mass.value


def learned(basis: str, off: Sequence[float]) -> Lesson | None:
    """What claims of one basis teach, from ln(claim ÷ mass) of each; None of fewer than `LEAST` that are sound."""
    assumed = rectangular(CLAIM_WITHIN[basis])
    sound = _without_slips(off, assumed)
    parts = len(sound)
    if parts < LEAST:
        return None
    mean = plain_sum(sound) / parts
    around = [x - mean for x in sound]
    weight = _BIAS_WEIGHT + parts
    pulled = _BIAS_WEIGHT * parts / weight * mean * mean
    variance = (_SPREAD_WEIGHT * assumed * assumed + dot(around, around) + pulled) / (_SPREAD_WEIGHT + parts)
    bias = parts * mean / weight
    figures = (bias, sqrt(variance / weight), sqrt(variance), exp(-bias))
    return Lesson(basis, parts, *map(_to_a_billionth, figures))


def _without_slips(off: Sequence[float], assumed: float) -> list[float]:
    if not off:
        return []
    middle = median(off)
    far = _FAR * max(assumed, _OF_MEDIAN * median(abs(x - middle) for x in off))
    return [x for x in off if abs(x - middle) <= far]


def _to_a_billionth(figure: float) -> float:
    """Logarithms differ between languages in their last digit; masses made with these do not."""
    return floor(figure * 1e9 + 0.5) / 1e9
