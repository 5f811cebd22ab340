"""What every part of the standing is made from, read from the garage once."""

from collections.abc import Mapping
from dataclasses import dataclass

from tarebook.core.garage.records import ClassSheet, Garage, WeighIn
from tarebook.core.ledger.net import JobNet, job_nets, jobs_in_car
from tarebook.core.weighing.weighing import Masses
from tarebook.core.whole_car.aboard import aboard
from tarebook.core.whole_car.condition import Condition, chosen_sheet, condition_of
from tarebook.core.whole_car.weigh_in import loads_of
from tarebook.core.whole_car.weighed import Now, Weighed, in_order, now_of


@dataclass(frozen=True, slots=True)
class Given:
    """`weighed`: the weigh-ins in order; `sheet`: of the class asked for, else the newest, with its `condition`."""

    garage: Garage
    known: Masses
    nets: Mapping[str, JobNet]
    sheet: ClassSheet | None
    condition: Condition
    weighed: tuple[Weighed, ...]
    now: Now


def given_by(garage: Garage, known: Masses, class_sheet: str | None = None) -> Given:
    sheet = chosen_sheet(garage, class_sheet)
    return Given(
        garage=garage,
        known=known,
        nets=job_nets(garage, known),
        sheet=sheet,
        condition=condition_of(garage, sheet, known),
        weighed=tuple(_weighed(garage, record, known) for record in in_order(garage)),
        now=now_of(garage),
    )


def _weighed(garage: Garage, record: WeighIn, known: Masses) -> Weighed:
    return Weighed(record, loads_of(garage, record, known), _jobs_then(garage, record), aboard(garage, record, known))


def _jobs_then(garage: Garage, record: WeighIn) -> tuple[str, ...] | None:
    """The jobs stored with a weigh-in. Without a list there is nothing to confirm only while no job was ever fitted."""
    if record.jobs is None:
        return None if jobs_in_car(garage, "event") else ()
    return tuple(job for job in record.jobs if job in garage.jobs)
