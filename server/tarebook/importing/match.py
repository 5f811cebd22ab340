"""Each line of a sheet against what imports brought before: new, the same again, or one of those corrected.

Lines about one thing, a part's name and its place, are compared with those that stand under the same name and place.
Equal ones are the same, in whatever order; of what remains, one after the other is a correction; the rest is new. What
a person has changed or deleted in the app since is not looked at: a line is compared with what imports said.
"""

from __future__ import annotations

import json
from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from itertools import count
from typing import Any

from tarebook.garage.author import Change
from tarebook.importing.earlier import Earlier
from tarebook.importing.line import Line
from tarebook.importing.records import Made, Place, identity, job_id, made_id, records_of
from tarebook.importing.stages import Stages

_WAYS = ("off", "on")
_LOOSE = {"claim_from", "part", "job", "of", "instead_of", "replaces", "car", "deleted"}
"""Fields that make no line another one: where it stood in its file, and what follows from the line's id."""

_SAID = {"count": "pieces", "claim_basis": "basis", "fitted_on": "date", "at": "date"}


@dataclass(frozen=True)
class Correction:
    """A line that corrects one taken in before. `was`: (field, former value, new value), for people."""

    line: Line
    job: str
    was: tuple[tuple[str, Any, Any], ...]


@dataclass
class Matched:
    """`new`: lines with the id of their job. `deleted`: those of `same` that a person has deleted in the app since."""

    new: list[tuple[Line, str]] = field(default_factory=list)
    corrected: list[Correction] = field(default_factory=list)
    same: list[Line] = field(default_factory=list)
    deleted: list[Line] = field(default_factory=list)


def match(lines: list[Line], earlier: Earlier, place: Place, stages: Stages, beside: bool) -> Matched:
    """`beside`: what would be a correction is another thing of the same name."""
    found = Matched()
    groups: dict[tuple[str, str], list[Line]] = defaultdict(list)
    for line in lines:
        groups[identity(line)].append(line)
    for about, group in groups.items():
        _match_group(found, _Group(about, group, earlier, place, stages), beside)
    found.new.sort(key=lambda item: item[0].number)
    found.corrected.sort(key=lambda correction: correction.line.number)
    return found


class _Group:
    """The lines about one thing, and the jobs that imports made of such lines."""

    def __init__(
        self, about: tuple[str, str], lines: list[Line], earlier: Earlier, place: Place, stages: Stages
    ) -> None:
        self.lines, self.earlier, self.place, self.stages = lines, earlier, place, stages
        ids = (job_id(about, number, place) for number in count())
        self.free = (name for name in ids if name not in earlier.deleted)
        taken = (job_id(about, number, place) for number in count())
        self.jobs: list[str] = []
        for name in taken:
            if name not in earlier.deleted:
                break
            if earlier.standing(name):
                self.jobs.append(name)

    def wanted(self, line: Line) -> dict[str, Made]:
        return wanted(line, "", self.place, self.stages.known(line.stage))


def _match_group(found: Matched, group: _Group, beside: bool) -> None:
    by_look: dict[str, list[str]] = defaultdict(list)
    for job in reversed(group.jobs):
        by_look[_look({role: fields for role, (_id, fields) in brought(job, group.earlier).items()})].append(job)
    left: list[Line] = []
    used: set[str] = set()
    for line in group.lines:
        jobs = by_look.get(_look({role: fields for role, (_kind, _id, fields) in group.wanted(line).items()}))
        if jobs:
            used.add(jobs[-1])
            found.same.append(line)
            found.deleted += [line] if group.earlier.deleted[jobs.pop()] else []
        else:
            left.append(line)
    others = [job for job in group.jobs if job not in used and not group.earlier.deleted[job] and not beside]
    for line, job in zip(left, others, strict=False):
        found.corrected.append(Correction(line, job, tuple(_was(line, job, group))))
    found.new += zip(left[len(others) :], group.free, strict=False)


def wanted(line: Line, job: str, place: Place, stage: str | None) -> dict[str, Made]:
    """The records of a line by their role in it."""
    roles = {made_id(job, way): way for way in _WAYS} | {made_id(job, way, "job"): f"{way} job" for way in _WAYS}
    weighed = {made_id(job, way, "weighing"): f"{way} weighing" for way in _WAYS}
    return {(roles | weighed).get(made[1], "job"): made for made in records_of(line, job, place, stage)}


def brought(job: str, earlier: Earlier) -> dict[str, tuple[str, Mapping[str, Any]]]:
    """(id, fields) of the records that imports made of a line, and that stand, by their role in it."""
    ids: dict[str, str | None] = {"job": job}
    for way in _WAYS:
        ids |= {way: made_id(job, way), f"{way} job": made_id(job, way, "job")}
        ids[f"{way} weighing"] = earlier.weighing(job, way)[0]
    found = {role: (name, earlier.standing(name)) for role, name in ids.items() if name}
    return {role: (name, record.fields) for role, (name, record) in found.items() if record}


def corrections(line: Line, job: str, place: Place, stage: str | None, earlier: Earlier) -> Iterator[Change]:
    """What turns the records that imports made of a line into this one. The base of every entry is only the imports'
    own, so that whatever a person has said since is not replaced but stands beside it, to be settled."""
    here = brought(job, earlier)
    now = wanted(line, job, place, stage)
    for role, (kind, record, fields) in now.items():
        old = here.get(role)
        if old and not _changes(role, fields, old[1]):
            continue
        if kind == "weighing":
            last, following = earlier.weighing(job, role.split()[0])
            yield Change(kind, following, {**fields, **({"replaces": last} if last else {})}, base=())
        elif old:
            kept = {name: fields.get(name) for name in {*fields, *old[1]} - {"deleted"}}
            changed = {name: value for name, value in kept.items() if value != old[1].get(name)}
            yield Change(kind, record, changed, base=(earlier.records[record].last,))
        elif record in earlier.deleted:
            yield Change(kind, record, {**fields, "deleted": False}, base=(earlier.records[record].last,))
        else:
            yield Change(kind, record, fields, base=())
    for role, (record, _fields) in here.items():
        if role not in now:
            yield Change(earlier.records[record].kind, record, {"deleted": True}, base=(earlier.records[record].last,))


def _was(line: Line, job: str, group: _Group) -> Iterator[tuple[str, Any, Any]]:
    """What is corrected, field by field."""
    here, now = brought(job, group.earlier), group.wanted(line)
    for role in dict.fromkeys((*now, *here)):
        old, new = here.get(role, ("", {}))[1], now[role][2] if role in now else {}
        for name in _changes(role, new, old):
            if not (role.endswith(" job") or (role in _WAYS and name in ("name", "whereabouts"))):
                yield (
                    _SAID.get(name, role.split()[0] if name in ("claim", "shown") else name),
                    old.get(name),
                    new.get(name),
                )


def _changes(role: str, new: Mapping[str, Any], old: Mapping[str, Any]) -> list[str]:
    return [name for name in dict.fromkeys((*old, *new)) if _counts(role, name) and old.get(name) != new.get(name)]


def _counts(role: str, name: str) -> bool:
    return name not in _LOOSE and not (name == "note" and role.endswith("weighing"))


def _look(roles: Mapping[str, Mapping[str, Any]]) -> str:
    """A text that is equal for equal lines."""
    plain = {
        role: {name: value for name, value in fields.items() if value is not None and _counts(role, name)}
        for role, fields in roles.items()
    }
    return json.dumps(plain, sort_keys=True)
