"""What the tests of backups share."""

from __future__ import annotations

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
