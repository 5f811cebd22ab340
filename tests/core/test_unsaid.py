"""What nobody said of a weigh-in, the driver or the fuel, is a doubt of its size; checked by plain arithmetic."""

from typing import Any

import pytest

from tarebook.core.standing.standing import Standing
from tests.core.test_standing import SHEET, garage, stand, value, weigh_in

TANKED = {"id": "car", "tank_size": "40 L", "fuel_kind": "petrol"}
DRIVERS = [
    {"id": "heavy", "claim": "100 kg", "claim_basis": "quoted"},
    {"id": "light", "claim": "60 kg", "claim_basis": "quoted"},
]
EMPTY = {**SHEET, "fuel": "empty"}


def stand_unsaid(**said: Any) -> Standing:
    weighed = {**weigh_in("k", 1000, []), "car": "car", "fuel": None, **said}
    return stand(garage(weighed, cars=[TANKED], drivers=DRIVERS, class_sheets=[EMPTY]))


def test_a_seat_nobody_spoke_of_may_hold_any_driver_known_or_nobody():
    found = stand_unsaid(fuel="10 L")
    # Evenly between nobody and 100 kg: 1000 − 50 − 10 L × 0.7475 kg/L; u of the seat 100 / √12.
    assert value(found.weight) == pytest.approx(1000 - 50 - 7.475)
    assert found.weight is not None
    assert found.weight.sources["driver:k"] == pytest.approx(-100 / 12**0.5)
    assert "driver_unsaid" in [each["code"] for each in found.warnings]


def test_a_driver_nobody_named_may_be_the_lightest_or_the_heaviest():
    found = stand_unsaid(fuel="10 L", driver_in=True)
    assert value(found.weight) == pytest.approx(1000 - 80 - 7.475)
    assert found.weight is not None
    assert found.weight.sources["driver:k"] == pytest.approx(-40 / 12**0.5)


def test_a_tank_nobody_spoke_of_may_be_empty_or_full():
    found = stand_unsaid(driver_in=False)
    assert value(found.weight) == pytest.approx(1000 - 20 * 0.7475)
    assert found.weight is not None
    assert found.weight.sources["fuel:k"] == pytest.approx(-40 * 0.7475 / 12**0.5)
    assert "fuel_unsaid" in [each["code"] for each in found.warnings]


def test_what_was_said_is_no_doubt():
    found = stand_unsaid(driver_in=False, fuel="10 L", fuel_within="0 L")
    assert value(found.weight) == pytest.approx(1000 - 7.475)
    assert found.weight is not None
    assert "driver:k" not in found.weight.sources
    assert not {"driver_unsaid", "fuel_unsaid"} & {each["code"] for each in found.warnings}
