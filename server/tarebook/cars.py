"""Which of a garage's cars is meant, when a person names one or none."""

from collections.abc import Mapping, Sequence
from typing import Any

from tarebook.errors import TarebookError


def chosen_car(cars: Sequence[Mapping[str, Any]], asked: str | None) -> str | None:
    """The id of the car asked for by name or id, or of the only one; None in a garage without a car.

    Raises `car_unknown` and `car_unclear`.
    """
    found = [car for car in cars if asked is None or asked.casefold() in (car["id"], str(car["name"]).casefold())]
    names = ", ".join(str(car["name"]) for car in cars) or "none yet"
    if asked is not None and not found:
        raise TarebookError("car_unknown", name=asked, cars=names)
    if len(found) > 1:
        raise TarebookError("car_unclear", cars=names)
    return str(found[0]["id"]) if found else None
