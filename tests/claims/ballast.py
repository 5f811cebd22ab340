"""What the vectors of core/ballast (with programme) run in Python."""

from typing import Any

from tarebook.core.ballast import Carried, Place, Wanted, ballast
from tarebook.core.uncertain import Uncertain
from tests.plain import plain


def carried(given: dict[str, Any]) -> Carried:
    loads = {name: Uncertain(**given[name]) for name in ("total", "front", "left") if given.get(name)}
    return Carried(**{**given, **loads})


def wanted(given: dict[str, Any]) -> Wanted:
    shares = {name: tuple(given[name]) for name in ("front", "left") if given.get(name)}
    return Wanted(**{**given, **shares})


def _ballast(given: dict[str, Any]) -> Any:
    places = [Place(**place) for place in given["places"]]
    return plain(ballast(carried(given["car"]), places, wanted(given["wanted"])))


CLAIMS = {"ballast.ballast": _ballast}
