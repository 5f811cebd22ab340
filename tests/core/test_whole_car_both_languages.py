"""The phone and the home computer tell the same standing of the same garage: numbers, reasons, warnings, sentences."""

from functools import cache
from random import Random

from tests.core import whole_cars
from tests.core.questions import Question
from tests.typescript import Answered, unlike
from tests.vectors import claims

SEED, GARAGES = 20_261_129, 300
CLAIMS = claims()
# The sums of small matrices are not taken in the same order in both languages; what nearly cancels carries that on.
CLOSE = 1e-8


def questions() -> list[Question]:
    random = Random(SEED)
    asked: list[Question] = []
    for _ in range(GARAGES):
        garage = whole_cars.garage(random)
        unit = random.choice(("kg", "lb", "lb oz"))
        asked.append({"function": "standing.standing", "in": {"garage": garage, "unit": unit}})
        asked.append({"function": "from_start.from_start", "in": {"garage": garage}})
        asked += [
            {"function": "weigh_in.weigh_in", "in": {"garage": garage, "id": record["id"]}}
            for record in garage["weigh_ins"]
        ]
    return asked


@cache
def answered() -> Answered:
    return [(question, CLAIMS[question["function"]](question["in"])) for question in questions()]


def test_both_languages_tell_the_same_of_three_hundred_garages():
    assert unlike(answered(), CLOSE) == []


def test_the_random_garages_are_of_every_sort():
    told = [ours["told"] for question, ours in answered() if "unit" in question["in"]]
    codes = {answer[name]["code"] for answer in told for name in ("margin", "in_hand", "gap") if name in answer}
    assert {
        "above",
        "under",
        "close",
        "in_hand",
        "gap_more",
        "gap_less",
        "gap_fits_more",
        "gap_fits_less",
        "no_minimum",
    } <= codes
    assert {"gap_fits_more", "gap_fits_less", "fuel_unknown", "no_driver", "jobs_not_confirmed"} <= codes
    assert "driver_unknown" in codes
