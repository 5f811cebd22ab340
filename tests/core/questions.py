"""Ten thousand seeded questions to put to both languages: values to show, text to read, sums to add up."""

import math
from collections.abc import Callable
from random import Random
from typing import Any

from tarebook.core.numbers.units import DIMENSIONS, Kind

Question = dict[str, Any]

SHOWN_UNITS: dict[Kind, tuple[str, ...]] = {
    "mass": ("kg", "g", "lb", "oz", "lb oz", "t", "st lb"),
    "length": ("mm", "cm", "m", "in", "ft", "ft in"),
    "volume": ("L", "ml", "gal_us", "gal_imp"),
}
KINDS: tuple[Kind, ...] = ("mass", "mass", "mass", "length", "volume")
# What fingers, dictation and spreadsheets put into a field by mistake.
SLIPS = "0123456789.,-/ '\"x+eE½⅜⁄×−’”\u00a0\u2009kglbozmtinf#()€"


def size(random: Random) -> float:
    """A value of any size: round, just at a half, or anything; of either sign."""
    exact = random.choice((random.randrange(2000) / 2, random.randrange(20_000) / 200, random.randrange(100) / 800))
    value = random.choice((exact, exact, 10 ** random.uniform(-6, 4), 0.0))
    return random.choice((-1, 1)) * value


def margin(random: Random) -> float | None:
    """U: often none, sometimes a round number, mostly anything."""
    return random.choice((None, None, 0.0, random.randrange(1, 40) / 10, 10 ** random.uniform(-7, 3)))


def to_lay_out(random: Random) -> Question:
    kind = random.choice(KINDS)
    unit = random.choice(SHOWN_UNITS[kind])
    given = {"kind": kind, "si": size(random), "unit": unit, "U": margin(random), "signed": random.random() < 0.3}
    return {"function": "shown.lay_out", "in": given}


def to_show(random: Random) -> Question:
    percent = {"function": "shown.show_percent", "in": {"fraction": size(random) / 100, "U": margin(random)}}
    chance = {"function": "shown.show_chance", "in": {"probability": random.random() ** 8}}
    money = {"function": "shown.show_money", "in": {"amount": size(random), "currency": "EUR"}}
    hours = {"function": "shown.show_hours", "in": {"hours": size(random)}}
    return random.choice((percent, chance, money, hours))


def typed_number(random: Random) -> str:
    whole = str(random.choice((random.randrange(10), random.randrange(30), random.randrange(3000))))
    digits = "".join(random.choice("0123456789") for _ in range(random.randrange(1, 4)))
    below = random.choice((2, 4, 8, 16))
    fraction = f"{random.randrange(1, below)}/{below}"
    return random.choice((whole, f"{whole}.{digits}", f".{digits}", fraction, f"{whole} {fraction}", f"{whole}½"))


def typed(random: Random, kind: Kind) -> str:
    """Something like a reading; three in ten have a slip in it."""
    words = [word for unit in DIMENSIONS[kind].units.values() for word in unit.words]
    gap = random.choice(("", " ", "  ", "\u00a0"))
    text = typed_number(random) + gap + random.choice(words)
    if random.random() < 0.4:
        large, small = random.choice(list({**DIMENSIONS[kind].smaller, "lb": "oz"}.items()))
        text = f"{random.randrange(30)} {large}{gap}{typed_number(random)} {small}"
    if random.random() < 0.3:
        at = random.randrange(len(text))
        text = text[:at] + random.choice(SLIPS) + text[at + random.randrange(2) :]
    return random.choice((text, text, text, text.upper()))


def to_read(random: Random) -> Question:
    kind = random.choice(KINDS)
    default = random.choice((None, *SHOWN_UNITS[kind], "pounds", "gal"))
    positive = random.random() < 0.5
    given = {"kind": kind, "text": typed(random, kind), "default_unit": default, "positive": positive}
    return {"function": "quantity.read", "in": given}


def to_show_both(random: Random) -> Question:
    kind = random.choice(KINDS)
    unit = random.choice((None, *SHOWN_UNITS[kind][:5]))
    return {"function": "shown.show_both", "in": {"kind": kind, "text": typed(random, kind), "unit": unit}}


def to_add(random: Random) -> Question:
    """Items that share some of their sources; powers of two and cancelling terms make ties likely."""
    names = [f"s{n}" for n in range(6)]
    items = []
    for _ in range(random.randrange(1, 9)):
        value = random.choice((size(random), math.ldexp(random.choice((-1.0, 1.0)), random.randrange(-120, 60))))
        sources = {name: size(random) for name in random.sample(names, random.randrange(4))}
        items.append({"value": value, "sources": sources})
    weights = [random.choice((1, -1, 0.25, size(random))) for _ in items]
    return {"function": "uncertain.weighted_sum", "in": {"items": items, "weights": weights}}


ASKED: tuple[tuple[Callable[[Random], Question], int], ...] = (
    (to_lay_out, 4000),
    (to_show, 1000),
    (to_read, 3000),
    (to_show_both, 2000),
    (to_add, 2000),
)


def questions(seed: int) -> list[Question]:
    random = Random(seed)
    return [ask(random) for ask, times in ASKED for _ in range(times)]
