"""The file an app exports (`webapp/src/store/takeout.ts`), read line by line.

It may hold every photo of a garage, so it is never in memory as a whole; and a file that was cut short on its way gives
all that came before. Entries stand first, photos last, each item on a line of its own.
"""

import base64
import binascii
import hashlib
import json
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, BinaryIO

from tarebook.errors import TarebookError
from tarebook.garage.receipts import Proof
from tarebook.journal.entries import ENTRY_BYTES

FORMAT, VERSION = "tarebook-takeout", 1
_SECTION = re.compile(rb'"(\w+)":\[$')
_AFTER_AN_ITEM = (b"", b",", b"]", b"],", b"]}")
_LONGEST_LINE = 100 * 1024 * 1024  # a photo of 50 MB, the most any setting allows, is a third longer in base64


@dataclass(frozen=True)
class Head:
    """Whose export it is: the garage by id and name, and the device that wrote the file."""

    garage: str
    name: str
    device: str


@dataclass(frozen=True)
class Item:
    """One line's worth: an entry's exact text and what proves its author, a photo proven by its hash, or what is wrong
    with it."""

    line: int
    entry: str | None = None
    proof: Proof | None = None
    photo: bytes | None = None
    type: str = ""
    fault: str | None = None
    vouched: bool = False  # by the person at the home computer: its author is the device named in it
    data: Mapping[str, Any] = field(default_factory=dict)


def is_app_export(path: Path) -> bool:
    """Whether a file begins as one. Raises `file_unreadable`."""
    with _reading(path) as file:
        return file.read(64).lstrip().startswith(b'{"format":"' + FORMAT.encode() + b'"')


def head_of(path: Path) -> Head:
    """Raises `export_newer`, and `export_unreadable` when the file is cut short before it says whose it is."""
    with _reading(path) as file:
        line = file.readline(_LONGEST_LINE).strip()
    try:
        said = json.loads(line.removesuffix(b",") + b"}")
        if said["version"] > VERSION:
            raise TarebookError("export_newer", file=str(path))
        return Head(str(said["garage"]), str(said["name"]), str(said["device"]))
    except (ValueError, KeyError, TypeError, RecursionError) as problem:
        raise TarebookError("export_unreadable", file=str(path)) from problem


def items(path: Path) -> Iterator[Item]:
    """Entries in the phone's order, then photos; last one with the fault `export_cut_short` when the end is missing."""
    section, number, ended = "", 0, False
    with _reading(path) as file:
        for number, line in enumerate(iter(lambda: file.readline(_LONGEST_LINE), b""), start=1):
            stripped = line.strip()
            ended = section == _LAST and stripped.endswith(b"]}")
            named = _SECTION.search(stripped)
            if named:
                section = named[1].decode()
            elif section in _READERS and stripped not in _AFTER_AN_ITEM:
                found = _READERS[section](number, stripped)
                yield from () if found is None else (found,)
    if not ended:
        yield Item(number, fault="export_cut_short")


def _reading(path: Path) -> BinaryIO:
    try:
        return path.open("rb")
    except OSError as problem:
        raise TarebookError("file_unreadable", file=str(path), reason=problem.strerror or str(problem)) from problem


def _object(line: bytes) -> dict[str, Any]:
    """The object a line holds. Raises ValueError and its like."""
    text = line.decode("utf-8")
    found, end = json.JSONDecoder().raw_decode(text)
    if text[end:].encode() not in _AFTER_AN_ITEM or not isinstance(found, dict):
        raise ValueError("not one item")
    return found


_BAD_LINE = (ValueError, KeyError, TypeError, AttributeError, RecursionError)


def _entry(number: int, line: bytes) -> Item:
    try:
        row = _object(line)
        if len(row["text"].encode("utf-8", "replace")) > ENTRY_BYTES:
            raise ValueError("too long")
        return Item(number, entry=row["text"], proof=_proof(row))
    except _BAD_LINE:
        return Item(number, fault="export_line_unreadable")


def _proof(row: dict[str, Any]) -> Proof | None:
    receipt, sent_by = row.get("receipt"), row.get("sent_by")
    return Proof(receipt, sent_by if isinstance(sent_by, str) else None) if isinstance(receipt, str) else None


def _photo(number: int, line: bytes) -> Item | None:
    """Small pictures are made anew from the full ones, so only these are wanted."""
    try:
        row = _object(line)
        if row["size"] != "full":
            return None
        data = base64.b64decode(row["base64"], validate=True)
        if hashlib.sha256(data).hexdigest() != row["sha256"]:
            raise binascii.Error("another photo")
        return Item(number, photo=data, type=str(row["type"]))
    except _BAD_LINE:
        return Item(number, fault="export_photo_damaged")


_LAST = "photo_bytes"
_READERS = {"entries": _entry, _LAST: _photo}
