"""What was not seen to before a whole car was weighed, as doubts of its own.

A weigh-in that says nothing of it counts as it is: nobody was asked then. A zero that was not set stays as it was since
somebody set it last: each pad has its own, and every weigh-in on that scale until then shares them.
"""

from math import sqrt

from tarebook.core.garage.records import Garage, WeighIn

# Standard deviations, kg: of the whole car, and of a corner in the pattern + − − +. Common practice, no source.
UNREADY = {
    "level": (0.5, 2.0),
    "rolled": (0.5, 2.0),
    "pressures": (0.0, 2.0),
    "clear": (1.0, 1.0),
}
ZERO = 2.0  # kg of the whole car, standard deviation, of a zero not set: common practice, no source
DIAGONAL = {"lf": 1.0, "rf": -1.0, "lr": -1.0, "rr": 1.0}


def unready(garage: Garage, record: WeighIn, reading: str, looks: int) -> dict[str, float]:
    """Source → kg that what was not done puts into one of so many looks at the car."""
    if record.ready is None:
        return {}
    found = {
        f"unready:{point}:{record.id}": whole / looks + DIAGONAL.get(reading, 0.0) * corner
        for point, (whole, corner) in UNREADY.items()
        if point not in record.ready
    }
    if "zeroed" not in record.ready:
        found[f"zero:{record.scale or record.id}:{reading}:{_last_set(garage, record)}"] = ZERO / sqrt(looks)
    return found


def _last_set(garage: Garage, record: WeighIn) -> str:
    """The last weigh-in before this on the same scale for which its zero was set."""
    earlier = [
        (str(each.at), each.id)
        for each in garage.weigh_ins.values()
        if each.scale == record.scale and each.ready and "zeroed" in each.ready and each.at and record.at
    ]
    return max((name for name in earlier if name < (str(record.at), record.id)), default=("", ""))[1]
