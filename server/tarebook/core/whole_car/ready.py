"""What was not seen to before a whole car was weighed, as doubts of its own.

A weigh-in that says nothing of it counts as it is: nobody was asked then.
"""

from tarebook.core.garage.records import WeighIn

# Standard deviations, kg: of the whole car, and of a corner in the pattern + − − +. Common practice, no source.
UNREADY = {
    "zeroed": (1.0, 0.0),
    "level": (0.5, 2.0),
    "rolled": (0.5, 2.0),
    "pressures": (0.0, 2.0),
    "clear": (1.0, 1.0),
}
DIAGONAL = {"lf": 1.0, "rf": -1.0, "lr": -1.0, "rr": 1.0}


def unready(record: WeighIn, reading: str, looks: int) -> dict[str, float]:
    """Source → kg that what was not done puts into one of so many looks at the car."""
    if record.ready is None:
        return {}
    return {
        f"unready:{point}:{record.id}": whole / looks + DIAGONAL.get(reading, 0.0) * corner
        for point, (whole, corner) in UNREADY.items()
        if point not in record.ready
    }
