"""The phone and the home computer read, weigh and add up the same garage to the last digit, sound or spoiled."""

from random import Random

from tests.core.garages import garage, spoiled
from tests.core.guessers import guesser
from tests.core.questions import Question
from tests.typescript import unlike
from tests.vectors import claims

SEED = 20_251_126
CLAIMS = claims()
FUNCTIONS = ("garage.read_garage", "weighing.masses", "ledger.ledger")


def test_both_languages_keep_the_same_ledger_of_random_garages():
    random = Random(SEED)
    sound = [garage(random) for _ in range(200)]
    given = [*sound, *(spoiled(random, one) for one in sound)]
    asked: list[Question] = [{"function": function, "in": one} for one in given for function in FUNCTIONS]
    assert unlike([(each, CLAIMS[each["function"]](each["in"])) for each in asked]) == []


def test_both_languages_learn_the_same_of_guesses_and_quotes():
    random = Random(SEED)
    sizes = [(random.randrange(9), random.uniform(0.5, 2.0), random.uniform(0.0, 0.8)) for _ in range(200)]
    bases = ("guessed", "quoted")
    given = [guesser(random, size, 2, high, spread, bases[n % 2]).given for n, (size, high, spread) in enumerate(sizes)]
    asked: list[Question] = [{"function": "weighing.masses", "in": one} for one in given]
    answered = [(each, CLAIMS["weighing.masses"](each["in"])) for each in asked]
    assert unlike(answered) == []
    assert 50 < sum(bool(found["lessons"]) for _, found in answered) < 150


def test_the_spoiled_garages_are_spoiled_in_every_way():
    random = Random(SEED)
    spoils = [CLAIMS["garage.read_garage"](spoiled(random, garage(random))) for _ in range(300)]
    codes = {warning["code"] for each in spoils for warning in each.get("warnings", [])}
    assert codes >= {
        "unreadable_record", "duplicate_record", "unknown_field", "unreadable_field", "missing_field", "dangling",
        "dangling_deleted", "quantity_comma", "quantity_negative", "quantity_empty", "quantity_unit_unknown",
    }  # fmt: skip
