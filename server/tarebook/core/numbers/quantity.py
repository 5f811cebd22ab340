"""What a person typed for a mass, a length or a volume, read exactly or refused with a sentence.

Read: a number and a unit (`18 lb`, `0.25oz`, `420 g`, `98 1/4"`), a fraction (`6 3/8 oz`, `6⅜ oz`, `6-3/8 oz`,
`1/2 in`), two units in falling order (`3 lb 4.5 oz`, `8 ft 2 in`, `1 kg 200 g`, `11 st 6 lb`), or a bare number
when the unit was picked beside it (`52`). Capitals, missing spaces, dots after units, `lbs`, `pounds`, `#` and
the fractions on a phone's keyboard are all fine; `core/numbers/units` lists every word.

Refused, each with a code of the error table and what to type instead: nothing, too long, a decimal comma,
an exponent, a minus sign before anything but a place on an axis, zero where a thing must weigh something, a sum
or a count, a number with a gap, a unit of something else, a word that could mean two units, a missing unit, two
units in the wrong order or of two systems, sixteen ounces after pounds, two fractions, and sizes no car has.
Nothing is guessed.

Values are exact fractions of SI units (kg, m, m³), with pint's exact factors; pint has no other user.
"""

import re
from collections.abc import Sequence
from dataclasses import asdict, dataclass
from fractions import Fraction
from functools import cache
from itertools import pairwise
from typing import Any

from tarebook.core.numbers.typed import (
    LONGEST,
    Digits,
    QuantityError,
    read_digits,
    refuse_at_sight,
    same_marks,
    tidy,
    unit_word,
)
from tarebook.core.numbers.units import DIMENSIONS, Dimension, Kind

Part = tuple[Digits, str]  # a number and the name of its unit

MINUS = "\u2212"  # the true minus sign, as shown; either sign may be typed
_PIECE = re.compile(r"([0-9.][0-9./ ]*)((?:[^0-9.]|\.(?![0-9]))*)")


@dataclass(frozen=True)
class Quantity:
    """A reading as typed and as read.

    `exact`: the value in SI units. `unit`: the unit it was typed in ("kg", "lb oz", "ft in", "gal_us" …).
    `reads`: the reading spelled out ("6 3/8 oz"). `last_digit`: the place of the last typed digit in SI units
    (0.1 lb for "18.5 lb", 1/8 oz for "6 3/8 oz"), which stands in for a scale division nobody noted.
    """

    kind: Kind
    exact: Fraction
    text: str
    unit: str
    reads: str
    last_digit: float

    @property
    def value(self) -> float:
        """The SI value as the nearest double."""
        return float(self.exact)


def read_mass(text: str, default_unit: str | None = None, positive: bool = False) -> Quantity:
    """A typed mass in kg. `positive` refuses zero. Raises `QuantityError`."""
    return read("mass", text, default_unit, positive)


def read_length(text: str, default_unit: str | None = None, positive: bool = False) -> Quantity:
    """A typed length in m. `positive` refuses zero. Raises `QuantityError`."""
    return read("length", text, default_unit, positive)


def read_position(text: str, default_unit: str | None = None) -> Quantity:
    """A typed place along an axis in m: a length that may be less than nothing (left of the centreline)."""
    return read("length", text, default_unit, signed=True)


def read(
    kind: Kind, text: str, default_unit: str | None = None, positive: bool = False, signed: bool = False
) -> Quantity:
    """Read `text` as a quantity of `kind`; a bare number takes `default_unit`, any word the table knows.

    `positive` refuses zero; `signed` takes a minus sign. Raises `QuantityError`.
    """
    dimension = DIMENSIONS[kind]
    try:
        plain, negative = _plain(text, signed)
        parts = _parts(dimension, plain, default_unit)
        _check_compound(kind, parts)
        size = sum((number.exact * factor(kind, unit) for number, unit in parts), Fraction(0))
        _check_size(dimension, size, positive)
    except QuantityError as refusal:
        known = {"typed": text[:LONGEST], "kind": kind, "example": dimension.example}
        raise QuantityError(refusal.code, **{**known, **refusal.data}) from None
    exact = -size if negative else size
    reads = (MINUS if exact < 0 else "") + _spell(dimension, parts)
    number, unit = parts[-1]
    last_digit = float(number.place * factor(kind, unit))
    return Quantity(kind, exact, text, " ".join(name for _, name in parts), reads, last_digit)


def read_number(text: str) -> Fraction:
    """A plain decimal without a unit, as money, hours and fractions are kept; a leading minus is allowed."""
    try:
        plain, negative = _plain(text, signed=True)
        exact = read_digits(plain).exact
    except QuantityError as refusal:
        known = {"typed": text[:LONGEST], "kind": "number", "example": "12.50"}
        raise QuantityError(refusal.code, **{**known, **refusal.data}) from None
    return -exact if negative else exact


@cache
def factor(kind: Kind, unit: str) -> Fraction:
    """One `unit` in SI units, exactly."""
    registry = _registry()
    amount = registry.Quantity(Fraction(1), DIMENSIONS[kind].units[unit].pint).to_base_units().magnitude
    return Fraction(amount)


@cache
def _registry() -> Any:
    # Imported late: pint takes a tenth of a second, and most commands read no quantity.
    from pint import UnitRegistry

    registry: Any = UnitRegistry(non_int_type=Fraction)
    registry.default_system = "mks"
    return registry


def unit_table() -> dict[str, Any]:
    """The table of units with their exact ratios as JSON, for the phone's copy."""
    return {kind: _dimension_table(kind, dimension) for kind, dimension in DIMENSIONS.items()}


def _dimension_table(kind: Kind, dimension: Dimension) -> dict[str, Any]:
    table = asdict(dimension)
    for name, unit in table["units"].items():
        del unit["pint"]
        ratio = [str(part) for part in factor(kind, name).as_integer_ratio()]
        table["units"][name] = {"ratio": ratio, **unit}
    return table


def _plain(text: str, signed: bool) -> tuple[str, bool]:
    """(the text without a minus sign, whether it had one that counts)."""
    plain = tidy(text)
    negative = plain.startswith("-")
    if negative and not signed:
        raise QuantityError("quantity_negative", instead=plain.strip("- "))
    plain = plain[1:].strip(" ") if negative else plain
    refuse_at_sight(plain)
    return plain, negative


def _parts(dimension: Dimension, plain: str, default_unit: str | None) -> list[Part]:
    pieces = [(found[1], found[2]) for found in _PIECE.finditer(plain)]
    if "".join(before + after for before, after in pieces) != plain:
        raise QuantityError("quantity_unreadable")
    numbers = [read_digits(before.strip(" ")) for before, _ in pieces]
    words = [unit_word(after) for _, after in pieces]
    if len(pieces) == 1:
        return [(numbers[0], _unit(dimension, numbers[0], words[0], default_unit))]
    return list(zip(numbers, _compound_units(dimension, numbers, words), strict=True))


def _unit(dimension: Dimension, number: Digits, word: str, default_unit: str | None) -> str:
    """The unit `word` names; `default_unit` stands in for a missing word and decides an unclear one."""
    default = unit_word(same_marks(default_unit or ""))
    names = dimension.names
    if word in dimension.unclear and names.get(default) in dimension.unclear[word]:
        return names[default]
    if word == "" and default not in names and all(part in names for part in default.split()):
        asked = [names[part] for part in default.split()] or list(dimension.asked)
        raise QuantityError("quantity_unit_missing", instead=_choices(dimension, number, asked))
    return _named(dimension, number, word or default)


def _named(dimension: Dimension, number: Digits, word: str) -> str:
    if word in dimension.unclear:
        instead = _choices(dimension, number, dimension.unclear[word])
        raise QuantityError("quantity_unit_unclear", unit=word, instead=instead)
    names = dimension.names
    if word not in names:
        labels = [dimension.units[unit].label for unit in dimension.asked]
        raise QuantityError("quantity_unit_unknown", unit=word, units=", ".join(labels[:-1]) + " or " + labels[-1])
    return names[word]


def _compound_units(dimension: Dimension, numbers: list[Digits], words: list[str]) -> list[str]:
    """The units of two or more parts: in falling order, of one system, the last one not left out."""
    units = [_named(dimension, number, word) for number, word in zip(numbers, words, strict=True) if word]
    if len(units) < len(words):
        raise QuantityError("quantity_unit_missing", instead=_completed(dimension, numbers, units))
    if _falling(dimension, units):
        return units
    if _falling(dimension, units[::-1]):
        instead = _spell(dimension, list(zip(numbers, units, strict=True))[::-1])
        raise QuantityError("quantity_order", instead=instead)
    raise QuantityError("quantity_mix", units=" and ".join(dimension.units[unit].label for unit in units))


def _completed(dimension: Dimension, numbers: list[Digits], units: list[str]) -> str:
    """`3 lb 4` may have meant `3 lb 4 oz`."""
    follower = dimension.smaller.get(units[-1]) if len(units) == len(numbers) - 1 else None
    return _spell(dimension, list(zip(numbers, [*units, follower], strict=True))) if follower else dimension.example


def _falling(dimension: Dimension, units: list[str]) -> bool:
    return all(dimension.smaller.get(large) == small for large, small in pairwise(units))


def _check_compound(kind: Kind, parts: list[Part]) -> None:
    """`3.5 lb 4 oz` could mean two things, and `3 lb 45 oz` is most likely a slip for 4.5."""
    for (number, large), (following, small) in pairwise(parts):
        if "." in number.reads or "/" in number.reads:
            raise QuantityError("quantity_two_fractions", part=f"{number.reads} {large}")
        most = int(factor(kind, large) / factor(kind, small))
        if following.exact >= most:
            part = f"{following.reads} {small}"
            raise QuantityError("quantity_carry", part=part, unit=small, large=large, most=most)


def _check_size(dimension: Dimension, exact: Fraction, positive: bool) -> None:
    if positive and exact == 0:
        raise QuantityError("quantity_zero")
    if exact > dimension.most[0]:
        raise QuantityError("quantity_absurd", most=dimension.most[1])


def _choices(dimension: Dimension, number: Digits, units: Sequence[str]) -> str:
    return " or ".join(_spell(dimension, [(number, unit)]) for unit in units)


def _spell(dimension: Dimension, parts: Sequence[Part]) -> str:
    return " ".join(f"{number.reads} {dimension.units[unit].label}" for number, unit in parts)
