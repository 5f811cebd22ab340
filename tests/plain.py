"""Results of the core as plain JSON, alike in both languages (`tests/plain.ts`), for the vectors to compare."""

from dataclasses import fields, is_dataclass
from fractions import Fraction
from typing import Any

from tarebook.core.numbers.quantity import Quantity
from tarebook.core.numbers.uncertain import Uncertain

ROUNDING, NOTHING = 1e-9, 1e-12


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


def settled(told: Any) -> Any:
    """A plain result without what is rounding: what nearly cancels is gone, in every order of its terms."""
    if isinstance(told, list):
        return [settled(item) for item in told]
    if not isinstance(told, dict):
        return told
    if "sources" in told and "u" in told:
        value, u = (0.0 if abs(told[name]) < NOTHING else told[name] for name in ("value", "u"))
        parts = {name: part for name, part in told["sources"].items() if abs(part) > max(ROUNDING * u, NOTHING)}
        return {"value": value, "u": u, "sources": parts}
    return {key: 0.0 if key == "share" and abs(value) < NOTHING else settled(value) for key, value in told.items()}
