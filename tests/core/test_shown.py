"""What is shown is the value to the last digit shown, and no digit more than its uncertainty deserves.

The standard library's decimal arithmetic is the oracle of the rounding.
"""

import math
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.core.numbers import shown
from tarebook.core.numbers.quantity import factor, read
from tarebook.core.numbers.units import DIMENSIONS
from tests.core.test_quantity import outcome, readings

SINGLE = [(kind, name) for kind, dimension in DIMENSIONS.items() for name in dimension.units]
COMPOUND = [("mass", "lb oz"), ("mass", "st lb"), ("length", "ft in")]
masses = st.floats(1e-6, 19_000)
margins = st.floats(1e-4, 2000)


def rounded(value: float, place: Decimal) -> Decimal:
    """Half away from zero, as the page says; scaled by hand, since quantize gives up on many digits."""
    return Decimal(math.floor(Fraction(value) / Fraction(place) + Fraction(1, 2))) * place


@given(st.sampled_from(SINGLE), st.floats(0, 1.9))
def test_what_is_shown_in_one_unit_reads_back_to_the_last_digit(unit, si):
    kind, name = unit
    text = shown.lay_out(kind, si, name).text
    place = factor(kind, name) / 10 ** DIMENSIONS[kind].units[name].places
    assert abs(read(kind, text).exact - Fraction(si)) <= place / 2


@given(st.sampled_from(COMPOUND), st.floats(0, 90))
def test_what_is_shown_in_two_units_reads_back_to_a_tenth_of_the_smaller(unit, si):
    kind, name = unit
    text = shown.lay_out(kind, si, name).text
    assert abs(read(kind, text).exact - Fraction(si)) <= factor(kind, name.split(" ")[1]) / 20


@given(masses)
def test_a_mass_alone_is_rounded_as_decimal_arithmetic_rounds_it(kg):
    wanted = Decimal(kg).quantize(Decimal("0.01"), ROUND_HALF_UP)
    assert shown.show_mass(kg, "kg") == f"{wanted} kg"


@given(masses, margins)
def test_a_mass_with_its_uncertainty_ends_where_the_uncertainty_does(kg, margin):
    exponent = Decimal(margin).adjusted()
    place = Decimal(1).scaleb(exponent - 1 if margin < 2 * 10.0**exponent else exponent)
    digits, within = shown.show_mass(kg, "kg", margin).removesuffix(" kg").split(" ± ")
    assert Decimal(within) == rounded(margin, place)
    assert Decimal(digits) == rounded(kg, place)
    assert len(digits.partition(".")[2]) == len(within.partition(".")[2]) == max(-place.adjusted(), 0)


@given(st.sampled_from(SINGLE + COMPOUND), masses, st.one_of(st.none(), margins))
def test_less_than_nothing_is_the_same_text_with_a_minus_sign(unit, si, margin):
    kind, name = unit
    more, less = shown.lay_out(kind, si, name, margin), shown.lay_out(kind, -si, name, margin)
    assert (less.parts, less.within) == (more.parts, more.within)
    nothing = all(float(digits) == 0 for digits, _ in more.parts)
    assert less.text == (more.text if nothing else f"−{more.text}")


@given(masses, masses, st.sampled_from(["kg", "lb", "lb oz"]))
def test_the_heavier_is_never_shown_as_the_lighter(one, other, unit):
    light, heavy = sorted((one, other))
    assert read("mass", shown.show_mass(light, unit)).exact <= read("mass", shown.show_mass(heavy, unit)).exact


@given(readings())
def test_the_keypads_line_shows_what_was_read_and_the_same_in_the_other_system(reading):
    typed = outcome(*reading)
    if isinstance(typed, Exception):
        return
    here, there = shown.show_both(typed).split(" · ")
    other = read(typed.kind, there)
    units = DIMENSIONS[typed.kind].units
    assert here == typed.reads
    assert units[other.unit.split(" ")[-1]].metric != units[typed.unit.split(" ")[-1]].metric
    assert abs(other.exact - typed.exact) <= Fraction(other.last_digit) * Fraction(500_001, 1_000_000)


@given(st.floats(0, 1))
def test_a_chance_is_never_shown_as_certain(probability):
    text = shown.show_chance(probability)
    assert text not in ("0.0 %", "100.0 %")


@given(st.decimals(-100_000, 100_000, places=3))
def test_money_is_rounded_to_the_cent(amount):
    wanted = abs(amount).quantize(Decimal("0.01"), ROUND_HALF_UP)
    text = shown.show_money(str(amount), "EUR")
    assert Decimal(text.removesuffix(" EUR").replace("−", "-")) == wanted.copy_sign(amount)
    assert text.startswith("−") == (amount < 0 and wanted != 0)


@pytest.mark.parametrize("margin", [-1.0, math.nan, -math.inf])
def test_an_uncertainty_that_cannot_be_is_refused(margin):
    with pytest.raises(ValueError, match=f"cannot be {margin}"):
        shown.show_mass(12.0, "kg", margin)


@pytest.mark.parametrize("value", [math.nan, math.inf])
def test_a_value_that_is_no_number_is_never_shown(value):
    with pytest.raises((ValueError, OverflowError)):
        shown.show_mass(value, "kg")
