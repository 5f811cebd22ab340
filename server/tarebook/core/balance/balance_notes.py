"""What a balance says beside its figures: why one is missing, and what was taken on trust."""

from collections.abc import Iterable, Mapping, Sequence

from tarebook.core.balance.body import Body
from tarebook.core.balance.moved import Change
from tarebook.core.balance.place import Place
from tarebook.core.garage.records import Car, Garage, Warned, WeighIn, warned
from tarebook.core.ledger.net import JobNet
from tarebook.core.numbers.uncertain import Uncertain
from tarebook.core.whole_car.aboard import ballast_in
from tarebook.core.whole_car.weigh_in import Loads
from tarebook.core.whole_car.weighed import ballast_now

UNEQUAL_TRACKS = 0.005  # of their mean: beyond it a share of the sides depends on which track is meant
CORNERS = ("lf", "rf", "lr", "rr")


def reasons_of(
    car: Car | None, record: WeighIn, weighed: Loads, body: Body, loads: Mapping[str, Uncertain]
) -> dict[str, Warned]:
    """Why x, y, z or the corners of a state are missing."""
    found: dict[str, Warned] = {}
    if body.x is None:
        no_wheelbase = car is None or car.wheelbase is None
        found["x"] = warned("wheelbase_unknown") if no_wheelbase else warned("axles_unknown", weigh_in=record.id)
    if body.y is None:
        no_tracks = car is None or car.track_front is None or car.track_rear is None
        found["y"] = warned("tracks_unknown") if no_tracks else warned("sides_unknown", weigh_in=record.id)
    if body.z is None:
        found["z"] = warned("height_unknown")
    if any(name not in loads for name in CORNERS):
        known = all(name in weighed.loads for name in CORNERS)
        found["corners"] = warned("cross_unknown") if known else warned("corners_unweighed", weigh_in=record.id)
    return found


def about_jobs(nets: Mapping[str, JobNet], jobs: Sequence[str], places: Sequence[Place]) -> list[Warned]:
    """Parts without a mass, outside the car, or at a place nobody measured."""
    unweighed = sorted({part for job in jobs for part in nets[job].unweighed})
    found = [warned("unweighed", parts=unweighed)] if unweighed else []
    found += [warned("place_outside", part=place.part, axes=list(place.outside)) for place in places if place.outside]
    for code, by in (("place_by_zone", "zone"), ("place_anywhere", "anywhere")):
        parts = [place.part for place in places if by in place.by.values()]
        found += [warned(code, parts=parts)] if parts else []
    return found


def about_levels(changes: Iterable[Change]) -> list[Warned]:
    unsure = sorted({part for change in changes for part in change.unsure})
    return [warned("level_unsure", parts=unsure)] if unsure else []


def about_car(garage: Garage, record: WeighIn, height: Warned | None) -> list[Warned]:
    """What the centre is of, and what of it was taken on trust. `height`: what that rests on."""
    found = [warned("centre_as_weighed", weigh_in=record.id), *([height] if height else [])]
    fitted = ballast_now(garage)
    if fitted is not None and fitted.value != ballast_in(record).value:
        found.append(warned("balance_without_ballast", weigh_in=record.id))
    car = garage.car
    front, rear = (car.track_front, car.track_rear) if car else (None, None)
    if front and rear and abs(front.value - rear.value) > UNEQUAL_TRACKS * 0.5 * (front.value + rear.value):
        found.append(warned("tracks_unequal"))
    return found
