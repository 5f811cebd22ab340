"""What the vectors of core/balance (with body, place, lift and load_transfer) run in Python."""

from typing import Any

from tarebook.core.balance.balance import Question, balance
from tarebook.core.balance.body import Body, Load, changed, yaw_change
from tarebook.core.balance.lift import LiftReadings, lift, lift_of, lifts_in_order, outlook
from tarebook.core.balance.load_transfer import power_of, transfer
from tarebook.core.balance.place import place_of
from tarebook.core.garage.garage import read_garage
from tarebook.core.numbers.quantity import read
from tarebook.core.numbers.uncertain import Uncertain
from tests.plain import plain, settled


def _uncertain(given: dict[str, Any] | None) -> Uncertain | None:
    return None if given is None else Uncertain(given["value"], given.get("sources", {}))


def body_of(given: dict[str, Any]) -> Body:
    mass, x, y, z = (_uncertain(given.get(name)) for name in ("mass", "x", "y", "z"))
    assert mass is not None
    return Body(mass, x, y, z)


def load_of(given: dict[str, Any]) -> Load:
    body = body_of(given)
    return Load(body.mass, body.x, body.y, body.z, given.get("own", 0.0))


def _question(given: dict[str, Any]) -> Question:
    jobs = given.get("jobs")
    return Question(
        jobs=None if jobs is None else tuple(jobs),
        weigh_in=given.get("weigh_in"),
        height=_uncertain(given.get("height")),
        sizes={part: tuple(size) for part, size in given.get("sizes", {}).items()},
    )


def _balance(given: dict[str, Any]) -> Any:
    return settled(plain(balance(read_garage(given["garage"]), _question(given))))


def _place_of(given: dict[str, Any]) -> Any:
    garage = read_garage(given["garage"])
    return [plain(place_of(garage.car, part, part.count or 1)) for part in garage.parts.values()]


def _lift(given: dict[str, Any]) -> Any:
    kinds = {"front": "mass", "rear": "mass", "tilted": "mass", "height": "length", "height_within": "length"}
    typed: dict[str, Any] = {n: read(kind, given[n]) for n, kind in kinds.items() if n in given}  # type: ignore[arg-type]
    words = {name: given[name] for name in ("raised", "scale") if name in given}
    return plain(lift(read_garage(given["garage"]), LiftReadings(**typed, **words)))


def _lifts(given: dict[str, Any]) -> Any:
    garage = read_garage(given["garage"])
    return plain([{"id": record.id, **plain(lift_of(garage, record))} for record in lifts_in_order(garage)])


def _outlook(given: dict[str, Any]) -> Any:
    asked = (given["weigh_in"], given.get("raised", "rear"), given.get("scale"))
    return plain(outlook(read_garage(given["garage"]), *asked))


def _transfer(given: dict[str, Any]) -> Any:
    lengths = (_uncertain(given.get("track")), _uncertain(given.get("wheelbase")))
    g = (given["lateral_g"], given["longitudinal_g"])
    return plain(transfer(body_of(given["body"]), *lengths, *g, given.get("power")))


def _yaw_change(given: dict[str, Any]) -> Any:
    return plain(yaw_change(body_of(given["body"]), [load_of(load) for load in given["loads"]]))


CLAIMS = {
    "balance.balance": _balance,
    "body.changed": lambda given: plain(changed(body_of(given["body"]), [load_of(load) for load in given["loads"]])),
    "body.yaw_change": _yaw_change,
    "place.place_of": _place_of,
    "lift.lift": _lift,
    "lift.lift_of": _lifts,
    "lift.outlook": _outlook,
    "load_transfer.power_of": lambda given: plain(power_of(read_garage(given).car)),
    "load_transfer.transfer": _transfer,
}
