"""Which mark stands before decimals, found out from the file's own numbers.

`13,85` and `0,823` cannot be thousands, `1,250` can; `12.5` cannot, `1.250` can. One kind of sure numbers decides for
the file, the more frequent one where there are both. Where only doubtful ones stand, semicolons between the cells speak
for the comma; otherwise each such line is asked about. What is certain by itself, like `1.250,5`, is read in any file.
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

Mark = Literal["comma", "point"]
_NUMBER = re.compile(r"[0-9]*(?:[.,][0-9]+)+")
_LONGEST = 64  # characters; a longer cell holds no number that is read


@dataclass(frozen=True)
class Decimals:
    """The mark and how it was found: `said` by the person, `sure` from the cell `example`, `separator`, or nothing."""

    mark: Mark = "point"
    found: Literal["said", "sure", "separator", ""] = ""
    example: tuple[int, str] | None = None

    def plain(self, text: str) -> str:
        """The cell with points before its decimals and no mark between thousands; what is doubtful is left alone."""
        return _NUMBER.sub(self._replaced, text) if len(text) <= _LONGEST else text

    def doubtful(self, text: str) -> tuple[str, str] | None:
        """A number with a point that could mean either in a file of decimal commas: `1.250` as (1250, 1.250)."""
        if self.mark == "comma" and self.found != "said" and len(text) <= _LONGEST:
            for number in _NUMBER.findall(text):
                if "." in number and _kind(number) == "either":
                    return number.replace(".", ""), number
        return None

    def _replaced(self, found: re.Match[str]) -> str:
        number = found[0]
        kind = _kind(number)
        if kind == "either":
            decimal = "," if self.mark == "comma" else "."
            thousands = self.found == "said" and decimal not in number
            return number.replace(",", "").replace(".", "") if thousands else self._pointed(number)
        if kind == "comma" and self.mark == "comma":
            return number.replace(".", "").replace(",", ".")
        both = "," in number and "." in number
        if kind == "comma" and both:
            return number.replace(".", "").replace(",", ".")
        return number.replace(",", "") if kind == "point" else number

    def _pointed(self, number: str) -> str:
        return number.replace(",", ".") if self.mark == "comma" else number


def decide(cells: Iterable[tuple[int, str]], separator: str, said: Mark | None) -> Decimals:
    """The mark of a file whose cells with numbers are `cells`, with their lines."""
    if said:
        return Decimals(said, "said")
    counts = dict.fromkeys(("comma", "point", "either"), 0)
    first: dict[str, tuple[int, str]] = {}
    for line, cell in cells:
        for number in _NUMBER.findall(cell) if len(cell) <= _LONGEST else ():
            kind = _kind(number)
            if kind == "either" and "," not in number:
                continue
            counts[kind or "either"] += kind is not None
            first.setdefault(kind or "", (line, number))
    if counts["comma"] > counts["point"]:
        return Decimals("comma", "sure", first["comma"])
    if counts["point"]:
        return Decimals("point", "sure", first["point"])
    if counts["either"] and separator == ";":
        return Decimals("comma", "separator", first["either"])
    return Decimals()


def _kind(number: str) -> Literal["comma", "point", "either"] | None:
    """By which mark its decimals stand, either, or that it is no number in any style."""
    marks = "".join(letter for letter in number if letter in ",.")
    whole, *groups = re.split("[.,]", number)
    grouped = 1 <= len(whole) <= 3 and whole[0] != "0" and all(len(group) == 3 for group in groups[:-1])
    name: Literal["comma", "point"] = "comma" if marks[-1] == "," else "point"
    if len(marks) == 1:
        return "either" if grouped and len(groups[0]) == 3 else name
    if len(set(marks)) == 1:
        other: Literal["comma", "point"] = "point" if name == "comma" else "comma"
        return other if grouped and len(groups[-1]) == 3 else None
    return name if grouped and marks[-1] not in marks[:-1] else None
