"""From the start to the weight now: the lines add up, in a case by hand and in any car."""

from math import fsum
from random import Random

import pytest
from hypothesis import given

from tarebook.core.garage.garage import read_garage
from tarebook.core.standing.from_start import FromStart, from_start
from tarebook.core.standing.standing import standing
from tarebook.core.weighing.weighing import masses
from tests.core import whole_cars
from tests.core.garages import RANDOMS
from tests.core.test_standing import HOOK, SHEET, SPARE, garage, weigh_in


def test_the_start_the_stages_and_what_is_aboard_come_to_the_weight_now():
    drivers = [{"id": "d", "claim": "80 kg", "claim_basis": "quoted"}]
    seated = {"driver_in": True, "driver": "d"}
    first = weigh_in("k1", 1000, [], ballast="5 kg", at="2026-01-01", **seated)
    last = weigh_in("k2", 990, ["job-spare"], ballast="8 kg", at="2026-02-01", **seated)
    sheet = {**SHEET, "driver": "in"}
    read = read_garage(garage(first, last, parts=(SPARE, HOOK), drivers=drivers, class_sheets=[sheet]))
    now = standing(read)
    found = from_start(read, masses(read), now)
    assert found is not None
    assert now.weight is not None
    # Fuel 10 L of any sort; by hand: 1000 - fuel - 80 - 5, then 13.4 + 1.9 off, then fuel, 80 and 8 in.
    assert found.start.value == pytest.approx(1000 - found.fuel.value - 85)
    assert found.jobs.value == pytest.approx(-13.4 - 1.9)
    assert (found.driver.value, found.ballast.value) == (80.0, 8.0)
    assert found.corrected.value == pytest.approx(now.weight.value - (1000 - 85 - 15.3 + 88))
    assert total(found) == pytest.approx(now.weight.value, abs=1e-9)


@given(RANDOMS)
def test_the_lines_of_any_car_come_to_its_weight(random: Random):
    read = read_garage(whole_cars.garage(random))
    now = standing(read)
    found = from_start(read, masses(read), now)
    assert found is None or now.weight is not None
    if found and now.weight:
        assert total(found) == pytest.approx(now.weight.value, abs=1e-9)


def total(found: FromStart) -> float:
    lines = (found.start, found.jobs, found.corrected, found.fuel, found.driver, found.ballast)
    return fsum(line.value for line in lines)
