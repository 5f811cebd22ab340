"""How high the centre of gravity of a weighed car lies: by lifting an axle, by another lift carried over, or assumed.

The newest lift of the weigh-in itself counts. Without one the newest of another weigh-in does: the jobs between the two
lists of jobs are put on that car or taken off it (`core/balance/moved`, `core/balance/body`), and with them the doubt
of every mass and place; so are the fuel, the driver and the ballast by which the two differ, as far as both were noted.
With no lift at all the height is assumed from the track: ten measured road vehicles of the NHTSA NCAP 2004 rollover
tests have a static stability factor of 1.12 to 1.59, h = t / (2 SSF).
"""

from collections.abc import Mapping
from dataclasses import dataclass

from tarebook.core.balance.aboard import place_aboard
from tarebook.core.balance.body import Body, Load, changed
from tarebook.core.balance.lift import lift_of, lifts_in_order
from tarebook.core.balance.moved import Sizes, moved_between
from tarebook.core.balance.place import mean_track
from tarebook.core.garage.records import Car, Garage, Lift, Warned, WeighIn, warned
from tarebook.core.ledger.net import JobNet
from tarebook.core.numbers.uncertain import Uncertain, rectangular, subtract
from tarebook.core.weighing.weighing import Masses
from tarebook.core.whole_car.aboard import driver_in, fuel_in
from tarebook.core.whole_car.weigh_in import loads_of

ASSUMED_HEIGHT = (0.38, 0.07)  # middle and half-width in mean tracks
LOW = (0.35, 0.25)  # m, middle and half-width, of a tank, seat or ballast without a height: common practice, no source


@dataclass(frozen=True, slots=True)
class Height:
    """`value` (m) above the ground; None when not even the track is known. `note`: what it rests on."""

    value: Uncertain | None
    note: Warned | None


def height_of(
    garage: Garage, record: WeighIn, nets: Mapping[str, JobNet], known: Masses, sizes: Sizes | None = None
) -> Height:
    """Of the car of a weigh-in as it stood there. `nets`: of every job; `sizes`: as `core/balance/moved` takes them."""
    newest = lifts_in_order(garage)[::-1]
    newest.sort(key=lambda each: each.weigh_in != record.id)
    for each in newest:
        is_own = each.weigh_in == record.id
        height = lift_of(garage, each, known).height
        if height is not None and not is_own:
            height = _carried(garage, each, height, record, nets, known, sizes or {})
        if height is not None:
            code = "height_by_lift" if is_own else "height_carried"
            return Height(height, warned(code, lift=each.id, weigh_in=each.weigh_in))
    return _assumed(garage.car)


def _carried(
    garage: Garage, lift: Lift, height: Uncertain, to: WeighIn, nets: Mapping[str, JobNet], known: Masses, sizes: Sizes
) -> Uncertain | None:
    """The height of the car of another weigh-in, with the jobs of this one; None when nobody confirmed either list."""
    lifted = garage.weigh_ins[lift.weigh_in]
    loads = loads_of(garage, lifted, known)
    if lifted.jobs is None or to.jobs is None or loads.total is None:
        return None
    moves = [each.load for each in moved_between(garage, nets, lifted.jobs, to.jobs, sizes)]
    exchanged = _exchanged(garage, lifted, to, known)
    return changed(Body(loads.total, loads.x_cg, loads.y_cg, height), [*moves, *exchanged]).z


def _exchanged(garage: Garage, then: WeighIn, to: WeighIn, known: Masses) -> list[Load]:
    """What was on board at one weigh-in comes out, what was at the other goes in; what was not noted is the same."""
    before, after = _aboard(garage, then, known), _aboard(garage, to, known)
    pairs = [(what, before[what], after[what]) for what in before]
    return [
        _load(garage.car, what, subtract(new, old)) for what, old, new in pairs if old is not None and new is not None
    ]


def _aboard(garage: Garage, record: WeighIn, known: Masses) -> dict[str, Uncertain | None]:
    ballast = Uncertain(record.ballast.value if record.ballast else 0.0)
    return {"tank": fuel_in(garage, record), "driver": driver_in(garage, record, known), "ballast": ballast}


def _load(car: Car | None, what: str, mass: Uncertain) -> Load:
    place = place_aboard(car, what)
    low = Uncertain(LOW[0], {f"place:{what}:z": rectangular(LOW[1])})
    return Load(mass, place.x, place.y, place.z or low)


def _assumed(car: Car | None) -> Height:
    track = mean_track(car)
    if track is None:
        return Height(None, None)
    middle, within = ASSUMED_HEIGHT
    assumed = Uncertain(middle * track, {"assumed:height": rectangular(within * track)})
    return Height(assumed, warned("height_assumed"))
