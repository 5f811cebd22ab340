"""What the product says went wrong, held against what did, and against how often anybody could be right.

`right` and the calibration take causes as pairs of (kind of slip, odds); a product that tells no odds has None there.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from tarebook.core.standing.estimate import Fused
from tests.simulated_build.naming import named_of
from tests.simulated_build.share import Share, lines

Causes = tuple[tuple[str, float | None], ...]
AMONG = 3
BINS = (0.0, 0.2, 0.4, 0.6, 0.8, 1.0)
# What the product calls a kind of slip → what it is called here. What is not here is a kind nobody slips by.
KINDS = {
    "put_in": "unlogged",
    "taken_out": "unlogged",
    "unwritten": "unlogged",
    "job_list": "wrong_side",
    "scale_changed": "other_scale",
    "wrong_scale": "other_scale",
    "somebody_in": "somebody",
    "driver_missing": "somebody",
    "person": "somebody",
    "fuel_misread": "fuel",
    "not_zeroed": "zero",
    "tare": "container",
    "put_back": "part_off",
}
NOTHING = "chance"  # no slip at all
SCORE = ("what went wrong", "runs", "told there", "first", "among three", "could be first", "could be among three")
CALIBRATION = ("told at", "causes", "on average", "true", "could be told", "on average", "true")


@dataclass(frozen=True)
class Blamed:
    """Of a run: the `slip` that was made; `told`: the causes of what is named where it shows, None when nothing is.

    `ceiling`: the odds of every kind by Bayes' rule, the likeliest first.
    """

    slip: str
    told: Causes | None
    ceiling: Causes

    def right(self, causes: Causes | None, among: int) -> bool:
        return self.slip in [kind for kind, _ in causes or ()][:among]


def told_of(fused: Fused, gaps: Sequence[int]) -> Causes | None:
    """The causes of the largest change that is named where a slip shows; of one kind together, in order."""
    there = [
        change for change, name in zip(fused.changes, named_of(fused), strict=True) if not name.within.isdisjoint(gaps)
    ]
    if not there:
        return None
    largest = max(there, key=lambda change: abs(change.size.value))
    kinds: dict[str, float | None] = {}
    for cause in largest.causes:
        code, odds = (cause, None) if isinstance(cause, str) else (cause.code, cause.odds)
        kind = KINDS.get(code, code)
        if code != NOTHING:
            kinds[kind] = odds if odds is None else (kinds.get(kind) or 0.0) + odds
    return tuple(kinds.items())


def score(blamed: Sequence[Blamed]) -> str:
    """A line for each kind of slip and one for all: how often it is told first and among three, and could be."""
    kinds = sorted({each.slip for each in blamed})
    groups = [(kind, [each for each in blamed if each.slip == kind]) for kind in kinds]
    return lines(SCORE, [_row(kind, each) for kind, each in (*groups, ("any", blamed))])


def _row(kind: str, blamed: Sequence[Blamed]) -> tuple[str, ...]:
    def share(hits: Iterable[bool]) -> str:
        return str(Share(sum(hits), len(blamed)))

    return (
        kind,
        f"{len(blamed):,}",
        share(each.told is not None for each in blamed),
        share(each.right(each.told, 1) for each in blamed),
        share(each.right(each.told, AMONG) for each in blamed),
        share(each.right(each.ceiling, 1) for each in blamed),
        share(each.right(each.ceiling, AMONG) for each in blamed),
    )


def calibration(blamed: Sequence[Blamed]) -> str:
    """Of the causes told with odds in a range: how many, their mean odds, and how many are true; and could be."""
    rows = []
    for low, high in pairwise(BINS):
        mine = _told_at(low, high, [(each.slip, each.told or ()) for each in blamed])
        best = _told_at(low, high, [(each.slip, each.ceiling) for each in blamed])
        rows.append((f"{100 * low:.0f} to {100 * high:.0f} %", *mine, *best))
    return lines(CALIBRATION, rows)


def _told_at(low: float, high: float, told: Iterable[tuple[str, Causes]]) -> tuple[str, str, str]:
    held = [
        (odds, kind == slip)
        for slip, causes in told
        for kind, odds in causes
        if odds is not None and (low <= odds < high or odds == high == BINS[-1])
    ]
    if not held:
        return "0", "", ""
    return (
        f"{len(held):,}",
        f"{100 * sum(odds for odds, _ in held) / len(held):.0f} %",
        str(Share(sum(true for _, true in held), len(held))),
    )
