"""`calc ballast` from records: the car's own places and wishes, what is fitted, and what to move."""

from tarebook.api.calc import run
from tests.core.test_ballast_records import garage


def asked(given, **options):
    return run("ballast", {**given, **options})


def test_places_and_ranges_come_from_the_records_when_none_are_given():
    told = asked(garage(), guard="2 kg")
    assert set(told["put"]) <= {"a floor", "b boot", "c nose"}
    assert told["reason"] is None
    assert told["missing"] == []
    assert 0.535 <= told["front"]["value"] <= 0.545
    assert told["least"]["shown"] == "902.00 kg"


def test_what_is_fitted_is_told_with_the_moves_from_it():
    told = asked(garage({"a floor": 2, "c nose": 3}, "8 kg"), guard="2 kg")
    assert told["fitted"] == {"a floor": 2, "c nose": 3}
    assert told["aboard"]["shown"] == "8.00 kg"
    assert {place: told["fitted"].get(place, 0) + told["moves"].get(place, 0) for place in told["put"]} == told["put"]


def test_places_given_go_before_those_of_the_records():
    one = {"id": "tunnel", "x": "1200 mm", "y": "0 mm", "z": "200 mm", "block": "5 kg", "most": 9}
    told = asked(garage(), guard="2 kg", places=[one], front_from="0", left_from="0")
    assert told["put"] == {"tunnel": 5}
    assert told["added"]["shown"] == "25.00 kg"


def test_a_mass_that_cannot_be_read_is_the_reason():
    told = asked(garage(), guard="two")
    assert told["put"] is None
    assert told["reason"]["sentence"]
