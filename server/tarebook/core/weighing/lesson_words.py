"""What a garage's claims have taught, in one sentence."""

from math import expm1

from tarebook.core.numbers.shown import show_percent
from tarebook.core.weighing.claims import Lesson
from tarebook.core.words.said import Said, Sentences

LESSON_SENTENCES = Sentences({
    "guessed_high": "Your guesses run {off} high, from {parts} parts: taken out.",
    "guessed_low": "Your guesses run {off} low, from {parts} parts: taken out.",
    "quoted_high": "Quoted weights run {off} high, from {parts} parts: taken out.",
    "quoted_low": "Quoted weights run {off} low, from {parts} parts: taken out.",
})  # fmt: skip


def lesson_sentence(lesson: Lesson) -> Said:
    """How far off claims of the basis run, of the true mass, ± 95 %."""
    off = expm1(lesson.bias)
    side = "low" if off < 0.0 else "high"
    shown = show_percent(abs(off), 2.0 * lesson.bias_u * (1.0 + off))
    return LESSON_SENTENCES.said(f"{lesson.basis}_{side}", off=shown, parts=str(lesson.parts))
