"""A row is read as what a person did, or refused with the reason."""

import pytest

from tarebook.importing.line import LineError, Mass, read_line
from tarebook.importing.sheet import Row


def line(**cells):
    found = {"part": "Jack", **cells}
    return read_line(Row(2, found, words=tuple(filter(None, found.values()))))


def refusal(**cells):
    with pytest.raises(LineError) as refused:
        line(**cells)
    return refused.value.code, refused.value.column


@pytest.mark.parametrize(
    ("off", "unit", "kept"),
    [
        ("7", "lb", "7 lb"),
        ("3 lb 4.5 oz", "kg", "3 lb 4.5 oz"),
        ("6 3/8", "oz", "6 3/8 oz"),
        ("12.5 kg", "", "12.5 kg"),
        ("0.823", "kg", "0.823 kg"),
        ("0.5kg", "", "0.5kg"),
        ("0.5 lb", "kg", "0.5 lb"),
        (".5", "kg", ".5 kg"),
        ("0.050", "kg", "0.050 kg"),
        ("0 1/2", "oz", "0 1/2 oz"),
        ("0 lb 8 oz", "", "0 lb 8 oz"),
        ("½", "oz", "½ oz"),
        ("6½", "oz", "6½ oz"),
    ],
)
def test_a_mass_stays_as_typed_with_its_own_unit_or_the_lines(off, unit, kept):
    assert line(off=off, unit=unit).off == (Mass(kept, "quoted"),)


@pytest.mark.parametrize(
    "nothing",
    ["", "-", "–", "—", "--", "0", "0.0", "00", ".0", "0.", "0 kg", "0kg", "0,00", "0.0 lbs.", "0,00 kg", "0 lb 0 oz"],
)
def test_nothing_a_dash_and_zero_say_that_there_is_no_such_part(nothing):
    assert line(off="7 lb", on=nothing).on == ()


@pytest.mark.parametrize(
    ("off", "code"),
    [
        ("1,25 kg", "quantity_comma"),
        ("-3 kg", "quantity_negative"),
        ("-0.5 kg", "quantity_negative"),
        ("0,823 kg", "quantity_comma"),
        ("0,5kg", "quantity_comma"),
        ("0 5 kg", "quantity_gap"),
        ("0x3 kg", "quantity_sum"),
        ("0.823", "quantity_unit_missing"),
        ("12 psi", "quantity_unit_unknown"),
        ("52", "quantity_unit_missing"),
        ("heavy", "quantity_unreadable"),
        ("1e9 kg", "quantity_exponent"),
    ],
)
def test_an_unreadable_mass_is_refused_with_its_column(off, code):
    assert refusal(off=off) == (code, "off")


@pytest.mark.parametrize("typed", ["0", "-1", "two", "1.5", "1001"])
def test_a_quantity_is_a_number_of_pieces(typed):
    assert refusal(off="7 lb", quantity=typed) == ("line_bad_quantity", "quantity")


@pytest.mark.parametrize(("typed", "count"), [("4", 4), ("4.0", 4), ("2x", 2), ("3 pcs", 3)])
def test_a_quantity_may_be_written_as_spreadsheets_write_it(typed, count):
    assert line(off="7 lb", quantity=typed).count == count


@pytest.mark.parametrize(("typed", "kept"), [("12.50", "12.50"), ("£12.50", "12.50"), ("-", None), ("240", "240")])
def test_money_is_kept_as_a_plain_number(typed, kept):
    assert line(off="7 lb", money=typed).money == kept


@pytest.mark.parametrize("typed", ["1,200.50", "12,50", "a lot", "=1+2", "1e3"])
def test_money_that_could_mean_two_things_is_refused(typed):
    assert refusal(off="7 lb", money=typed) == ("line_bad_number", "money")


def test_a_line_without_a_part_is_refused():
    assert refusal(part="", off="7 lb") == ("line_no_part", "part")


@pytest.mark.parametrize(
    "name",
    ["Total", "TOTALS:", "sub-total", "Grand total", "Total weight (lb):", "Sum of all parts", "Subtotal interior"],
)
def test_a_sum_at_the_end_is_not_a_part(name):
    assert refusal(part=name, off="54 kg") == ("line_total", "part")


def test_a_line_without_anything_is_refused():
    assert refusal() == ("line_empty", None)


def test_work_without_a_mass_is_a_line():
    assert line(hours="1.5").off == ()


def test_a_zone_is_known_by_its_own_name_in_any_letter_case():
    assert line(off="7 lb", zone="Boot").zone == "boot"


def test_any_other_word_for_a_place_is_kept_in_the_note():
    got = line(off="7 lb", zone="trunk", note="rusty")
    assert (got.zone, got.note) == (None, "rusty; zone in the file: trunk")
