"""A line of the sheet as records of the garage: its parts, one fitted job, and the stage it belongs to.

A spreadsheet does not say which scale stood behind a number, so a part's mass is *quoted*, from "parts.csv line 12",
unless the sheet calls it guessed, worked out or weighed; what it calls weighed comes in as a weighing, with its text as
typed. Every id is made from what the line is about, the part's name and place, and from which of several such it is:
that is what makes a line recognisable when it comes again, the same or corrected.
"""

import hashlib
import unicodedata
import uuid
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from tarebook.cars import chosen_car
from tarebook.garage.records import Records
from tarebook.importing.line import Line, Way

Made = tuple[str, str, dict[str, Any]]
"""A record: its kind, its id, its fields."""


@dataclass(frozen=True)
class Place:
    """Where lines go: the car, or None in a garage without one; `apart` tells the ids of a second car's lines from the
    first's. `scales`: the garage's, by name in small letters.
    """

    car: str | None
    file: str
    apart: str = ""
    scales: Mapping[str, str] = field(default_factory=dict)


def place_for(records: Records, asked: str | None, file: str) -> Place:
    """Where the lines of `file` go: the car asked for, or the only one. `records`: the deleted ones too.

    The first car a garage ever had needs no words to tell it apart, so that lines taken in before there was a car stay
    known. Raises `car_unknown` and `car_unclear`.
    """
    cars = records["cars"]
    car = chosen_car([each for each in cars if not each.get("deleted")], asked)
    scales = {scale["name"].casefold(): scale["id"] for scale in records["scales"] if not scale.get("deleted")}
    return Place(car, file, "" if car is None or car == cars[0]["id"] else car, scales)


def made_id(*words: str) -> str:
    """An id made from words alone: a UUID of version 8 (RFC 9562), the first 122 free bits of their SHA-256."""
    number = int.from_bytes(hashlib.sha256("\x1f".join(words).encode()).digest()[:16])
    number = number & ~(0xF << 76) | 0x8 << 76
    return str(uuid.UUID(int=number & ~(0b11 << 62) | 0b10 << 62))


def plain(name: str) -> str:
    """A name as it is known again, whatever its spaces, letter case and way of composing letters."""
    return " ".join(unicodedata.normalize("NFC", name).split()).casefold()


def identity(line: Line) -> tuple[str, str]:
    """What a line is about: a part's name and its place. Two lines of one identity are two such things, or one is the
    other corrected."""
    return plain(line.part), plain(line.place)


def job_id(about: tuple[str, str], number: int, place: Place) -> str:
    """The id of the job of the `number`-th line about one thing."""
    return made_id("import", place.apart, *about, str(number), "job")


def records_of(line: Line, job: str, place: Place, stage: str | None) -> Iterator[Made]:
    """The records of one line, parts first; `job` is its job's id, `stage` that of its stage."""
    ways: list[Way] = [way for way in ("off", "on") if line.masses(way)]
    parts = {way: made_id(job, way) for way in ways}
    for way in ways:
        yield "part", parts[way], _part(line, way, place, parts)
        if line.masses(way)[0].basis == "weighed":
            yield "weighing", made_id(job, way, "weighing"), _weighing(line, way, parts[way], place)
    fields = {"name": line.part, "state": "fitted", "trim": "both", "stage": stage, "hours": line.hours}
    more = {"car": place.car, "money": line.money, "fitted_on": line.date, "note": line.note}
    yield "job", job, _given({**fields, **more})
    for way, part in parts.items():
        pieces = line.count if line.count > 1 else None
        yield "job_part", made_id(job, way, "job"), _given({"job": job, "part": part, "way": way, "count": pieces})


def _part(line: Line, way: Way, place: Place, parts: dict[Way, str]) -> dict[str, Any]:
    new = way == "on"
    both = len(parts) == 2
    claimed = next((mass for mass in line.masses(way) if mass.basis != "weighed"), None)
    return _given(
        {
            "car": place.car,
            "name": f"{line.part[:110]} (new)" if new and both else line.part,
            "zone": line.zone,
            "count": line.count if line.count > 1 else None,
            "whereabouts": "car" if new else None,
            "instead_of": parts["off"] if new and both else None,
            "claim": claimed and claimed.typed,
            "claim_basis": claimed and claimed.basis,
            "claim_from": claimed and source(line, place),
        }
    )


def _weighing(line: Line, way: Way, part: str, place: Place) -> dict[str, Any]:
    scale = place.scales.get((line.scale or "").casefold())
    unknown = f", on “{line.scale[:120]}”" if line.scale and not scale else ""
    shown = {"of": part, "method": "direct", "shown": line.masses(way)[0].typed, "scale": scale, "at": line.date}
    return _given({**shown, "note": f"From {source(line, place)}{unknown}"})


def source(line: Line, place: Place) -> str:
    """Where a mass is from."""
    return f"{place.file[:160]} line {line.number}"


def _given(fields: dict[str, Any]) -> dict[str, Any]:
    return {name: value for name, value in fields.items() if value is not None}
