"""The phone and the home computer tell the same balance of the same garage, to the last digit."""

from functools import cache
from random import Random

from tarebook.journal.kinds import ZONES
from tests.core import whole_cars
from tests.core.questions import Question
from tests.typescript import Answered, unlike
from tests.vectors import claims

CLOSE = 1e-8  # the weight the balance is scaled to comes of sums in another order
SEED, GARAGES = 20_261_126, 120
CLAIMS = claims()


def questions() -> list[Question]:
    random = Random(SEED)
    asked: list[Question] = []
    for _ in range(GARAGES):
        garage = whole_cars.lifted(random, whole_cars.garage(random))
        for part in garage["parts"]:
            part |= whole_cars.some(random, 0.6, zone=random.choice(ZONES), z=f"{random.randrange(1200)} mm")
            part |= whole_cars.some(random, 0.3, x=f"{random.randrange(-900, 4000)} mm", y="-12 1/2 in")
            part |= whole_cars.some(random, 0.3, place_within="40 mm", length="0.8 m", width="14 in")
        for car in garage["cars"]:
            car |= whole_cars.some(
                random, 0.4, length="3720 mm", front_overhang="27 in", width="1.6 m", height="1290 mm"
            )
        height = {"value": random.uniform(0.4, 0.6), "sources": {"given:height": 0.01}}
        options = whole_cars.some(random, 0.5, height=height, jobs=["j0", "j1", "j9"], sizes={"p0": [1.2, 0.7]})
        asked.append({"function": "balance.balance", "in": {"garage": garage, **options}})
    return asked


@cache
def balances() -> Answered:
    return [(question, CLAIMS["balance.balance"](question["in"])) for question in questions()]


def test_both_languages_tell_the_same_balance_of_a_hundred_and_twenty_garages():
    assert unlike(balances(), CLOSE) == []


def test_the_random_garages_are_of_every_sort():
    told = [ours for _, ours in balances()]
    states = {name for answer in told for name in answer.get("states", {})}
    warned = {warning["code"] for answer in told for warning in answer.get("warnings", [])}
    reasons = {reason["code"] for answer in told for reason in answer.get("reasons", {}).values()}
    assert states == {"start", "weighed", "now", "after"}
    assert {"no_weigh_in", "jobs_not_confirmed"} <= reasons
    assert {"place_by_zone", "place_anywhere", "place_outside", "height_assumed", "balance_job_unknown"} <= warned
    assert {"height_by_lift", "height_carried"} <= warned


@cache
def lifts() -> Answered:
    random = Random(SEED)
    garages = [whole_cars.lifted(random, whole_cars.garage(random)) for _ in range(GARAGES)]
    asked: list[Question] = [
        {"function": function, "in": {"garage": garage, **options}}
        for garage in garages
        for function, options in (
            ("lift.lift_of", {}),
            ("lift.outlook", {"weigh_in": "k0", **whole_cars.some(random, 0.4, raised="front", scale="big0")}),
        )
    ]
    return [(question, CLAIMS[question["function"]](question["in"])) for question in asked]


def test_both_languages_tell_the_same_height_of_every_lift_and_foresee_the_same():
    assert unlike(lifts()) == []


def test_the_random_lifts_tell_and_are_refused_for_every_reason():
    told = [one for question, ours in lifts() if question["function"] == "lift.lift_of" for one in ours]
    assert any("height" in one for one in told)
    refused = {one["reason"]["code"] for one in told if "reason" in one}
    assert {"radius_unknown", "axles_unknown", "lift_too_small", "lift_wrong_way"} <= refused
    warned = {warning["code"] for one in told for warning in one.get("warnings", [])}
    assert {"lift_wide", "lift_driver_in", "lift_fuel_moves"} <= warned
