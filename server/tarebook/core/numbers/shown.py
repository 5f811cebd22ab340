"""How a number is written for a person; it alone has anything rounded (`rounded`).

A driver in gloves reads it at arm's length, so: no more digits than the value deserves, the unit last, a true
minus sign (−), and no thousands marks, so that what is shown can be typed back.

* With its uncertainty U (95 %): U keeps two digits when its first is 1, else one; the value ends at the same
  place: "912.4 ± 1.2 kg", "3.1 ± 0.8 kg", "910 ± 30 kg".
* Without: a fixed number of decimals for each unit (`core/numbers/units`): kg 2, lb 2, oz 1, g 0, mm 0, in 2, L 1.
* Two units: "15 lb 6 oz", "3 lb 4.5 oz", "23 lb" when nothing is left over, "−3 oz" below a pound. With U it is
  "15 lb 6 oz ± 2 oz"; when U is a pound or more, ounces say nothing and pounds stand alone: "2011 ± 3 lb".
* Rounding is half away from zero, of the exact value of the double. Nothing is shown as "−0". What is to be kept in
  hand is rounded up, and so is a U that has no place for the digits it deserves [JCGM 100:2008, 7.2.6].

The functions named `show_…` give text. `lay_out` gives the same text in parts, for big figures beside small units.
`show_length`, `show_stepped`, `show_volume` and `show_both` are said by the phone alone; here stands the twin that its
vectors are written from.
"""

from dataclasses import dataclass
from fractions import Fraction
from typing import Any, Literal

from tarebook.core.numbers.quantity import Quantity, factor, read_number
from tarebook.core.numbers.rounded import digits_of, exponent_of, margin_places, rounded, sign_of
from tarebook.core.numbers.uncertain import Uncertain, expanded
from tarebook.core.numbers.units import DIMENSIONS, Kind

COMPOUND_PLACES = 1
COMPOUND_MOST = 2
PLAIN_MOST = 4
HOURS_MOST = 3
_FINER = 5.0  # common practice, no source
# Shown beside a reading typed in the other system, when the garage does not count in that system itself.
_BESIDE_METRIC = {"kg": "lb", "g": "oz", "t": "lb", "mm": "in", "cm": "in", "m": "in", "L": "gal_us", "ml": "gal_us"}
_BESIDE_OTHERS: dict[Kind, str] = {"mass": "kg", "length": "mm", "volume": "L"}

_FOOT2 = Fraction(9_290_304, 100_000_000)
# Label, one in m², decimals, and the least that is shown in it, in m².
_AREAS = {
    "mm": (("m²", Fraction(1), 2, Fraction(1, 10)), ("cm²", Fraction(1, 10_000), 1, Fraction(0))),
    "in": (("ft²", _FOOT2, 2, _FOOT2), ("in²", _FOOT2 / 144, 1, Fraction(0))),
}


@dataclass(frozen=True)
class Shown:
    """`sign`: "", "−" or "+". `parts` and `within`: (digits, unit) pairs; `within` is what follows ±, or empty."""

    sign: str
    parts: tuple[tuple[str, str], ...]
    within: tuple[tuple[str, str], ...]

    @property
    def text(self) -> str:
        if len(self.parts) == 1 and self.within:
            (digits, unit), (margin, _) = self.parts[0], self.within[0]
            return f"{self.sign}{digits} ± {margin} {unit}".strip(" ")
        text = self.sign + _join(self.parts)
        return f"{text} ± {_join(self.within)}" if self.within else text


def show_mass(kg: float | Fraction, unit: str, U: float | None = None, signed: bool = False) -> str:  # noqa: N803
    """A mass in `unit` ("kg", "g", "lb", "oz", "lb oz" …). `U`: expanded uncertainty in kg. `signed` writes "+" too."""
    return lay_out("mass", kg, unit, U, signed).text


def show_guard(kg: float, unit: str, U: float | None = None) -> str:  # noqa: N803
    """A mass to keep in hand: rounded up, to the place that `U` (kg) deserves, so that it is never too little."""
    shown = lay_out("mass", kg, unit, U, up=True)
    return shown.sign + _join(shown.parts)


def show_in_hand(kg: float, unit: str, U: float) -> str:  # noqa: N803
    """What to keep above the minimum, rounded up, to about a digit more than `U` (kg), what the weight is known to."""
    return show_guard(kg, unit, U / _FINER)


def show_claim(kg: float, unit: str, U: float) -> str:  # noqa: N803
    """A mass alone, to the nearest of the place that `U` (kg) deserves: as it is typed, without a "±"."""
    shown = lay_out("mass", kg, unit, U)
    return shown.sign + _join(shown.parts)


def show_doubt(U: float, unit: str) -> str:  # noqa: N803
    """A doubt alone (kg), in the form it has behind a "±": "0.4 kg", "12 oz", "3 lb"."""
    return _join(lay_out("mass", 0.0, unit, U).within)


def show_length(m: float | Fraction, unit: str, U: float | None = None, signed: bool = False) -> str:  # noqa: N803
    """A length in `unit` ("mm", "in", "ft in" …). `U`: expanded uncertainty in m."""
    return lay_out("length", m, unit, U, signed).text


def show_stepped(m: float, unit: str, step: str, up: bool = False) -> str:
    """A length to the nearest `step` (a plain decimal, in `unit`), or the next above: "1240 mm" of 1.2368 and "10"."""
    width = read_number(step)
    steps = rounded(Fraction(m) / factor("length", unit) / width, 0, up)
    places = len(step.partition(".")[2])
    return _single(steps * width, None, DIMENSIONS["length"].units[unit].label, (places, places), False).text


def show_area(m2: float, length_unit: str, U: float | None = None) -> str:  # noqa: N803
    """An area beside lengths in `length_unit`: "0.42 m²", "25.0 cm²", "4.52 ft²", "12.5 in²". `U` in m²."""
    large, small = _AREAS[length_unit]
    label, one, places, _ = large if Fraction(m2) >= large[3] else small
    return _single(Fraction(m2) / one, _margin_in(U, one), label, (places, PLAIN_MOST), False).text


def show_volume(m3: float | Fraction, unit: str, U: float | None = None, signed: bool = False) -> str:  # noqa: N803
    """A volume in `unit` ("L", "gal_us", "gal_imp"). `U`: expanded uncertainty in m³."""
    return lay_out("volume", m3, unit, U, signed).text


def show_percent(fraction: float | Fraction, U: float | None = None) -> str:  # noqa: N803
    """A share as per cent with one decimal, or as its `U` (a fraction too) deserves: "51.3 ± 0.4 %"."""
    margin = _margin_in(U, Fraction(1, 100))
    return _single(Fraction(fraction) * 100, margin, "%", (1, 4), False).text


def show_chance(probability: float) -> str:
    """A probability as per cent that never claims certainty: "less than 0.1 %", "3.2 %", "more than 99.9 %"."""
    exact = Fraction(probability) * 100
    if exact < Fraction(1, 10):
        return "less than 0.1 %"
    return "more than 99.9 %" if exact > Fraction(999, 10) else show_percent(probability)


def show_odds(probability: float) -> str:
    """Odds as whole per cent, never none and never all: "60 %"."""
    exact = Fraction(min(max(probability, 0.01), 0.99)) * 100
    return _single(exact, None, "%", (0, 0), False).text


def show_money(amount: str | float | Fraction, currency: str = "", signed: bool = False) -> str:
    """An amount with two decimals, none when it is whole: "120 EUR", "12.50 EUR". Text must be a plain decimal."""
    exact = read_number(amount) if isinstance(amount, str) else Fraction(amount)
    places = 0 if rounded(exact, 2) % 100 == 0 else 2
    return _single(exact, None, currency, (places, places), signed).text


def show_hours(hours: str | float | Fraction) -> str:
    """Hours as they were typed, without zeros at the end: "0.25 h", "2.5 h", "3 h"."""
    exact = read_number(hours) if isinstance(hours, str) else Fraction(hours)
    places = HOURS_MOST
    while places and rounded(exact, places) % 10 == 0:
        places -= 1
    return _single(exact, None, "h", (places, places), False).text


def show_plain(value: float | Fraction, label: str = "", U: float | None = None, signed: bool = False) -> str:  # noqa: N803
    """A number in a unit of no table ("kg m²", "kg/kW", none) with two decimals, or as its `U` deserves."""
    return _single(Fraction(value), _margin_in(U, Fraction(1)), label, (2, PLAIN_MOST), signed).text


def show_both(reading: Quantity, unit: str | None = None) -> str:
    """The reading as it was read, and in the other system: "6 3/8 oz · 0.181 kg".

    `unit`: the unit the garage counts in; it is the other one when it is of the other system. The second value
    ends where the typed one does.
    """
    return f"{reading.reads} · {_other(reading, unit)}"


def number(item: Uncertain | float, kind: Kind | Literal["fraction"], unit: str, k: float = 2.0) -> dict[str, Any]:
    """A result as `calc` gives it: `{value, unit, u, shown}`, value and u in SI, `shown` in `unit`."""
    value = item if isinstance(item, Uncertain) else Uncertain(float(item))
    margin = expanded(value, k)
    if kind == "fraction":
        return {"value": value.value, "unit": "1", "u": value.u, "shown": show_percent(value.value, margin)}
    shown = lay_out(kind, value.value, unit, margin).text
    return {"value": value.value, "unit": DIMENSIONS[kind].si, "u": value.u, "shown": shown}


def lay_out(
    kind: Kind,
    si: float | Fraction,
    unit: str,
    U: float | None = None,  # noqa: N803
    signed: bool = False,
    up: bool = False,
) -> Shown:
    """The value in `unit` as parts. Two units with a space between ("lb oz", "ft in") are shown together.

    `up` rounds towards more instead of to the nearest.
    """
    names = unit.split(" ")
    exact = Fraction(si) / factor(kind, names[-1])
    margin = _margin_in(U, factor(kind, names[-1]))
    units = DIMENSIONS[kind].units
    if len(names) == 1:
        named = units[unit]
        return _single(exact, margin, named.label, (named.places, named.most_places), signed, up)
    ratio = int(factor(kind, names[0]) / factor(kind, names[1]))
    if margin is not None and rounded(margin, 0) >= ratio:
        return _single(exact / ratio, margin / ratio, units[names[0]].label, (0, 0), signed, up)
    return _double(exact, margin, ratio, (units[names[0]].label, units[names[1]].label), signed, up=up)


def _other(reading: Quantity, unit: str | None) -> str:
    units = DIMENSIONS[reading.kind].units
    small = reading.unit.split(" ")[-1]
    beside = _BESIDE_METRIC[small] if units[small].metric else _BESIDE_OTHERS[reading.kind]
    if unit and units[unit.split(" ")[0]].metric != units[small].metric:
        beside = unit
    names = beside.split(" ")
    exact = reading.exact / factor(reading.kind, names[-1])
    most = units[beside].most_places if len(names) == 1 else COMPOUND_MOST
    places = min(_places_beside(reading, exact, factor(reading.kind, names[-1])), most)
    if len(names) == 1:
        return _single(exact, None, units[beside].label, (places, places), False).text
    ratio = int(factor(reading.kind, names[0]) / factor(reading.kind, names[1]))
    return _double(exact, None, ratio, (units[names[0]].label, units[names[1]].label), False, places).text


def _places_beside(reading: Quantity, exact: Fraction, one: Fraction) -> int:
    """Decimals of `exact` (in units of `one` SI) that tell what was typed: to its last digit, a fraction to a third of
    it, and two digits at least."""
    last_digit = Fraction(reading.last_digit) / one / (3 if "/" in reading.reads else 1)
    shortest = 1 - exponent_of(abs(exact)) if exact else 0
    return max(-exponent_of(last_digit), shortest, 0)


def _single(
    exact: Fraction, margin: Fraction | None, label: str, places: tuple[int, int], signed: bool, up: bool = False
) -> Shown:
    """`places`: decimals without a margin, and the most with one."""
    ends, within = (places[0], 0) if margin is None else margin_places(margin, places[1])
    scaled = rounded(exact, ends, up)
    around = () if margin is None else ((digits_of(within, ends), label),)
    return Shown(sign_of(scaled, signed), ((digits_of(scaled, ends), label),), around)


def _double(
    exact: Fraction,
    margin: Fraction | None,
    ratio: int,
    labels: tuple[str, str],
    signed: bool,
    places: int = COMPOUND_PLACES,
    up: bool = False,
) -> Shown:
    """`exact` and `margin` in the smaller unit, of which the larger has `ratio`."""
    ends, within = (places, 0) if margin is None else margin_places(margin, COMPOUND_MOST)
    scaled = rounded(exact, ends, up)
    large, rest = divmod(abs(scaled), ratio * 10**ends)
    small = digits_of(rest, ends)
    if margin is None:
        small = small.removesuffix("." + "0" * ends)
    parts = [(str(large), labels[0]), (small, labels[1])]
    if large == 0:
        del parts[0]
    elif rest == 0 and margin is None:
        del parts[1]
    around = () if margin is None else ((digits_of(within, ends), labels[1]),)
    return Shown(sign_of(scaled, signed), tuple(parts), around)


def _margin_in(U: float | None, one: Fraction) -> Fraction | None:  # noqa: N803
    """U in the unit that has `one` of SI; None when there is none."""
    if U is None or U == 0:
        return None
    if not U > 0:
        raise ValueError(f"an uncertainty cannot be {U}")
    return Fraction(U) / one


def _join(parts: tuple[tuple[str, str], ...]) -> str:
    return " ".join(f"{digits} {unit}".strip(" ") for digits, unit in parts)
