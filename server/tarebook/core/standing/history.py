"""What was weighed before: every weigh-in at the class's condition, and the car before any job was done to it."""

from dataclasses import dataclass

from tarebook.core.garage.records import Warned, warned
from tarebook.core.ledger.since import net_between
from tarebook.core.numbers.uncertain import Uncertain, subtract
from tarebook.core.standing.foretold import Foretold, foretold_of
from tarebook.core.standing.given import Given
from tarebook.core.whole_car.condition import Condition, at_condition
from tarebook.core.whole_car.weighed import Weighed


@dataclass(frozen=True, slots=True)
class Past:
    """A weigh-in: `total` as it was weighed, `weight` at the class's condition, kg, or the `reason` there is none.

    `foretold`: what became of the word given before an official one.
    """

    weigh_in: str
    at: str | None
    trim: str
    official: bool
    total: Uncertain | None
    weight: Uncertain | None
    reason: Warned | None
    foretold: Foretold | None


@dataclass(frozen=True, slots=True)
class Start:
    """The car before any job, kg, by its `basis`.

    "weighed": the first weigh-in less its jobs, at the class's condition. "quoted": the book weight, its u unknown.
    """

    weight: Uncertain
    basis: str
    weigh_in: str | None


def past_of(weighed: Weighed, condition: Condition) -> Past:
    record = weighed.record
    answer = at_condition(weighed.loads.total, weighed.aboard, condition)
    return Past(
        weigh_in=record.id,
        at=record.at,
        trim=record.trim,
        official=bool(record.official),
        total=weighed.loads.total,
        weight=answer if isinstance(answer, Uncertain) else None,
        reason=None if isinstance(answer, Uncertain) else answer,
        foretold=foretold_of(record, weighed.loads),
    )


def start_of(given: Given) -> Start | Warned:
    """From the first weigh-in that tells it, else from the book as quoted, without a claim to accuracy."""
    for each in given.weighed:
        weight = at_condition(each.loads.total, each.aboard, given.condition)
        if isinstance(weight, Uncertain) and each.jobs is not None:
            before = subtract(weight, net_between(each.jobs, (), given.nets))
            return Start(before, "weighed", each.record.id)
    car = given.garage.car
    book = car.book_weight if car else None
    return Start(Uncertain(book.value), "quoted", None) if book else warned("no_start")
