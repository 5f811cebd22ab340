"""What the vectors of core/numbers/quantity run in Python."""

from typing import Any

from tarebook.core.numbers import quantity
from tarebook.core.numbers.sum_as_read import sum_as_read


def _plain(read: quantity.Quantity) -> dict[str, Any]:
    """A reading as JSON; its exact value as the text of a fraction."""
    exact = f"{read.exact.numerator}/{read.exact.denominator}"
    return {
        "exact": exact,
        "value": read.value,
        "unit": read.unit,
        "reads": read.reads,
        "last_digit": read.last_digit,
    }


def _read_number(given: dict[str, Any]) -> str:
    exact = quantity.read_number(given["text"])
    return f"{exact.numerator}/{exact.denominator}"


def _sum_as_read(given: dict[str, Any]) -> str | None:
    return sum_as_read(
        [(quantity.read_mass(text.removeprefix("-")), -1 if text.startswith("-") else 1) for text in given["texts"]]
    )


CLAIMS = {
    "quantity.read_mass": lambda given: _plain(quantity.read_mass(**given)),
    "quantity.read_length": lambda given: _plain(quantity.read_length(**given)),
    "quantity.read_position": lambda given: _plain(quantity.read_position(**given)),
    "quantity.read": lambda given: _plain(quantity.read(**given)),
    "quantity.read_number": _read_number,
    "quantity.sum_as_read": _sum_as_read,
}
