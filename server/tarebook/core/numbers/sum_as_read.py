"""The plain sum of readings, exact and in the units they were typed in.

Beside the rounded result with its ± stands what one gets by adding up the displays on paper. Pounds and ounces come out
as pounds and ounces.
"""

import re
from collections.abc import Sequence
from fractions import Fraction

from tarebook.core.numbers.quantity import MINUS, Quantity, factor

Term = tuple[Quantity, int]
"""A reading and whether it is added (1) or taken off (-1)."""

_MOST_PLACES = 8
_FINEST = 64  # of a typed fraction's lower number
_OUNCES = 16  # in a pound
_IMPERIAL, _METRIC = {"lb", "oz", "lb oz"}, {"g", "kg"}


def sum_as_read(terms: Sequence[Term]) -> str | None:
    """None without a reading, and where pounds and kilograms meet: they have no sum on paper."""
    units = {look.unit for look, _ in terms}
    total = sum((look.exact * sign for look, sign in terms), Fraction(0))
    has_fraction = any("/" in look.reads for look, _ in terms)
    places = max((_places(look.reads) for look, _ in terms), default=0)
    text = _in_units(abs(total), units, places, has_fraction)
    return text and (MINUS if total < 0 else "") + text


def _places(reads: str) -> int:
    found = re.search(r"\.(\d+)", reads)
    return len(found[1]) if found else 0


def _in_units(size: Fraction, units: set[str], places: int, has_fraction: bool) -> str | None:
    if not units:
        return None
    if len(units) == 1 and units != {"lb oz"}:
        return _within(size, next(iter(units)), places, has_fraction)
    if units <= _IMPERIAL:
        return _compound(size, places, has_fraction)
    return _within(size, "kg", places, has_fraction) if units <= _METRIC else None


def _within(size: Fraction, unit: str, places: int, has_fraction: bool) -> str | None:
    number = _written(size / factor("mass", unit), places, has_fraction)
    return number and f"{number} {unit}"


def _compound(size: Fraction, places: int, has_fraction: bool) -> str | None:
    pounds, ounces = divmod(size / factor("mass", "oz"), _OUNCES)
    rest = _written(ounces, places, has_fraction)
    if rest is None:
        return None
    return f"{pounds} lb {rest} oz" if pounds else f"{rest} oz"


def _written(number: Fraction, places: int, has_fraction: bool) -> str | None:
    """A number that is not below zero, exact: as a ruler's fraction where such were typed; else with as many places as
    were typed or as it takes; thirds and their like stay what they are."""
    below = number.denominator
    if has_fraction and 1 < below <= _FINEST and below & (below - 1) == 0:
        return _mixed(number)
    for at in range(places, _MOST_PLACES + 1):
        scaled = number * 10**at
        if scaled.denominator == 1:
            digits = str(scaled.numerator).rjust(at + 1, "0")
            return f"{digits[:-at]}.{digits[-at:]}" if at else digits
    return _mixed(number) if has_fraction and below <= _FINEST else None


def _mixed(number: Fraction) -> str:
    whole, rest = divmod(number, 1)
    return f"{whole or ''} {rest}".strip()
