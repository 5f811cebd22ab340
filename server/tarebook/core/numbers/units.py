"""The units a person may type, in one table; the phone's copy is generated from it.

Each dimension says which words it knows, which two units may stand together ("3 lb 4 oz"), which words could
mean two things, and how large a value may be before it must be a slip. Factors are not here: `core/numbers/quantity`
asks pint for them, so that no factor is ever typed by hand.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Literal

Kind = Literal["mass", "length", "volume"]


@dataclass(frozen=True)
class Unit:
    """`pint`: pint's name. `places`: decimals shown when no uncertainty is known; `most_places`: never more than these.

    `words`: how people write it, lower case, without dots and brackets.
    """

    pint: str
    label: str
    places: int
    most_places: int
    metric: bool
    words: tuple[str, ...]


@dataclass(frozen=True)
class Dimension:
    """`most`: the largest value read, as (number of `si` units, what a person reads).

    `asked`: the units named to a person who must choose. `smaller`: unit → the one that may follow it.
    `unclear`: word → the units it could mean.
    """

    si: str
    example: str
    most: tuple[int, str]
    asked: tuple[str, ...]
    smaller: Mapping[str, str]
    unclear: Mapping[str, tuple[str, ...]]
    units: Mapping[str, Unit] = field(repr=False)

    @cached_property
    def names(self) -> dict[str, str]:
        """Word → name of the unit it means."""
        return {word: name for name, unit in self.units.items() for word in unit.words}


def _unit(pint: str, label: str, places: int, most_places: int, metric: bool, words: str) -> Unit:
    """`words` in one text, a comma between two."""
    return Unit(pint, label, places, most_places, metric, tuple(words.split(", ")))


MASS = Dimension(
    si="kg",
    example="6 3/8 oz",
    most=(20_000, "20000 kg"),
    asked=("kg", "g", "lb", "oz"),
    smaller={"st": "lb", "lb": "oz", "kg": "g"},
    unclear={"gr": ("g",), "ton": ("t",), "tons": ("t",), "#": ("lb",)},
    units={
        "kg": _unit("kilogram", "kg", 2, 5, True, "kg, kgs, kilo, kilos, kilogram, kilograms, kilogramme, kilogrammes"),
        "g": _unit("gram", "g", 0, 2, True, "g, gm, gms, gram, grams, gramme, grammes"),
        "t": _unit("tonne", "t", 3, 6, True, "t, tonne, tonnes"),
        "lb": _unit("pound", "lb", 2, 4, False, "lb, lbs, pound, pounds"),
        "oz": _unit("ounce", "oz", 1, 3, False, "oz, ozs, ounce, ounces"),
        "st": _unit("stone", "st", 2, 4, False, "st, stone, stones"),
    },
)

LENGTH = Dimension(
    si="m",
    example="98 1/4 in",
    most=(100, "100 m"),
    asked=("mm", "cm", "m", "in"),
    smaller={"ft": "in"},
    unclear={},
    units={
        "mm": _unit("millimetre", "mm", 0, 2, True, "mm, millimetre, millimetres, millimeter, millimeters"),
        "cm": _unit("centimetre", "cm", 1, 3, True, "cm, centimetre, centimetres, centimeter, centimeters"),
        "m": _unit("metre", "m", 3, 5, True, "m, metre, metres, meter, meters"),
        "in": _unit("inch", "in", 2, 4, False, "in, ins, inch, inches, \", ''"),
        "ft": _unit("foot", "ft", 2, 4, False, "ft, foot, feet, '"),
    },
)

_US_GALLONS = "us gal, us gals, gal us, gal_us, us gallon, us gallons, gallon us, gallons us"
_IMPERIAL_GALLONS = (
    "imp gal, imp gals, gal imp, gal_imp, imp gallon, imp gallons, uk gal, gal uk, imperial gallon, imperial gallons, "
    "gallon imp, gallons imp, uk gallon, uk gallons"
)
VOLUME = Dimension(
    si="m3",
    example="42 L",
    most=(2, "2000 L"),
    asked=("L", "gal_us", "gal_imp"),
    smaller={},
    unclear=dict.fromkeys(("gal", "gals", "gallon", "gallons"), ("gal_us", "gal_imp")),
    units={
        "L": _unit("litre", "L", 1, 4, True, "l, ltr, litre, litres, liter, liters"),
        "ml": _unit("millilitre", "ml", 0, 2, True, "ml, millilitre, millilitres, milliliter, milliliters"),
        "gal_us": _unit("gallon", "US gal", 2, 4, False, _US_GALLONS),
        "gal_imp": _unit("imperial_gallon", "imp gal", 2, 4, False, _IMPERIAL_GALLONS),
    },
)

DIMENSIONS: Mapping[Kind, Dimension] = {"mass": MASS, "length": LENGTH, "volume": VOLUME}
