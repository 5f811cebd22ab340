"""Results of the core as plain JSON, alike in both languages (`tests/plain.ts`), for the vectors to compare."""

from dataclasses import fields, is_dataclass
from fractions import Fraction
from typing import Any

from tarebook.core.numbers.quantity import Quantity
from tarebook.core.numbers.uncertain import Uncertain


def plain(result: Any) -> Any:
    """Exact numbers as "n/d", quantities as exact value and unit, `u` beside sources. None is left out, not []."""
    if isinstance(result, Uncertain):
        return {"value": result.value, "u": result.u, "sources": dict(result.sources)}
    if isinstance(result, Fraction):
        return f"{result.numerator}/{result.denominator}"
    if isinstance(result, Quantity):
        return f"{plain(result.exact)} as {result.unit}"
    if is_dataclass(result):
        return plain({field.name: getattr(result, field.name) for field in fields(result) if field.name[0] != "_"})
    if isinstance(result, dict):
        return {str(key): plain(value) for key, value in result.items() if value is not None}
    if isinstance(result, frozenset):
        return sorted(result)
    if isinstance(result, list | tuple):
        return [plain(item) for item in result]
    return result
