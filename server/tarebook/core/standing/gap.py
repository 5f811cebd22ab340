"""The gap between two weigh-ins: what the scales found beside the jobs between them.

Both cars without fuel, driver and ballast, less the net of the jobs: what is left is what nobody wrote down, or an
error. On one scale its gain acts on the difference only, so a gap is known much better than a car.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from tarebook.core.garage.records import Warned, warned
from tarebook.core.ledger.net import JobNet
from tarebook.core.ledger.since import net_between, pieces_between
from tarebook.core.numbers.uncertain import Uncertain, beyond_doubt, weighted_sum
from tarebook.core.whole_car.weighed import Weighed, bare


@dataclass(frozen=True, slots=True)
class Gap:
    """What two weigh-ins say beside the jobs between them: `difference` kg more in the car than written down.

    `unweighed`: parts without a mass of which the car has more or fewer at the second; they count zero.
    """

    first: str
    second: str
    difference: Uncertain
    unweighed: tuple[str, ...]

    @property
    def significant(self) -> bool:
        """Beyond its own doubt."""
        return beyond_doubt(self.difference)


def gap_between(first: Weighed, second: Weighed, nets: Mapping[str, JobNet]) -> Gap | Warned:
    """What the later of two weigh-ins found beside the jobs between them; more in the car is positive."""
    before, after = bare(first), bare(second)
    if isinstance(before, dict):
        return before
    if isinstance(after, dict):
        return after
    for each in (first, second):
        if each.jobs is None:
            return warned("jobs_not_confirmed", weigh_in=each.record.id)
    then, now = first.jobs or (), second.jobs or ()
    written = net_between(now, then, nets)
    terms = (*after, *((item, -sign) for item, sign in before), (written, -1.0))
    difference = weighted_sum([item for item, _ in terms], [sign for _, sign in terms])
    moved = tuple(part for part, pieces in pieces_between(now, then, nets).items() if pieces)
    return Gap(first.record.id, second.record.id, difference, moved)


def gaps_in_order(weighed: Sequence[Weighed], nets: Mapping[str, JobNet]) -> tuple[Gap, ...]:
    """The gaps between consecutive weigh-ins, as far as they can be told; one that tells nothing is passed over."""
    telling = [each for each in weighed if each.jobs is not None and not isinstance(bare(each), dict)]
    found = [gap_between(a, b, nets) for a, b in pairwise(telling)]
    return tuple(gap for gap in found if isinstance(gap, Gap))
