"""What was written down, as the search for slips reads it: the weigh-ins that count, and which jobs were in the car.

A job or part has a course: what was in the car of it at each look and now. An error of one kilogram in it moves a look
by what the car has of it now less what it had then.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from tarebook.core.causes.looks import Shape
from tarebook.core.fusion.evidence import Evidence
from tarebook.core.garage.records import Garage
from tarebook.core.ledger.net import JobNet, Line
from tarebook.core.weighing.weighing import Masses
from tarebook.core.whole_car.weighed import Weighed

Course = tuple[int, ...]


@dataclass(frozen=True)
class Trail:
    """`counted`: the weigh-ins that count, in order; `lists`: the jobs in the car at each of them, and now."""

    garage: Garage
    known: Masses
    nets: Mapping[str, JobNet]
    evidence: Evidence
    lists: tuple[frozenset[str], ...]

    @property
    def counted(self) -> tuple[Weighed, ...]:
        return self.evidence.counted

    @cached_property
    def jobs(self) -> dict[str, Course]:
        """Jobs that were in the car at any look or are now, in order of id: one while there, else nothing."""
        every = sorted(frozenset[str]().union(*self.lists))
        return {job: tuple(int(job in each) for each in self.lists) for job in every if job in self.nets}

    @cached_property
    def lines(self) -> list[Line]:
        """The lines of these jobs that have a mass."""
        return [line for job in self.jobs for line in self.nets[job].lines if line.mass is not None]

    @cached_property
    def coming(self) -> frozenset[str]:
        """Parts that some job puts on."""
        return frozenset(line.part for net in self.nets.values() for line in net.lines if line.way == "on")

    @cached_property
    def pieces(self) -> dict[str, Course]:
        """Parts with a mass that such jobs move: pieces more in the car than before any job."""
        found: dict[str, list[int]] = {}
        for line in self.lines:
            signed = line.count if line.way == "on" else -line.count
            course = found.setdefault(line.part, [0] * len(self.lists))
            for at, there in enumerate(self.jobs[line.job]):
                course[at] += signed * there
        return {part: tuple(course) for part, course in found.items()}


def moved(course: Sequence[int]) -> Shape:
    """How an error of one kilogram in each piece of a course moves the looks."""
    *then, now = course
    return tuple(float(now - each) for each in then)
