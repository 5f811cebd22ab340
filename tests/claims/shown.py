"""What the vectors of core/numbers/shown run in Python."""

from typing import Any

from tarebook.core.numbers import quantity, shown
from tarebook.core.numbers.uncertain import Uncertain
from tarebook.core.words import said


def _show_both(given: dict[str, Any]) -> str:
    typed = quantity.read(given["kind"], given["text"], None, False, given.get("signed", False))
    return shown.show_both(typed, given.get("unit"))


def _number(given: dict[str, Any]) -> dict[str, Any]:
    return shown.number(Uncertain(given["value"], given["sources"]), given["kind"], given["unit"])


def _lay_out(given: dict[str, Any]) -> dict[str, Any]:
    laid = shown.lay_out(**given)
    return {
        "sign": laid.sign,
        "parts": [list(part) for part in laid.parts],
        "within": [list(part) for part in laid.within],
        "text": laid.text,
    }


CLAIMS = {
    "shown.show_mass": lambda given: shown.show_mass(**given),
    "shown.show_guard": lambda given: shown.show_guard(**given),
    "shown.show_claim": lambda given: shown.show_claim(**given),
    "shown.show_area": lambda given: shown.show_area(**given),
    "shown.show_doubt": lambda given: shown.show_doubt(**given),
    "shown.show_length": lambda given: shown.show_length(**given),
    "shown.show_stepped": lambda given: shown.show_stepped(**given),
    "shown.show_volume": lambda given: shown.show_volume(**given),
    "shown.show_percent": lambda given: shown.show_percent(**given),
    "shown.show_chance": lambda given: shown.show_chance(**given),
    "shown.show_money": lambda given: shown.show_money(**given),
    "shown.show_hours": lambda given: shown.show_hours(**given),
    "shown.show_plain": lambda given: shown.show_plain(**given),
    "shown.show_both": _show_both,
    "shown.number": _number,
    "shown.lay_out": _lay_out,
    "said.size_of": lambda given: said.size_of(Uncertain(given["value"], given["sources"]), given["unit"]),
}
