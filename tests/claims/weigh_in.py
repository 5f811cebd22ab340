"""What the vectors of core/whole_car/weigh_in (with fuel, condition and trade_scale) run in Python."""

from typing import Any

from tarebook.core.garage.garage import read_garage
from tarebook.core.weighing import trade_scale
from tarebook.core.whole_car.fuel import fuel_mass
from tarebook.core.whole_car.weigh_in import weigh_in
from tests.plain import plain


def _weigh_in(given: dict[str, Any]) -> Any:
    return plain(weigh_in(read_garage(given["garage"]), given["id"], class_sheet=given.get("class_sheet")))


def _fuel_mass(given: dict[str, Any]) -> Any:
    return plain(fuel_mass(given["volume"], given["kind"], given.get("within"), given.get("source", "")))


CLAIMS = {
    "weigh_in.weigh_in": _weigh_in,
    "fuel.fuel_mass": _fuel_mass,
    "trade_scale.tolerance": lambda given: trade_scale.tolerance(**given),
}
