"""A line of the sheet as records of the garage: its parts, one fitted job, and the stage it belongs to.

A spreadsheet does not say which scale stood behind a number, so a part's mass is *quoted*, from "parts.csv line 12";
weighing it once turns it into a weighed one. Every id is made from the line's key and occurrence and from nothing
else: that is what makes a second import of the line recognisable.
"""

import hashlib
import uuid
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from tarebook.cars import chosen_car
from tarebook.garage.author import Change
from tarebook.garage.records import Records
from tarebook.importing.line import Line


@dataclass(frozen=True)
class Place:
    """Where lines go: the car, or None in a garage without one; `apart` tells the ids of a second car's lines from the
    first's.
    """

    car: str | None
    file: str
    apart: str = ""


def place_for(records: Records, asked: str | None, file: str) -> Place:
    """Where the lines of `file` go: the car asked for, or the only one. `records`: the deleted ones too.

    The first car a garage ever had needs no words to tell it apart, so that lines taken in before there was a car stay
    known. Raises `car_unknown` and `car_unclear`.
    """
    cars = records["cars"]
    car = chosen_car([each for each in cars if not each.get("deleted")], asked)
    return Place(car, file, "" if car is None or car == cars[0]["id"] else car)


def made_id(*words: str) -> str:
    """An id made from words alone: a UUID of version 8 (RFC 9562), the first 122 free bits of their SHA-256."""
    number = int.from_bytes(hashlib.sha256("\x1f".join(words).encode()).digest()[:16])
    number = number & ~(0xF << 76) | 0x8 << 76
    return str(uuid.UUID(int=number & ~(0b11 << 62) | 0b10 << 62))


def job_id(line: Line, occurrence: int, place: Place) -> str:
    """The id by which a line is known once it is in."""
    return made_id("import", place.apart, line.key, str(occurrence), "job")


def line_changes(line: Line, occurrence: int, place: Place, stage: str | None) -> Iterator[Change]:
    """The records of one line, parts first. `stage`: the id of its stage."""
    return (Change(kind, record, fields, base=()) for kind, record, fields in _records(line, occurrence, place, stage))


def _records(line: Line, occurrence: int, place: Place, stage: str | None) -> Iterator[tuple[str, str, dict[str, Any]]]:
    job = job_id(line, occurrence, place)
    parts = {way: made_id(job, way) for way in ("off", "on") if getattr(line, way)}
    for way, part in parts.items():
        yield "part", part, _part(line, way, place, parts)
    fields = {"name": line.part, "state": "fitted", "trim": "both", "stage": stage, "hours": line.hours}
    yield "job", job, _given({**fields, "car": place.car, "money": line.money, "note": line.note})
    for way, part in parts.items():
        pieces = line.count if line.count > 1 else None
        yield "job_part", made_id(job, way, "job"), _given({"job": job, "part": part, "way": way, "count": pieces})


def _part(line: Line, way: str, place: Place, parts: dict[str, str]) -> dict[str, Any]:
    new = way == "on"
    both = len(parts) == 2
    return _given(
        {
            "car": place.car,
            "name": f"{line.part[:110]} (new)" if new and both else line.part,
            "zone": line.zone,
            "count": line.count if line.count > 1 else None,
            "whereabouts": "car" if new else None,
            "instead_of": parts["off"] if new and both else None,
            "claim": getattr(line, way),
            "claim_basis": "quoted",
            "claim_from": f"{place.file[:160]} line {line.number}",
        }
    )


def _given(fields: dict[str, Any]) -> dict[str, Any]:
    return {name: value for name, value in fields.items() if value is not None}
