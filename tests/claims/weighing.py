"""What the vectors of core/weighing (with scale and mean) run in Python."""

from typing import Any

from tarebook.core.garage.garage import read_garage
from tarebook.core.numbers.student import student_beyond
from tarebook.core.weighing.claims import Lesson
from tarebook.core.weighing.lesson_words import lesson_sentence
from tarebook.core.weighing.outlier import needs_third, odd_one
from tarebook.core.weighing.weighing import masses
from tests.plain import plain


def _masses(given: dict[str, Any]) -> Any:
    garage = read_garage(given)
    known = masses(garage)
    return plain({"scales": known.scales, "of": known.of, "lessons": known.lessons, "warnings": garage.warnings})


CLAIMS = {
    "student.student_beyond": lambda given: student_beyond(**given),
    "outlier.odd_one": lambda given: plain(odd_one(**given)),
    "outlier.needs_third": lambda given: needs_third(**given),
    "weighing.masses": _masses,
    "lesson_words.sentence": lambda given: plain(lesson_sentence(Lesson(**given))),
}
