"""Numbers as `calc` writes them: `{value, unit, u, shown}`, a marshmallow field for each thing that is measured.

A field takes a number of a result and knows what it measures; the units to show it in are those of the question, the
`Asked` of the schema's context.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from marshmallow import Schema, fields
from marshmallow.experimental.context import Context

from tarebook.core.garage.records import Garage
from tarebook.core.numbers.shown import number, show_chance, show_guard, show_hours, show_money, show_plain
from tarebook.core.numbers.uncertain import Uncertain, expanded

Json = dict[str, Any]
Given = Mapping[str, Any]
_UNITS = {"mass_unit": "kg", "length_unit": "mm", "volume_unit": "L", "currency": ""}


@dataclass(frozen=True, slots=True)
class Asked:
    """The garage asked about, and the units to show: those asked for, else of the garage's own record, else these."""

    garage: Garage
    mass_unit: str
    length_unit: str
    volume_unit: str
    currency: str

    @classmethod
    def by(cls, given: Given, garage: Garage) -> Asked:
        own: Given = next(iter(given.get("garages") or []), {})
        return cls(garage, **{name: given.get(name) or own.get(name) or usual for name, usual in _UNITS.items()})


Asking = Context[Asked]


class NumberSchema(Schema):
    """`value` and `u` (standard uncertainty) in `unit`, SI where there is one; `shown` with U = 2u."""

    value = fields.Float(required=True)
    unit = fields.String(required=True)
    u = fields.Float(required=True)
    shown = fields.String(required=True)


class Number(fields.Nested):
    """A number in a unit of no table ("kg m²"), "" for none; null where the result has None.

    `of`: the attribute it is in, by default that of its own name, or what makes it of the result.
    """

    def __init__(self, of: str | Callable[[Any], Any] | None = None, unit: str = "", optional: bool = True) -> None:
        attribute = of if isinstance(of, str) else None
        super().__init__(NumberSchema, required=True, allow_none=optional, attribute=attribute)
        self._made = of if callable(of) else None
        self._CHECK_ATTRIBUTE = self._made is None
        self.unit = unit

    def _serialize(self, value: Any, attr: Any, obj: Any, **kwargs: Any) -> Json | None:  # type: ignore[override]
        found = self._made(obj) if self._made else value
        return None if found is None else self.write(found, Asking.get())

    def write(self, item: Any, asked: Asked) -> Json:
        shown = show_plain(item.value, self.unit, expanded(item))
        return {"value": item.value, "unit": self.unit or "1", "u": item.u, "shown": shown}


class Mass(Number):
    def write(self, item: Uncertain | float, asked: Asked) -> Json:
        return number(item, "mass", asked.mass_unit)


class Length(Number):
    def write(self, item: Uncertain | float, asked: Asked) -> Json:
        return number(item, "length", asked.length_unit)


class Volume(Number):
    def write(self, item: Uncertain | float, asked: Asked) -> Json:
        return number(item, "volume", asked.volume_unit)


class Share(Number):
    def write(self, item: Uncertain | float, asked: Asked) -> Json:
        return number(item, "fraction", "1")


class Guard(Number):
    """What to keep in hand, rounded up."""

    def write(self, kilograms: float, asked: Asked) -> Json:
        return _exact(kilograms, "kg", show_guard(kilograms, asked.mass_unit))


class Chance(Number):
    def write(self, probability: float, asked: Asked) -> Json:
        return _exact(probability, "1", show_chance(probability))


class Hours(Number):
    def write(self, hours: Fraction, asked: Asked) -> Json:
        return _exact(float(hours), "h", show_hours(hours))


class Money(Number):
    def write(self, money: Fraction, asked: Asked) -> Json:
        return _exact(float(money), asked.currency, show_money(money, asked.currency))


def _exact(value: float, unit: str, shown: str) -> Json:
    return {"value": value, "unit": unit, "u": 0.0, "shown": shown}


MEASURES: dict[str, type[Number]] = {
    "mass": Mass, "length": Length, "volume": Volume, "share": Share, "guard": Guard, "chance": Chance,
    "hours": Hours, "money": Money,
}  # fmt: skip
