"""The car of a weigh-in, as heavy as all the weigh-ins say it was that day.

A single weigh-in has its own error, so a car drawn from it alone would weigh other than the standing says. Where the
weight stands is told by that weigh-in, how much it is by the standing: the weight now, led back over the jobs since and
over what was on board. Every load is scaled by the same factor: shares, and the centre with them, keep their doubt.
"""

from dataclasses import replace

from tarebook.core.fusion.evidence import counted_of
from tarebook.core.garage.records import Garage, WeighIn
from tarebook.core.ledger.since import net_between
from tarebook.core.numbers.uncertain import Uncertain, divide, multiply, weighted_sum
from tarebook.core.standing.given import given_by
from tarebook.core.standing.standing import Standing, standing
from tarebook.core.weighing.weighing import Masses
from tarebook.core.whole_car.weigh_in import Loads
from tarebook.core.whole_car.weighed import bare


def by_all(garage: Garage, record: WeighIn, loads: Loads, known: Masses, now: Standing | None) -> Loads:
    """The loads of a weigh-in, brought to what all of them say. `now`: the standing, when it is at hand already.

    They stay as they are where the weigh-in does not count, or what was on board is not known.
    """
    mass = _then(garage, record, known, now or standing(garage, known))
    if mass is None or loads.total is None or mass.value <= 0.0 or loads.total.value <= 0.0:
        return loads
    factor = divide(mass, loads.total)
    return replace(loads, loads={**{name: multiply(each, factor) for name, each in loads.loads.items()}, "total": mass})


def _then(garage: Garage, record: WeighIn, known: Masses, now: Standing) -> Uncertain | None:
    """What the car of a weigh-in weighed as it stood there, by the weight now."""
    counted = [each.weigh_in for each in now.fused.counted] if now.fused else []
    if now.weight is None or record.id not in counted:
        return None
    given = given_by(garage, known, now.condition.class_sheet)
    weighed = {each.record.id: each for each in given.weighed}
    then, last = weighed[record.id], weighed[counted[-1]]
    terms = bare(then)
    if isinstance(terms, dict):
        return None
    aboard = [each for each in counted_of(last.aboard, given.now, now.condition) if each is not None]
    since = net_between(given.now.jobs, then.jobs or (), given.nets)
    items = [now.weight, since, *aboard, *(item for item, _ in terms[1:])]
    return weighted_sum(items, [1.0, -1.0, *(-1.0 for _ in aboard), *(-sign for _, sign in terms[1:])])
