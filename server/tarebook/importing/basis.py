"""How a line's mass is known, by the words people use for it.

Weighed is what a column or a word calls so, or what names a scale. What nobody says anything about is quoted: a
spreadsheet does not tell which scale stood behind a number.
"""

from typing import Literal

Basis = Literal["weighed", "guessed", "quoted", "worked_out"]
_SAID: dict[Basis, str] = {
    "weighed": "weighed, w, weigh, measured, actual, scale, scales, on the scale, weighed it, weighed by me",
    "guessed": "guessed, g, guess, estimate, estimated, est, e, approx, about, ~, rough",
    "quoted": "quoted, q, quote, claimed, claim, book, brochure, seller, forum, catalogue, listed, advertised, spec",
    "worked_out": "worked out, worked_out, calculated, calc, computed",
}
_MEANT: dict[str, Basis] = {word: basis for basis, words in _SAID.items() for word in words.split(", ")}
_YES, _NO = {"yes", "y", "x", "✓", "✔", "true"}, {"no", "n", "false", "-", "–", "—"}


def basis_of(cells: dict[str, str], scales: frozenset[str]) -> tuple[Basis, str | None, str]:
    """(how it is known, the scale's name as typed, a word for it that nobody knows). Takes a `weighed` cell that only
    says yes or no out of the cells, so that it is read as no mass."""
    scale = _named(cells.get("scale", ""))
    flag = _word(cells.get("weighed", ""))
    if flag in _YES | _NO | set(_MEANT):
        del cells["weighed"]
    said = cells.get("basis", "")
    basis = _MEANT.get(_word(said)) or _MEANT.get(flag) or ("weighed" if flag in _YES else None)
    if basis is None and said and _is_scale(said, scales):
        basis, scale, said = "weighed", scale or said, ""
    unknown = "" if _word(said) in _MEANT else said
    return basis or ("weighed" if scale else "quoted"), scale, unknown


def _named(text: str) -> str | None:
    return text if any(map(str.isalnum, text)) else None


def _is_scale(text: str, scales: frozenset[str]) -> bool:
    return text.casefold() in scales or "scale" in text.casefold()


def _word(text: str) -> str:
    return text.casefold().strip(" .!?")
