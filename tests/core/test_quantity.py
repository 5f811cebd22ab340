"""Readings hold for any text: read the same when spelled out, refused in words, never guessed, never a crash."""

import re
import unicodedata
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.core.numbers.quantity import read, read_mass
from tarebook.core.numbers.typed import LONGEST, QuantityError
from tarebook.core.numbers.units import DIMENSIONS
from tarebook.errors import ERRORS
from tests.core.questions import SLIPS
from tests.vectors import FILES, load

kinds = st.sampled_from(["mass", "length", "volume"])
whole = st.integers(0, 900)
decimals = st.from_regex(r"[0-9]{1,3}\.[0-9]{1,4}|\.[0-9]{1,3}", fullmatch=True)
fractions = st.tuples(st.integers(1, 31), st.sampled_from([2, 4, 8, 16, 32])).map(lambda pair: f"{pair[0]}/{pair[1]}")
mixed = st.tuples(whole, st.sampled_from(["1/2", "3/8", "15/16", "⅜", "½"])).map("{0[0]} {0[1]}".format)
numbers = st.one_of(whole.map(str), decimals, fractions, mixed)


@st.composite
def readings(draw):
    """(kind, text) of a reading in one unit, any word for it, any spacing."""
    kind = draw(kinds)
    word = draw(st.sampled_from([word for unit in DIMENSIONS[kind].units.values() for word in unit.words]))
    return kind, draw(numbers) + draw(st.sampled_from(["", " ", "\u00a0", "  "])) + word


def outcome(*asked):
    try:
        return read(*asked)
    except QuantityError as refusal:
        return refusal


@given(readings())
def test_a_reading_spelled_out_reads_the_same(reading):
    kind, text = reading
    first = outcome(kind, text)
    if not isinstance(first, QuantityError):
        assert replace(read(kind, first.reads), text=text) == first
    else:
        assert first.code == "quantity_absurd"


@given(kinds, st.one_of(st.text(max_size=80), st.text(SLIPS, max_size=20)), st.sampled_from([None, "kg", "lb oz", "m"]))
def test_any_text_is_read_or_refused_in_words(kind, text, default_unit):
    result = outcome(kind, text, default_unit)
    if isinstance(result, QuantityError):
        assert result.code in ERRORS
        assert result.data["typed"] == text[:LONGEST]
        row = ERRORS[result.code]
        assert set(re.findall(r"{(\w+)}", row.sentence + row.do)) <= result.data.keys()
    else:
        assert result.text == text
        assert result.exact >= 0
        assert result.last_digit > 0


@given(numbers, st.sampled_from(["kg", "g", "lb", "oz"]))
def test_the_picked_unit_reads_as_the_typed_one(number, unit):
    picked, typed = read_mass(number, unit), read_mass(f"{number} {unit}")
    assert (picked.exact, picked.reads, picked.last_digit) == (typed.exact, typed.reads, typed.last_digit)


@given(st.integers(0, 900), st.decimals(0, "15.99", places=2))
def test_pounds_and_ounces_are_their_sum(pounds, ounces):
    both = read_mass(f"{pounds} lb {ounces} oz")
    assert both.exact == read_mass(f"{pounds} lb").exact + read_mass(f"{ounces} oz").exact


@given(st.decimals(0, 15_000, places=3))
def test_a_metric_reading_is_the_decimal_itself(number):
    read_number = read_mass(f"{number} kg")
    assert read_number.exact == Fraction(number)
    assert read_number.value == float(number)
    assert read_number.last_digit == 0.001


@given(st.one_of(decimals, whole.map(str)), st.sampled_from(["kg", "lb"]))
def test_a_decimal_comma_is_offered_with_a_point(number, unit):
    result = outcome("mass", f"{number} {unit}".replace(".", ","))
    if "." in number:
        assert result.code == "quantity_comma"
        assert f"{number} {unit}" in result.data["instead"].split(" or ")[-1]
    else:
        assert result.exact == read_mass(f"{number} {unit}").exact


@pytest.mark.parametrize(
    "text",
    ["1,25 kg", "-3 kg", "3 lb 4", "4 oz 3 lb", "5 gr", "1 ton", "1 250 g", "52", "2,5 lb", "0,125 kg", "3 lb 4,5 oz"],
)
def test_what_a_refusal_says_to_type_is_read(text):
    with pytest.raises(QuantityError) as refused:
        read_mass(text)
    for instead in refused.value.data["instead"].split(" or "):
        assert read_mass(instead, "kg").exact > 0


@pytest.mark.parametrize("kind", DIMENSIONS)
def test_no_word_means_two_units_and_every_example_is_read(kind):
    dimension = DIMENSIONS[kind]
    words = [word for unit in dimension.units.values() for word in unit.words] + list(dimension.unclear)
    assert len(words) == len(set(words))
    assert read(kind, dimension.example).exact > 0
    assert read(kind, dimension.most[1]).exact == dimension.most[0]
    labels = [unit.label for unit in dimension.units.values()]
    assert [read(kind, f"1 {label}").reads for label in labels] == [f"1 {label}" for label in labels]


def test_every_ready_made_fraction_is_what_unicode_says_it_is():
    """[The Unicode Standard, its character database: <fraction> decompositions of Latin-1 and Number Forms]"""
    points = (0xBC, 0xBD, 0xBE, *range(0x2150, 0x215F))
    for mark in map(chr, points):
        above, below = unicodedata.normalize("NFKC", mark).split("\u2044")
        assert read_mass(f"3 {mark} lb") == replace(read_mass(f"3 {above}/{below} lb"), text=f"3 {mark} lb")


def test_every_refusal_has_a_vector():
    vectors = [load(path) for path in FILES if path.stem.startswith("quantity.")]
    shown = {case.get("error") for vector in vectors for case in vector["cases"]}
    assert {code for code in ERRORS if code.startswith("quantity_")} <= shown
