"""Plain sentences from tables of templates, one table a room; the phone's copies are written by `tarebook.contract`."""

from dataclasses import dataclass

from tarebook.core.garage.records import Warned
from tarebook.core.numbers.shown import lay_out, show_mass
from tarebook.core.numbers.uncertain import Uncertain, expanded
from tarebook.errors import describe


@dataclass(frozen=True, slots=True)
class Said:
    """`code` of a room's table, or of the error table where a reason is told; `data` as texts; `text` ready to read."""

    code: str
    data: dict[str, str]
    text: str


class Sentences(dict[str, str]):
    """A room's templates by code; `{name}` in one is filled from the data."""

    def said(self, code: str, **data: str) -> Said:
        return Said(code, data, self[code].format(**data))


def missed(reason: Warned) -> Said:
    """Why something cannot be told: the error table's sentence, without its full stop."""
    return Said(reason["code"], {}, str(describe(reason["code"], reason["data"])["sentence"]).removesuffix("."))


def size_of(item: Uncertain, unit: str) -> dict[str, str]:
    """The size without its sign, and its expanded uncertainty, both to the place that deserves showing."""
    shown = lay_out("mass", abs(item.value), unit, expanded(item))
    return {"mass": _join(shown.parts), "within": _join(shown.within) or show_mass(0.0, unit)}


def _join(parts: tuple[tuple[str, str], ...]) -> str:
    return " ".join(f"{digits} {unit}" for digits, unit in parts)
