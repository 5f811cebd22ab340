"""The phone and the home computer write the same text for the same number, and read the same number from a text."""

from pathlib import Path
from typing import Any

from tarebook.errors import TarebookError
from tests.core.questions import Question, questions
from tests.typescript import answers
from tests.vectors import claims, differences

SEED = 20_251_125
CLAIMS = claims()


def answer(question: Question) -> Any:
    try:
        return CLAIMS[question["function"]](question["in"])
    except TarebookError as refusal:
        return {"code": refusal.code, "sentence": refusal.sentence, "do": refusal.do}


def test_both_languages_answer_twelve_thousand_random_questions_alike(tmp_path: Path):
    asked = questions(SEED)
    pairs = zip(asked, map(answer, asked), answers(asked, tmp_path), strict=True)
    unlike = [(question, lines) for question, one, other in pairs if (lines := differences(other, one))]
    assert unlike == []
    assert len(asked) == 12_000


def test_the_random_questions_are_of_every_sort():
    answered = [answer(question) for question in questions(SEED)]
    refusals = {given["code"] for given in answered if isinstance(given, dict) and "code" in given}
    readings = [given for given in answered if isinstance(given, dict) and "reads" in given]
    margins = [given for given in answered if isinstance(given, dict) and given.get("within")]
    assert len(refusals) >= 15
    assert len(readings) >= 1000
    assert len(margins) >= 1000
