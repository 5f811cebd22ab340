"""Rounding, in whole numbers only: half away from zero, of the exact value, as `shown` asks for it.

A value scaled by a power of ten and rounded is a whole number from there on, so no digit depends on how a language
prints a double.
"""

from fractions import Fraction
from math import ceil

from tarebook.core.numbers.quantity import MINUS


def margin_places(margin: Fraction, most: int) -> tuple[int, int]:
    """(decimals, scaled U): two digits when the first is 1, else one; never finer than `most`, never zero."""
    exponent = exponent_of(margin)
    wanted = 1 - exponent if margin < 2 * Fraction(10) ** exponent else -exponent
    if wanted <= most:
        return wanted, rounded(margin, wanted)
    # What is over by less than a twentieth of the place is let go.
    return most, max(rounded(margin - Fraction(1, 20) / 10**most, most, up=True), 1)


def exponent_of(positive: Fraction) -> int:
    """The power of ten of the first digit."""
    guess = len(str(positive.numerator)) - len(str(positive.denominator))
    return guess if positive >= Fraction(10) ** guess else guess - 1


def rounded(exact: Fraction, places: int, up: bool = False) -> int:
    """`exact` in units of 10^-places, half away from zero; or `up`, to the next one above."""
    if up:
        return ceil(exact * Fraction(10) ** places)
    scaled = abs(exact) * Fraction(10) ** places
    whole = (2 * scaled.numerator + scaled.denominator) // (2 * scaled.denominator)
    return whole if exact >= 0 else -whole


def digits_of(scaled: int, places: int) -> str:
    """The digits of a size that counts 10^-places."""
    if places <= 0:
        return str(abs(scaled) * 10**-places)
    text = str(abs(scaled)).rjust(places + 1, "0")
    return f"{text[:-places]}.{text[-places:]}"


def sign_of(scaled: int, signed: bool) -> str:
    """Minus, a plus where one is asked for, or nothing: never a sign before zero."""
    if scaled < 0:
        return MINUS
    return "+" if signed and scaled > 0 else ""
