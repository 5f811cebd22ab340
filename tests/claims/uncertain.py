"""What the vectors of core/numbers/uncertain run in Python."""

from typing import Any

from tarebook.core.numbers import uncertain
from tarebook.core.numbers.uncertain import Uncertain
from tests.plain import plain


def _items(given: dict[str, Any]) -> list[Uncertain]:
    return [Uncertain(item["value"], item["sources"]) for item in given["items"]]


def _one(given: dict[str, Any]) -> Uncertain:
    return _items(given)[0]


CLAIMS = {
    "uncertain.total": lambda given: plain(uncertain.total(_items(given))),
    "uncertain.weighted_sum": lambda given: plain(uncertain.weighted_sum(_items(given), given["weights"])),
    "uncertain.add": lambda given: plain(uncertain.add(*_items(given))),
    "uncertain.subtract": lambda given: plain(uncertain.subtract(*_items(given))),
    "uncertain.scale": lambda given: plain(uncertain.scale(_one(given), given["factor"])),
    "uncertain.multiply": lambda given: plain(uncertain.multiply(*_items(given))),
    "uncertain.divide": lambda given: plain(uncertain.divide(*_items(given))),
    "uncertain.derived": lambda given: plain(uncertain.derived(given["value"], _items(given), given["partials"])),
    "uncertain.expanded": lambda given: uncertain.expanded(_one(given), given["k"]),
    "uncertain.rectangular": lambda given: uncertain.rectangular(given["half_width"]),
    "uncertain.resolution": lambda given: uncertain.resolution(given["division"]),
}
