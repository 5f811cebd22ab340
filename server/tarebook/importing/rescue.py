"""An export, an app's or the home computer's, into the journal: it comes in by the door every phone uses.

Entries of a device that is not on the list come in set aside, to be looked at and taken in by a person, unless the
receipt in the file proves that this garage had taken them in before. What the garage has already is recognised and
left. Photos are proven by their hash and opened before they are kept.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

from tarebook.errors import TarebookError
from tarebook.garage import author
from tarebook.garage.intake import HOME
from tarebook.garage.receipts import Proof, receipt_of
from tarebook.importing import app_export, home_export
from tarebook.importing.app_export import Head, Item
from tarebook.journal import entries
from tarebook.journal.ids import text_hash
from tarebook.store import garages
from tarebook.store.database import Database
from tarebook.store.photos import Photos

_AT_ONCE = 200


@dataclass
class Rescued:
    """How many entries were used, set aside, known before; photos likewise; and lines that could not be read."""

    used: int = 0
    aside: int = 0
    known: int = 0
    photos: int = 0
    photos_known: int = 0
    bad: int = 0


def rescue(
    database: Database, garage: str, photos: Photos, path: Path, strict: bool, bad: Callable[[Item], None]
) -> Rescued:
    """Takes the file in. `bad` hears of each line that cannot be read.

    Raises `export_other_garage` unless the file is of this garage or this garage is empty, what `head_of` raises, and
    with `strict` `import_strict` when any line is bad, before anything is added.
    """
    source = home_export if home_export.is_home_export(path) else app_export
    _check_garage(database, garage, source.head_of(path), path)
    if strict:
        _all_good(source.items(path), bad)
    done = Rescued()
    held: list[Item] = []
    for item in source.items(path):
        if item.entry is not None:
            held.append(item)
        fault = item if item.fault else _photo_fault(garage, photos, item, done)
        if fault:
            done.bad += 1
            bad(fault)
        if len(held) >= _AT_ONCE or item.entry is None:
            held = _take_entries(database, garage, held, done)
    _take_entries(database, garage, held, done)
    return done


def _check_garage(database: Database, garage: str, head: Head, path: Path) -> None:
    with database.read() as session:
        here = garages.get(session, garage)
    if head.garage != here.id and here.head > 0:
        raise TarebookError("export_other_garage", file=str(path))


def _all_good(items: Iterator[Item], bad: Callable[[Item], None]) -> None:
    lines = faults = 0
    for item in items:
        lines += 1
        if item.fault:
            faults += 1
            bad(item)
    if faults:
        raise TarebookError("import_strict", bad=faults, lines=lines)


def _take_entries(database: Database, garage: str, held: list[Item], done: Rescued) -> list[Item]:
    """Takes them in, and gives those left: none."""
    texts = [item.entry for item in held if item.entry is not None]
    if texts:
        with database.write() as session:
            key = garages.get(session, garage).receipt_key
            shown = [_vouched(key, item) if item.vouched else item.proof for item in held]
            states = [result.state for result in author.receive(session, garage, HOME, texts, shown).results]
        done.known += states.count("repeated")
        done.used += states.count("accepted")
        done.aside += len(states) - states.count("repeated") - states.count("accepted")
    return []


def _vouched(key: bytes, item: Item) -> Proof | None:
    """The home computer's own word for the device that an entry names."""
    entry = entries.read(item.entry or "")
    return Proof(receipt_of(key, text_hash(item.entry or ""), entry.device)) if entry else None


def _photo_fault(garage: str, photos: Photos, item: Item, done: Rescued) -> Item | None:
    """Keeps an item's photo, if it is one. Gives the item with the reason for which it was not kept."""
    if item.photo is None:
        return None
    try:
        if photos.is_here(garage, item.photo):
            done.photos_known += 1
        else:
            photos.keep(garage, item.photo, item.type, HOME)
            done.photos += 1
    except TarebookError as problem:
        if not problem.code.startswith("photo_"):
            raise
        return Item(item.line, fault=problem.code, data=problem.data)
    return None
