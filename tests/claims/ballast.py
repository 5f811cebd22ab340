"""What the vectors of core/ballast (with programme and ballast_records) run in Python."""

from typing import Any

from tarebook.core.ballast.ballast import Carried, Place, Wanted, ballast
from tarebook.core.ballast.ballast_records import BallastQuestion, ballast_choice
from tarebook.core.ballast.programme import Bounds, Effort, Row, least
from tarebook.core.garage.garage import read_garage
from tarebook.core.numbers.uncertain import Uncertain
from tests.plain import plain, settled


def carried(given: dict[str, Any]) -> Carried:
    loads = {name: Uncertain(**given[name]) for name in ("total", "front", "left") if given.get(name)}
    return Carried(**{**given, **loads})


def wanted(given: dict[str, Any]) -> Wanted:
    shares = {name: tuple(given[name]) for name in ("front", "left") if given.get(name)}
    return Wanted(**{**given, **shares})


def _ballast(given: dict[str, Any]) -> Any:
    places = [Place(**place) for place in given["places"]]
    return plain(ballast(carried(given["car"]), places, wanted(given["wanted"])))


def _choice(given: dict[str, Any]) -> Any:
    return settled(plain(ballast_choice(read_garage(given["garage"]), BallastQuestion(**given.get("question", {})))))


def _least(given: dict[str, Any]) -> Any:
    """How many branches it takes shows whether both languages took the same steps."""
    rows = [Row(*row) for row in given["rows"]]
    effort = Effort(given["left"])
    found = least(given["costs"], rows, Bounds(*given["limits"]), effort)
    return {"counts": plain(found and found.counts), "left": effort.left, "proven": effort.is_proven}


CLAIMS = {
    "ballast.ballast": _ballast,
    "ballast_records.ballast_choice": _choice,
    "programme.least": _least,
}
