"""What was weighed before: every weigh-in at the class's condition, and the car before any job was done to it."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from tarebook.core.garage.records import Garage, Warned, warned
from tarebook.core.ledger.net import JobNet
from tarebook.core.ledger.since import net_between
from tarebook.core.numbers.uncertain import Uncertain, subtract
from tarebook.core.weighing.weighing import Masses
from tarebook.core.whole_car.condition import Condition, at_condition
from tarebook.core.whole_car.weighed import Weighed


@dataclass(frozen=True, slots=True)
class Past:
    """A weigh-in: `total` as it was weighed, `weight` at the class's condition, kg, or the `reason` there is none."""

    weigh_in: str
    at: str | None
    trim: str
    official: bool
    total: Uncertain | None
    weight: Uncertain | None
    reason: Warned | None


@dataclass(frozen=True, slots=True)
class Start:
    """The car before any job, kg, by its `basis`.

    "weighed": the first weigh-in less its jobs, at the class's condition. "quoted": the book weight, its u unknown.
    """

    weight: Uncertain
    basis: str
    weigh_in: str | None


def past_of(garage: Garage, known: Masses, weighed: Weighed, condition: Condition) -> Past:
    record = weighed.record
    answer = _weight(garage, known, weighed, condition)
    return Past(
        weigh_in=record.id,
        at=record.at,
        trim=record.trim,
        official=bool(record.official),
        total=weighed.loads.total,
        weight=answer if isinstance(answer, Uncertain) else None,
        reason=None if isinstance(answer, Uncertain) else answer,
    )


def start_of(
    garage: Garage, known: Masses, nets: Mapping[str, JobNet], weighed: Sequence[Weighed], condition: Condition
) -> Start | Warned:
    """From the first weigh-in that tells it, else from the book as quoted, without a claim to accuracy."""
    for each in weighed:
        weight = _weight(garage, known, each, condition)
        if isinstance(weight, Uncertain) and each.jobs is not None:
            before = subtract(weight, net_between(each.jobs, (), nets))
            return Start(before, "weighed", each.record.id)
    book = garage.car.book_weight if garage.car else None
    return Start(Uncertain(book.value), "quoted", None) if book else warned("no_start")


def _weight(garage: Garage, known: Masses, weighed: Weighed, condition: Condition) -> Uncertain | Warned:
    whole = weighed.loads.total
    if whole is None:
        return warned("reading_missing", weigh_in=weighed.record.id)
    return at_condition(garage, weighed.record, whole, condition, known)
