"""The phone and the home computer tell the same run on fuel: every lap, reason, warning and sentence."""

from functools import cache
from random import Random
from typing import Any

from tests.core import whole_cars
from tests.core.questions import Question
from tests.core.whole_cars import some
from tests.typescript import Answered, unlike
from tests.vectors import claims

SEED, RUNS = 20_261_127, 120
CLAIMS = claims()
# The weight is only as alike as its sums are (`test_whole_car_both_languages`).
CLOSE = 1e-8


def places(random: Random) -> dict[str, Any]:
    """Where tank and driver are, each axis perhaps."""
    tank = some(random, 0.8, tank_x="1.9 m", tank_y=f"{random.randrange(-300, 300)} mm", tank_z="310 mm")
    return {**tank, **some(random, 0.6, driver_x="1240 mm", driver_y="-13 in", driver_z="0.4 m")}


def questions() -> list[Question]:
    random = Random(SEED)
    asked: list[Question] = []
    for _ in range(RUNS):
        garage = whole_cars.garage(random)
        garage["cars"][0] |= places(random) | some(random, 0.7, fuel_per_lap=f"{random.randrange(5, 400) / 100} L")
        for sheet in garage["class_sheets"]:
            sheet |= some(random, 0.6, fuel="as_it_is")
        start = random.choice((f"{random.randrange(70)} L", f"{random.randrange(1, 15)} US gal"))
        within = some(random, 0.4, start_within="0.2 L", per_lap_within="0.25 L", per_lap="1/2 US gal")
        given = {"garage": garage, **some(random, 0.6, start=start), **within, "laps": random.choice((0, 1, 7, 30))}
        units = {"unit": random.choice(("kg", "lb", "lb oz")), "volume_unit": random.choice(("L", "gal_us"))}
        asked.append({"function": "fuel_run.fuel_run", "in": given})
        asked.append({"function": "fuel_words.sentences", "in": {**given, **units}})
    return asked


@cache
def answered() -> Answered:
    return [(question, CLAIMS[question["function"]](question["in"])) for question in questions()]


def test_both_languages_tell_the_same_of_a_hundred_and_twenty_runs():
    assert unlike(answered(), CLOSE) == []


def test_the_random_runs_are_of_every_sort():
    runs = [ours for question, ours in answered() if "unit" not in question["in"]]
    said = {words["code"] for question, ours in answered() if "unit" in question["in"] for words in ours}
    reasons = {reason["code"] for run in runs for reason in run.get("reasons", {}).values()}
    warned = {warning["code"] for run in runs for warning in run.get("warnings", [])}
    assert {"lightest", "lightest_above", "lightest_under", "lightest_close", "as_weighed"} <= said
    assert {"start_to_arrive", "start_to_keep", "start_above_tank", "start_never", "fuel_lap_unknown"} <= said
    assert {"fuel_class_empty", "fuel_class_full", "fuel_class_stated", "fuel_start_unknown"} <= reasons
    assert {"tank_place_unknown", "driver_place_unknown", "fuel_unknown", "no_weigh_in"} <= reasons
    assert {"fuel_start_above_tank", "fuel_runs_dry", "fuel_may_run_dry", "fuel_least_above_tank"} <= warned
    assert {"fuel_no_laps", "fuel_run_assumed", "fuel_kind_unknown", "fuel_rule_unsaid"} <= warned
