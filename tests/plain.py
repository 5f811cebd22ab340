"""Results of the core as plain JSON, alike in both languages (`tests/plain.ts`), for the vectors to compare."""

from dataclasses import fields, is_dataclass
from fractions import Fraction
from typing import Any

from tarebook.core.numbers.quantity import Quantity
from tarebook.core.numbers.uncertain import Uncertain


def plain(result: Any) -> Any:
    """Exact numbers as "n/d", quantities as their exact value and unit; what is None or empty is left out."""
    if isinstance(result, Fraction):
        return f"{result.numerator}/{result.denominator}"
    if isinstance(result, Quantity):
        return f"{plain(result.exact)} as {result.unit}"
    if is_dataclass(result):
        return plain({field.name: getattr(result, field.name) for field in fields(result) if field.name[0] != "_"})
    if isinstance(result, dict):
        return _filled({str(key): plain(value) for key, value in result.items()})
    if isinstance(result, frozenset):
        return sorted(result)
    if isinstance(result, list | tuple):
        return [plain(item) for item in result]
    return result


def brief(result: Any) -> Any:
    """Value and u instead of every source, for results that hold too many."""
    if isinstance(result, Uncertain):
        return {"value": result.value, "u": result.u}
    if is_dataclass(result):
        return {field.name: brief(getattr(result, field.name)) for field in fields(result)}
    if isinstance(result, dict):
        return {key: brief(value) for key, value in result.items()}
    return [brief(item) for item in result] if isinstance(result, list | tuple) else result


def _filled(items: dict[str, Any]) -> dict[str, Any]:
    return {key: value for key, value in items.items() if value is not None and value not in ([], {})}
