"""What jobs took off and put on, as the plain sum of what the displays showed."""

from collections.abc import Iterable

from tarebook.core.garage.records import Garage, Weighing
from tarebook.core.ledger.ledger import Ledger
from tarebook.core.ledger.net import Line
from tarebook.core.numbers.sum_as_read import Term, sum_as_read


def jobs_as_read(garage: Garage, book: Ledger, jobs: Iterable[str]) -> str | None:
    """Of several jobs together, as `as_read`."""
    return as_read(garage, (line for job in jobs for line in book.jobs[job].lines))


def as_read(garage: Garage, lines: Iterable[Line]) -> str | None:
    """On less off. None where the lines are not one reading each: a part weighed or read twice is a mean, one that is
    guessed was read by nobody, and of four weighed as one batch two have no display of their own."""
    terms: list[Term] = []
    for line in lines:
        weighings = garage.weighings_of.get(line.part, ())
        pieces = (weighings[0].pieces or 1) if weighings else 1
        if len(weighings) != 1 or line.count % pieces or weighings[0].id in garage.repeats_of:
            return None
        terms += _terms(weighings[0], 1 if line.way == "on" else -1) * (line.count // pieces)
    return sum_as_read(terms)


def _terms(weighing: Weighing, sign: int) -> list[Term]:
    is_difference = weighing.method in ("difference", "container")
    looks = [
        (weighing.shown, sign),
        (weighing.shown_empty if is_difference else None, -sign),
        (weighing.shown_far if weighing.method == "ends" else None, sign),
    ]
    return [(look, way) for look, way in looks if look is not None]
