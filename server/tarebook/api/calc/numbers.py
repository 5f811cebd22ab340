"""How `calc` writes its answers: numbers as `{value, unit, u, shown}`, warnings with their sentences."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction
from typing import Any

from marshmallow import Schema, fields

from tarebook.core.garage.records import Warned
from tarebook.core.numbers.shown import number, show_chance, show_guard, show_hours, show_money, show_plain
from tarebook.core.numbers.uncertain import Uncertain, expanded
from tarebook.errors import describe

Json = dict[str, Any]


class NumberSchema(Schema):
    """`value` and `u` (standard uncertainty) in `unit`, SI where there is one; `shown` with U = 2u."""

    value = fields.Float(required=True)
    unit = fields.String(required=True)
    u = fields.Float(required=True)
    shown = fields.String(required=True)


class ToldSchema(Schema):
    """A warning, or the reason for an answer that is null: a code of the error table, filled in."""

    code = fields.String(required=True)
    sentence = fields.String(required=True)
    do = fields.String(required=True)
    data = fields.Dict(required=True)


class Numbers:
    """Writes in the units asked for, else in those of the garage's own record, else in kg, mm and litres."""

    def __init__(self, given: Mapping[str, Any]) -> None:
        own: Mapping[str, Any] = next(iter(given.get("garages") or []), {})
        self.mass_unit: str = given.get("mass_unit") or own.get("mass_unit") or "kg"
        self.length_unit: str = given.get("length_unit") or own.get("length_unit") or "mm"
        self.volume_unit: str = given.get("volume_unit") or own.get("volume_unit") or "L"
        self.currency: str = given.get("currency") or own.get("currency") or ""

    def mass(self, item: Uncertain | float | None) -> Json | None:
        return None if item is None else number(item, "mass", self.mass_unit)

    def guard(self, kilograms: float) -> Json:
        """What to keep in hand, rounded up."""
        return {"value": kilograms, "unit": "kg", "u": 0.0, "shown": show_guard(kilograms, self.mass_unit)}

    def length(self, item: Uncertain | None) -> Json | None:
        return None if item is None else number(item, "length", self.length_unit)

    def volume(self, item: Uncertain | None) -> Json | None:
        return None if item is None else number(item, "volume", self.volume_unit)

    def share(self, item: Uncertain | float | None) -> Json | None:
        return None if item is None else number(item, "fraction", "1")

    def chance(self, probability: float) -> Json:
        return {"value": probability, "unit": "1", "u": 0.0, "shown": show_chance(probability)}

    def hours(self, hours: Fraction) -> Json:
        return {"value": float(hours), "unit": "h", "u": 0.0, "shown": show_hours(hours)}

    def money(self, money: Fraction) -> Json:
        return {"value": float(money), "unit": self.currency, "u": 0.0, "shown": show_money(money, self.currency)}

    def plain(self, item: Uncertain | None, unit: str) -> Json | None:
        """A number in a unit of no table, "" for none."""
        if item is None:
            return None
        return {
            "value": item.value,
            "unit": unit or "1",
            "u": item.u,
            "shown": show_plain(item.value, unit, expanded(item)),
        }

    def masses(self, items: Mapping[str, Uncertain]) -> Json:
        return {name: self.mass(item) for name, item in items.items()}


def typed_text(value: Any) -> Any:
    """A quantity as the text a person would have typed: `{value, unit}` in one piece, a text as it is."""
    return f"{value['value']} {value['unit']}" if isinstance(value, Mapping) else value


def told(warning: Warned | None) -> Json | None:
    return None if warning is None else describe(warning["code"], warning["data"])


def all_told(warnings: Iterable[Warned]) -> list[Json]:
    """Every warning once, in the order of their first saying."""
    found: list[Json] = []
    for warning in warnings:
        described = describe(warning["code"], warning["data"])
        if described not in found:
            found.append(described)
    return found


def numeric(**kwargs: Any) -> fields.Nested:
    """A number, or null when it cannot be told."""
    return fields.Nested(NumberSchema, required=True, allow_none=True, **kwargs)


def warned_of() -> fields.List[Any]:
    return fields.List(fields.Nested(ToldSchema), required=True)
