"""Fills a garage with the demo: the scenario's records through the journal's own door, then its drawings as photos."""

import hashlib
import json
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from importlib.resources import files
from typing import Any

from tarebook.demo.drawings import draw
from tarebook.garage.author import Change, write
from tarebook.garage.intake import HOME
from tarebook.garage.records import Records, plural
from tarebook.journal.kinds import KINDS
from tarebook.store.database import Database
from tarebook.store.photos import Photos

_TYPE = "image/jpeg"


@cache
def records() -> Records:
    """The scenario's records, lists by plural kind, as a garage that was filled with them has them; photos apart."""
    scenario: Records = _read("garage.json")
    return {plural(kind): scenario.get(plural(kind), []) for kind in KINDS}


def with_photos() -> Records:
    """The same with its photos, as far as papers tell of them."""
    shown = [{"id": each.record, **each.set} for each, _data in _drawn()]
    return {**records(), plural("photo"): shown}


def _read(name: str) -> Any:
    return json.loads(files("tarebook.demo").joinpath(name).read_text(encoding="utf-8"))


def fill(database: Database, garage: str, photos: Photos) -> None:
    """Writes the scenario into an empty garage, photos included."""
    pictures = list(_pictures(garage, photos))
    with database.write() as session:
        write(session, garage, [*_changes(garage), *pictures])


def _changes(garage: str) -> Iterator[Change]:
    for kind in KINDS:
        for record in records()[plural(kind)]:
            fields = {name: value for name, value in record.items() if name != "id"}
            # The garage's own record bears the garage's id, which is new every time.
            yield Change(kind, garage if kind == "garage" else record["id"], fields, base=())


def _pictures(garage: str, photos: Photos) -> Iterator[Change]:
    for change, data in _drawn():
        kept = photos.keep(garage, data, _TYPE, HOME)
        measured = {"size": len(data), "width": kept.width, "height": kept.height}
        yield replace(change, set={**change.set, **measured})


def _drawn() -> Iterator[tuple[Change, bytes]]:
    for number, drawing in enumerate(_read("photos.json"), 1):
        data = draw(drawing["thing"], drawing["scale"], drawing["readout"])
        sha256 = hashlib.sha256(data).hexdigest()
        fields = {"of": drawing["of"], "sha256": sha256, "type": _TYPE}
        yield Change("photo", f"photo-{number}", fields, base=(), photos=(sha256,)), data
