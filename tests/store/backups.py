"""What the tests of backups share."""

from __future__ import annotations

import sqlite3
from datetime import UTC, datetime
from pathlib import Path

from tarebook.store.backup_file import opened, verify
from tests.home import Device, entry
from tests.photos import photo_entry, picture, send_photo

NOON = datetime(2026, 5, 2, 12, tzinfo=UTC)


def record(phone: Device, *names: str) -> int:
    answer = phone.push(*(entry(name, {"name": name}, device=phone.id) for name in names))
    return int(answer.json["head"])


def durable_of(phone: Device) -> int | None:
    told: int | None = phone.pull().json["durable"]
    return told


def photograph(phone: Device, seed: int) -> bytes:
    data = picture(seed)
    assert send_photo(phone, data)
    phone.push(photo_entry(data, "j1", phone))
    return data


def proven(file: Path, scratch: Path) -> dict[str, tuple[int, str]]:
    """The marks of a backup that proves whole."""
    scratch.mkdir()
    with opened(file) as found:
        verify(found, scratch).close()
        return found.manifest.marks


def damage_pages(file: Path) -> None:
    """Overwrites most of a database behind its first pages, as a failing disk may."""
    data = bytearray(file.read_bytes())
    for start in range(8 * 4096, len(data), 3 * 4096):
        data[start : start + 2000] = b"\x07" * len(data[start : start + 2000])
    file.write_bytes(data)


def spoil_text(file: Path) -> None:
    """Changes one entry's bytes where SQLite's own checks cannot see it."""
    with sqlite3.connect(file) as plain:
        plain.execute("UPDATE entry SET text = CAST(x'7bff7d' AS BLOB) WHERE number = 7")
