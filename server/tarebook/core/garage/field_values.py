"""One value of one record, read as its field's type says.

Quantities are read by `core/numbers/quantity`, everything else is checked for its shape only. What does not fit raises
`QuantityError` (with its sentence) or `ValueError`; the reader of the garage makes warnings of both.
"""

from collections.abc import Callable, Mapping
from fractions import Fraction
from functools import lru_cache
from typing import Any

from tarebook.core.numbers.quantity import Quantity, read, read_number
from tarebook.core.numbers.typed import QuantityError
from tarebook.core.numbers.units import Kind
from tarebook.journal.kinds import Field


def read_field(spec: Field, value: Any, unit: str | None) -> Any:
    """The value of a field. `unit` is what a bare mass was typed in. Raises `QuantityError` or `ValueError`."""
    if spec.type == "mass" or spec.type == "length" or spec.type == "volume":
        return _likely(spec, _read(spec.type, _as_typed(value), unit if spec.type == "mass" else None, spec.sign))
    return _PLAIN[spec.type](value, spec)


def _likely(spec: Field, size: Quantity) -> Quantity:
    """The size itself, if it lies where its field's do; beyond, a unit has slipped. Raises `QuantityError`."""
    if spec.likely:
        least, most = (_read(size.kind, text, None, "").exact for text in spec.likely)
        if not least <= size.exact <= most:
            raise QuantityError("size_unlikely", typed=size.text, kind=size.kind, span=" to ".join(spec.likely))
    return size


def _read(kind: Kind, text: str, unit: str | None, sign: str) -> Quantity:
    found = _read_once(kind, text, unit, sign)
    if isinstance(found, QuantityError):
        raise QuantityError(found.code, **found.data)
    return found


@lru_cache(maxsize=50_000)
def _read_once(kind: Kind, text: str, unit: str | None, sign: str) -> Quantity | QuantityError:
    """A text met before is not read again: the garage is read anew after every change, and few texts in it are new."""
    try:
        return read(kind, text, unit, sign == "positive", sign == "any")
    except QuantityError as error:
        return error


def _as_typed(value: Any) -> str:
    """A quantity as typed: a string, or `{value, unit}` with the value a string or a number."""
    if isinstance(value, str):
        return value
    if isinstance(value, Mapping) and isinstance(value.get("unit"), str):
        return f"{_number_text(value.get('value'))} {value['unit']}"
    raise ValueError


def _number_text(value: Any) -> str:
    if isinstance(value, str):
        return value
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise ValueError
    return str(int(value)) if isinstance(value, float) and value.is_integer() else str(value)


def _text(value: Any, spec: Field) -> str:
    if not isinstance(value, str):
        raise ValueError
    return value


def _decimal(value: Any, spec: Field) -> Fraction:
    """Exact: money is never a float."""
    number = read_number(_text(value, spec))
    if spec.sign != "any" and (number < 0 or (spec.sign == "positive" and number == 0)):
        raise ValueError
    return number


def _whole(value: Any, spec: Field) -> int:
    least = 1 if spec.type == "count" else 0
    if isinstance(value, float) and value.is_integer():
        value = int(value)  # JSON's 4.0 is 4
    if isinstance(value, bool) or not isinstance(value, int) or not least <= value <= spec.most:
        raise ValueError
    return value


def _flag(value: Any, spec: Field) -> bool:
    if not isinstance(value, bool):
        raise ValueError
    return value


def _choice(value: Any, spec: Field) -> str:
    if _text(value, spec) not in spec.of:
        raise ValueError
    return str(value)


def _references(value: Any, spec: Field) -> tuple[str, ...]:
    if not isinstance(value, list):
        raise ValueError
    return tuple(sorted({_text(to, spec) for to in value}))


_PLAIN: dict[str, Callable[[Any, Field], Any]] = {
    "text": _text,
    "moment": _text,
    "ref": _text,
    "money": _decimal,
    "hours": _decimal,
    "fraction": _decimal,
    "count": _whole,
    "integer": _whole,
    "flag": _flag,
    "choice": _choice,
    "refs": _references,
    "choices": lambda value, spec: tuple(_choice(each, spec) for each in _references(value, spec)),
}
