"""What a thing weighs while nobody has weighed it: as somebody claims.

A claim is worked out, quoted or guessed, each a rectangle of stated half-width or of 5, 10, 20 % (the contingencies of
the ESA margin philosophy for off-the-shelf, modified and new items), and all guesses share a common bias. What this
garage's guesses and quotes have run off by, once enough of them were weighed, takes the place of both assumptions
(`lessons`). A claim whose half-width somebody stated says itself what its writer knows: it stands as typed.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from tarebook.core.garage.records import Driver, Part
from tarebook.core.numbers.uncertain import Uncertain, rectangular

CLAIM_WITHIN = {"worked_out": 0.05, "quoted": 0.10, "guessed": 0.20}
CLAIM_WITHIN_PERSON = {"worked_out": 0.03, "quoted": 0.03, "guessed": 0.08}  # people know: common practice, no source
GUESSES_SHARE = 0.05  # of each guess: people guess all too high or all too low; an assumption, no source
SHARED = {"guessed": "guesses", "quoted": "quotes"}
"""The bases that teach, each with the source that all its claims share: they run too low or too high together."""


@dataclass(frozen=True, slots=True)
class Lesson:
    """What claims of one basis have run off by, from `parts` of them that were weighed later.

    `bias`: of ln(claim ÷ mass), above zero where claims run high, ± `bias_u`; `spread`: the standard deviation of that
    logarithm from claim to claim. `factor`: mass ÷ claim when the bias is taken out, e^−bias.
    """

    basis: str
    parts: int
    bias: float
    bias_u: float
    spread: float
    factor: float


def basis_of(thing: Part | Driver) -> str:
    """How its claim is known; a claim without a basis is a guess."""
    return thing.claim_basis or "guessed"


def claimed(thing: Part | Driver, lessons: Mapping[str, Lesson] | None = None) -> tuple[Uncertain | None, str | None]:
    """The mass as claimed, less what `lessons` (by basis) says, and its basis; both None where nothing is claimed.

    What a person is said to weigh is known better than what a part is, and a guess of it has no bias of parts.
    """
    if thing.claim is None:
        return None, None
    basis, value = basis_of(thing), thing.claim.value
    lesson = lessons.get(basis) if lessons else None
    if lesson and not thing.claim_within and isinstance(thing, Part):
        value *= lesson.factor
        shares = {f"claim:{thing.id}": lesson.spread * value, SHARED[basis]: lesson.bias_u * value}
        return Uncertain(value, shares), basis
    is_person = isinstance(thing, Driver)
    share = (CLAIM_WITHIN_PERSON if is_person else CLAIM_WITHIN)[basis]
    within = thing.claim_within.value if thing.claim_within else share * value
    sources = {f"claim:{thing.id}": rectangular(within)}
    if basis == "guessed" and not is_person:
        sources["guesses"] = GUESSES_SHARE * value
    return Uncertain(value, sources), basis
