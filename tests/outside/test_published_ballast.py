"""Ballast against printed weight and balance (sources in `fixtures/outside/ballast.json`)."""

import pytest

from tarebook.core.ballast.ballast import Ballast, Carried, Place, Wanted, ballast
from tarebook.core.numbers.uncertain import Uncertain
from tests.outside.published import agrees, entries

PRINTED = entries("ballast")
POUND, INCH, BASE = 0.45359237, 0.0254, 200.0  # any wheelbase does: the share is only another name for the centre


def balanced(weight: float, centre: float, limit: float, arm: float, block: float) -> Ballast:
    """Pounds and inches: the least ballast at `arm` in blocks of `block` that brings the centre forward to `limit`."""
    car = Carried(Uncertain(weight * POUND), Uncertain(weight * POUND * (1 - centre / BASE)), wheelbase=BASE * INCH)
    place = Place("nose", arm * INCH, 0.0, 0.0, block * POUND, 9000)
    found = ballast(car, [place], Wanted(0.0, front=(1 - limit / BASE, 1.0)))
    assert isinstance(found, Ballast)
    assert not found.missing
    return found


def test_temporary_ballast_is_what_the_handbook_prints():
    entry = PRINTED["wb.ballast.temp"]
    given = entry["inputs"]
    case = (given["W"], given["cg_in_rounded"], given["limit_in"], given["ballast_arm_in"])
    fine, whole = balanced(*case, 0.01), balanced(*case, 1.0)
    assert fine.added / POUND == pytest.approx(entry["expected"]["ballast_lb"], abs=0.01)
    assert agrees(whole.added / POUND, {**entry, "tolerance": 1e-9}, "rounded_up_lb")
    assert whole.total.value / POUND == pytest.approx(entry["expected"]["new_W"])


def test_the_printed_case_rounds_a_centre_on_the_way_and_asks_three_pounds_too_many():
    """Erratum: the handbook feeds the centre rounded to 99.6 in into the next step; unrounded it is 99.5585 in."""
    given = PRINTED["wb.ballast.temp"]["inputs"]
    fine = balanced(given["W"], 99.5585, given["limit_in"], given["ballast_arm_in"], 0.01)
    whole = balanced(given["W"], 99.5585, given["limit_in"], given["ballast_arm_in"], 1.0)
    assert fine.added / POUND == pytest.approx(43.45, abs=0.01)
    assert whole.put == {"nose": 44}


def test_the_printed_check_of_the_new_centre_is_made_from_the_unrounded_moment():
    entry = PRINTED["wb.ballast.temp"]
    weight, arm = entry["inputs"]["W"], entry["inputs"]["ballast_arm_in"]
    front = Uncertain(weight * POUND * (1 - 99.5585 / BASE))
    place = Place("nose", arm * INCH, 0.0, 0.0, entry["expected"]["rounded_up_lb"] * POUND, 1)
    found = ballast(Carried(Uncertain(weight * POUND), front, wheelbase=BASE * INCH), [place], Wanted(3081 * POUND))
    assert isinstance(found, Ballast)
    assert agrees((1 - found.front.value) * BASE, entry, "new_cg_in")


def test_weight_added_at_an_arm_moves_the_centre_as_printed():
    entry = PRINTED["wb.add"]
    given = entry["inputs"]
    car = Carried(Uncertain(given["W"] * POUND), Uncertain(given["W"] * POUND * (1 - given["cg"] / BASE)), None,
                  wheelbase=BASE * INCH)  # fmt: skip
    place = Place("arm", given["arm"] * INCH, 0.0, 0.0, given["w"] * POUND, 1)
    found = ballast(car, [place], Wanted((given["W"] + given["w"]) * POUND))
    assert isinstance(found, Ballast)
    assert (1 - found.front.value) * BASE == pytest.approx(entry["expected"]["new_cg"])
