"""The file that `tarebook export` writes, of either form, read as an app's export is.

What it holds was a home computer's, and a person at one takes it in: its entries count for those of the devices named
in them, but for what was set aside when it was written. A garage that is empty and that no phone has joined becomes the
one of the file, so that what is exported from it again is the same.
"""

import hashlib
import json
import zipfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from tarebook.errors import TarebookError
from tarebook.importing.app_export import Head, Item
from tarebook.journal.entries import ENTRY_BYTES, is_id
from tarebook.store import garages
from tarebook.store.backup_file import MANIFEST
from tarebook.store.database import Database

_INSIDE = "garage.json"
_BEGINS = b'{\n "export": {'
_TYPES = {"jpg": "image/jpeg", "png": "image/png", "webp": "image/webp"}
_MOST_PHOTO = 50_000_000  # bytes, the most any setting allows


def is_home_export(path: Path) -> bool:
    """Whether a file is one. Raises `file_unreadable`, and `import_is_backup` for what `tarebook backup` has made."""
    try:
        if not zipfile.is_zipfile(path):
            with path.open("rb") as file:
                return file.read(len(_BEGINS)) == _BEGINS
        with zipfile.ZipFile(path) as archive:
            names = archive.namelist()
    except (OSError, zipfile.BadZipFile) as problem:
        raise TarebookError("file_unreadable", file=str(path), reason=str(problem)) from problem
    if MANIFEST in names:
        raise TarebookError("import_is_backup", file=str(path))
    return _INSIDE in names


def head_of(path: Path) -> Head:
    """Whose it is. Raises `export_unreadable`."""
    return Head(_read(path)["export"]["garage"], "", "home")


def items(path: Path) -> Iterator[Item]:
    """Entries in the journal's order, then photos, numbered by their place. Raises `export_unreadable`."""
    everything = _read(path)
    aside = set(everything["export"].get("aside", ()))
    number = 0
    for number, text in enumerate(everything["entries"], 1):
        hashed = hashlib.sha256(text.encode("utf-8", "replace")).hexdigest()
        fits = len(text.encode("utf-8", "replace")) <= ENTRY_BYTES
        yield (
            Item(number, entry=text, vouched=hashed not in aside)
            if fits
            else Item(number, fault="export_line_unreadable")
        )
    if zipfile.is_zipfile(path):
        yield from _photos(path, number)


def make_home(database: Database, garage: str, path: Path) -> str:
    """The garage that takes the file in: this one, which where it is empty and nobody's is named as the file's."""
    with database.write() as session:
        return garages.renamed(session, garage, head_of(path).garage)


def _read(path: Path) -> dict[str, Any]:
    try:
        with zipfile.ZipFile(path) if zipfile.is_zipfile(path) else path.open("rb") as file:
            read = json.loads(file.read(_INSIDE) if isinstance(file, zipfile.ZipFile) else file.read())
        if not (is_id(read["export"]["garage"]) and all(isinstance(text, str) for text in read["entries"])):
            raise ValueError("no export")
        return dict(read)
    except (OSError, ValueError, KeyError, TypeError, RecursionError, zipfile.BadZipFile) as problem:
        raise TarebookError("export_unreadable", file=str(path)) from problem


def _photos(path: Path, number: int) -> Iterator[Item]:
    with zipfile.ZipFile(path) as archive:
        for at, inside in enumerate(archive.infolist(), number):
            name, _dot, suffix = inside.filename.removeprefix("photos/").partition(".")
            if inside.filename == _INSIDE:
                continue
            data = archive.read(inside) if inside.file_size <= _MOST_PHOTO else b""
            if hashlib.sha256(data).hexdigest() == name:
                yield Item(at, photo=data, type=_TYPES.get(suffix, ""))
            else:
                yield Item(at, fault="export_photo_damaged")
