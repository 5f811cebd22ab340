"""Which of several records of one fact counts: the first one, its corrections, and their corrections in turn.

Two phones that correct the same fact without having seen each other leave rivals, which are looks at one display and no
more than one of them: exactly one counts, the latest by id, and the rest are told.
"""

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass


@dataclass(frozen=True)
class Corrected:
    """A fact that was corrected. `rivals`: those that no standing correction replaces, the one that counts last."""

    all: tuple[str, ...]  # every record of it, withdrawn ones among them, each after what it replaces
    rivals: tuple[str, ...]

    @property
    def counts(self) -> str:
        return self.rivals[-1]


def corrected(older: Mapping[str, str], standing: Collection[str]) -> list[Corrected]:
    """The facts that have a correction and a record that stands.

    `older`: a correction, withdrawn or not → what it replaces. `standing`: the ids that are not withdrawn.
    """
    newer: dict[str, list[str]] = defaultdict(list)
    for correction, of in older.items():
        newer[of].append(correction)
    firsts = [of for of in newer if of not in older]
    told: set[str] = set()
    facts = []
    for first in [*firsts, *older]:  # the latter for those that replace each other in a circle, which have no first
        whole = _from(first, newer, told)
        rivals = _rivals(whole, newer, standing)
        if rivals:
            facts.append(Corrected(tuple(whole), tuple(sorted(rivals))))
    return facts


def _from(first: str, newer: Mapping[str, Iterable[str]], told: set[str]) -> list[str]:
    whole: list[str] = []
    ahead = [first]
    for each in ahead:  # grows while it is walked
        if each not in told:
            told.add(each)
            whole.append(each)
            ahead.extend(newer.get(each, ()))
    return whole


def _rivals(whole: list[str], newer: Mapping[str, Iterable[str]], standing: Collection[str]) -> list[str]:
    has_newer: set[str] = set()  # what it has stands in its place, itself or by a correction of it
    rivals = []
    for each in reversed(whole):
        below = any(correction in has_newer for correction in newer.get(each, ()))
        if each in standing and not below:
            rivals.append(each)
        if each in standing or below:
            has_newer.add(each)
    return rivals
