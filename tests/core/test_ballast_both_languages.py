"""The phone and the home computer choose the same ballast for the same garage, and say the same of it."""

from random import Random
from typing import Any

from tests.core import whole_cars
from tests.core.questions import Question
from tests.core.whole_cars import Garage, some
from tests.typescript import unlike
from tests.vectors import claims

SEED, GARAGES = 20_261_127, 200
CLAIMS = claims()
CLOSE = 1e-8  # as the sums of the weight are (`test_whole_car_both_languages`)


def place(random: Random, n: int) -> Garage:
    """A ballast place, now and then without something; the block may be in pounds."""
    return {
        "id": f"b{n}",
        "name": f"place {n}",
        **some(random, 0.97, x=f"{random.randrange(-500, 3000)} mm", y=f"{random.randrange(-600, 600)} mm"),
        **some(random, 0.97, z=f"{random.randrange(100, 500)} mm", most=random.randrange(12)),
        **some(random, 0.97, block=random.choice(("1 kg", "2.5 kg", "5 kg", "2 lb"))),
        **some(random, 0.6, fitted=random.randrange(4)),
    }


def garage(random: Random) -> Garage:
    """A weighed car with its places, shares to aim at, and where its tank and its driver are."""
    given = whole_cars.lifted(random, whole_cars.garage(random))
    front, left = random.randrange(460, 540), random.randrange(470, 510)
    seats = {"tank_x": "1960 mm", "tank_y": "0 mm", "tank_z": "330 mm"}
    driver = {"driver_x": "1240 mm", "driver_y": "-330 mm", "driver_z": "420 mm"}
    aims = {
        **some(random, 0.6, front_from=f"0.{front}", front_to=f"0.{front + random.randrange(30)}"),
        **some(random, 0.6, left_from=f"0.{left}", left_to=f"0.{left + random.randrange(20)}"),
        **some(random, 0.7, ballast_for=random.choice(("mass", "centre", "cross")), roll_front="0.56"),
        **some(random, 0.4, ballast_more="5 kg"),
    }
    car = {**given["cars"][0], **some(random, 0.8, **seats), **some(random, 0.8, **driver), **aims}
    return {**given, "cars": [car], "ballast_places": [place(random, n) for n in range(random.randrange(6))]}


def questions() -> list[Question]:
    random = Random(SEED)
    return [{"function": "ballast_records.ballast_choice", "in": {"garage": garage(random)}} for _ in range(GARAGES)]


def test_both_languages_choose_the_same_for_two_hundred_garages():
    asked = questions()
    ours = [CLAIMS[question["function"]](question["in"]) for question in asked]
    assert unlike(list(zip(asked, ours, strict=True)), CLOSE) == []
    assert {"ballast_unweighed", "no_minimum"} <= {each["reason"]["code"] for each in ours if "reason" in each}
    assert {"centre_as_weighed", "ballast_then_anywhere", "ballast_place_open", "ballast_no_left"} <= codes(ours)
    assert sum("found" in each and bool(each.get("moves")) for each in ours) > 50


def codes(told: list[Any]) -> set[str]:
    return {each["code"] for answer in told for each in answer.get("warnings", [])}
