"""Typed text before any unit is known: one spelling for every mark, refusals at sight, and bare numbers.

A phone's keyboard writes curly quotes, long dashes and ready-made fractions; a spreadsheet writes hard spaces.
`tidy` turns them all into plain ASCII. What can be refused from the text alone (a comma, an exponent, a sum) is
refused here, so that the sentence speaks of that and not of a unit.
"""

import re
from dataclasses import dataclass
from fractions import Fraction
from unicodedata import normalize

from tarebook.errors import TarebookError

LONGEST = 64  # characters; the journal keeps no longer typed quantity

_FRACTIONS = "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒"
_SAME = str.maketrans(
    {
        **{letter: letter.lower() for letter in "ABCDEFGHIJKLMNOPQRSTUVWXYZ"},
        **{mark: f" {normalize('NFKC', mark)} ".replace("\u2044", "/") for mark in _FRACTIONS},
        **dict.fromkeys("\u2212\u2013\u2014\u2010\u2011", "-"),
        **dict.fromkeys("\u2032\u2019\u2018\u00b4", "'"),
        **dict.fromkeys("\u2033\u201d\u201c", '"'),
        "\u2044": "/",
    }
)
_SPACES = re.compile("[ \t\r\n\f\v\u00a0\u2000-\u200b\u202f\u205f\u3000\ufeff]+")
_COMMA = re.compile(r"[0-9][0-9.,]*,[0-9][0-9.,]*|,[0-9][0-9.,]*")
_EXPONENT = re.compile(r"[0-9.]e[+-]?[0-9]")
_SUM = re.compile(r"[+*×]|(^|[^a-z])x([^a-z]|$)")
_DECIMAL = re.compile(r"([0-9]*)(?:\.([0-9]*))?")
_MIXED = re.compile(r"(?:([0-9]+) )?([0-9]+) ?/ ?([0-9]+)")
_GAP = re.compile(r"[0-9.]+(?: [0-9.]+)+")


class QuantityError(TarebookError):
    """A typed quantity that cannot be read. `data` always has `typed`, `kind` and `example`."""


@dataclass(frozen=True)
class Digits:
    """`place`: the place of its last digit. `reads`: the number spelled out."""

    exact: Fraction
    place: Fraction
    reads: str


def same_marks(text: str) -> str:
    """One spelling for every letter, dash, quote and fraction."""
    return text.translate(_SAME)


def tidy(text: str) -> str:
    """The text with one spelling for every mark, one space for every gap, in lower case."""
    if len(text) > LONGEST:
        raise QuantityError("quantity_long", most=LONGEST)
    plain = _SPACES.sub(" ", same_marks(text)).strip(" ")
    return re.sub(r"([0-9]) ?- ?([0-9]+ ?/)", r"\1 \2", plain)


def refuse_at_sight(plain: str) -> None:
    """Refuse what no unit could make readable."""
    if plain == "":
        raise QuantityError("quantity_empty")
    if comma := _COMMA.search(plain):
        raise QuantityError("quantity_comma", instead=_without_comma(plain, comma))
    if _EXPONENT.search(plain):
        raise QuantityError("quantity_exponent")
    if _SUM.search(plain):
        raise QuantityError("quantity_sum")
    if "-" in plain:
        raise QuantityError("quantity_unreadable")


def _without_comma(plain: str, comma: re.Match[str]) -> str:
    """What may have been meant: `1,25` is 1.25, `1,250.5` is 1250.5, and `1,250` could be either."""
    number = comma[0]
    before, after = plain[: comma.start()], plain[comma.end() :]
    if "." in number:
        point = max(number.rfind("."), number.rfind(","))
        digits = re.sub("[.,]", "", number[:point]) + "." + number[point + 1 :]
        return before + digits + after
    joined = before + number.replace(",", "") + after
    if number.count(",") > 1:
        return joined
    pointed = before + number.replace(",", ".") + after
    return f"{joined} or {pointed}" if re.fullmatch("[1-9][0-9]{0,2},[0-9]{3}", number) else pointed


def unit_word(text: str) -> str:
    """The words after a number, without dots, commas and brackets."""
    return re.sub(" +", " ", re.sub("[.,()]", " ", text)).strip(" ")


def read_digits(text: str) -> Digits:
    """A decimal, a fraction or a whole number with a fraction."""
    decimal = _DECIMAL.fullmatch(text)
    if decimal and (decimal[1] or decimal[2]):
        whole, places = int(decimal[1] or "0"), decimal[2] or ""
        place = Fraction(1, 10 ** len(places))
        reads = f"{whole}.{places}" if places else str(whole)
        return Digits(whole + int(places or "0") * place, place, reads)
    if _GAP.fullmatch(text):
        raise QuantityError("quantity_gap", instead=text.replace(" ", ""))
    if "/" in text:
        return _fraction(text)
    raise QuantityError("quantity_unreadable")


def _fraction(text: str) -> Digits:
    mixed = _MIXED.fullmatch(text)
    if mixed is None or int(mixed[3]) == 0 or (mixed[1] and int(mixed[2]) >= int(mixed[3])):
        raise QuantityError("quantity_fraction")
    whole, above, below = int(mixed[1] or "0"), int(mixed[2]), int(mixed[3])
    reads = f"{whole} {above}/{below}" if mixed[1] else f"{above}/{below}"
    return Digits(whole + Fraction(above, below), Fraction(1, below), reads)
