"""The phone and the home computer write the same text for the same number, and read the same number from a text."""

from functools import cache
from typing import Any

from tarebook.errors import TarebookError
from tests.core.questions import Question, questions
from tests.typescript import Answered, unlike
from tests.vectors import claims

SEED = 20_251_125
CLAIMS = claims()


def answer(question: Question) -> Any:
    try:
        return CLAIMS[question["function"]](question["in"])
    except TarebookError as refusal:
        return {"code": refusal.code, "sentence": refusal.sentence, "do": refusal.do}


@cache
def answered() -> Answered:
    return [(question, answer(question)) for question in questions(SEED)]


def test_both_languages_answer_twelve_thousand_random_questions_alike():
    assert unlike(answered()) == []
    assert len(answered()) == 12_000


def test_the_random_questions_are_of_every_sort():
    told = [given for _, given in answered() if isinstance(given, dict)]
    refusals = {given["code"] for given in told if "code" in given}
    readings = [given for given in told if "reads" in given]
    margins = [given for given in told if given.get("within")]
    assert len(refusals) >= 15
    assert len(readings) >= 1000
    assert len(margins) >= 1000
