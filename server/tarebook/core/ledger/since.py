"""What was done between two lists of jobs, and what it weighs.

"Since a weigh-in" is the difference of two lists, the jobs in the car now and the jobs stored with the weigh-in; no
clock decides it. The net of what was done is one sum over its lines, so that a part put on and one taken off share what
their weighings share, and a part taken off and put back nets to nothing.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from tarebook.core.ledger.net import JobNet
from tarebook.core.numbers.uncertain import Uncertain, weighted_sum


@dataclass(frozen=True, slots=True)
class Since:
    """What was done since the last weigh-in that counts: jobs `put_in` (fitted) and `taken_out` (undone), by id.

    `changes`: kg by job, as it changed the car; `net`: their sum. `unweighed`: parts among them that count zero;
    `unweighed_out`: those of which the car has fewer than at the weigh-in, `unweighed_in`: more.
    """

    weigh_in: str
    put_in: tuple[str, ...]
    taken_out: tuple[str, ...]
    changes: dict[str, Uncertain]
    net: Uncertain
    unweighed: tuple[str, ...]
    unweighed_out: tuple[str, ...]
    unweighed_in: tuple[str, ...]


def since_weigh_in(weigh_in: str, then: Sequence[str], now: Sequence[str], nets: Mapping[str, JobNet]) -> Since:
    """The difference of two lists of jobs, and what it weighs."""
    signs = _signs(now, then)
    changes = {job: weighted_sum((nets[job].total.mass.net,), (sign,)) for job, sign in signs.items()}
    moved = pieces_between(now, then, nets)
    return Since(
        weigh_in=weigh_in,
        put_in=tuple(job for job, sign in signs.items() if sign > 0.0),
        taken_out=tuple(job for job, sign in signs.items() if sign < 0.0),
        changes=changes,
        net=net_between(now, then, nets),
        unweighed=tuple(moved),
        unweighed_out=tuple(part for part, pieces in moved.items() if pieces < 0),
        unweighed_in=tuple(part for part, pieces in moved.items() if pieces > 0),
    )


def net_between(now: Sequence[str], then: Sequence[str], nets: Mapping[str, JobNet]) -> Uncertain:
    """Net of the jobs of one list less that of the other, kg, as one sum: what the two have in common cancels."""
    lines = [(line.mass, sign) for job, sign in _signs(now, then).items() for line in nets[job].lines if line.mass]
    return weighted_sum([mass for mass, _ in lines], [sign for _, sign in lines])


def pieces_between(now: Sequence[str], then: Sequence[str], nets: Mapping[str, JobNet]) -> dict[str, int]:
    """Parts without a mass → how many pieces more of it the one list has, in order of id; put off and back on, 0."""
    pieces: dict[str, int] = {}
    lines = [(line, sign) for job, sign in _signs(now, then).items() for line in nets[job].lines if line.mass is None]
    for line, sign in lines:
        more = line.count if (line.way == "on") == (sign > 0) else -line.count
        pieces[line.part] = pieces.get(line.part, 0) + more
    return dict(sorted(pieces.items()))


def _signs(now: Sequence[str], then: Sequence[str]) -> dict[str, float]:
    """Jobs of one list only: +1 those put in, in the order of now, then −1 those taken out."""
    has, had = set(now), set(then)
    return {**{job: 1.0 for job in now if job not in had}, **{job: -1.0 for job in then if job not in has}}
