"""How high the centre of gravity of a weighed car lies: by lifting an axle, by another lift carried over, or assumed.

The newest lift of the weigh-in itself counts. Without one the newest of another weigh-in does: the jobs between the two
lists of jobs are put on that car or taken off it (`core/moved`, `core/body`), and with them the doubt of every mass and
place. What fuel, driver and ballast differ by between the two is at no known height and not carried; a note says so.
With no lift at all the height is assumed from the track: ten measured road vehicles of the NHTSA NCAP 2004 rollover
tests have a static stability factor of 1.12 to 1.59, h = t / (2 SSF).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from tarebook.core.body import Body, changed
from tarebook.core.lift import lift_of, lifts_in_order
from tarebook.core.moved import Sizes, moved_between
from tarebook.core.net import JobNet
from tarebook.core.place import mean_track
from tarebook.core.records import Car, Garage, Lift, Warned, WeighIn, warned
from tarebook.core.uncertain import Uncertain, rectangular
from tarebook.core.weigh_in import loads_of
from tarebook.core.weighing import Masses

ASSUMED_HEIGHT = (0.38, 0.07)  # middle and half-width in mean tracks


@dataclass(frozen=True, slots=True)
class Height:
    """`value` (m) above the ground; None when not even the track is known. `note`: what it rests on."""

    value: Uncertain | None
    note: Warned | None


def height_of(
    garage: Garage, record: WeighIn, nets: Mapping[str, JobNet], known: Masses, sizes: Sizes | None = None
) -> Height:
    """Of the car of a weigh-in as it stood there. `nets`: of every job; `sizes`: as `core/moved` takes them."""
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
    moves = moved_between(garage, nets, lifted.jobs, to.jobs, sizes)
    return changed(Body(loads.total, loads.x_cg, loads.y_cg, height), [each.load for each in moves]).z


def _assumed(car: Car | None) -> Height:
    track = mean_track(car)
    if track is None:
        return Height(None, None)
    middle, within = ASSUMED_HEIGHT
    assumed = Uncertain(middle * track, {"assumed:height": rectangular(within * track)})
    return Height(assumed, warned("height_assumed"))
