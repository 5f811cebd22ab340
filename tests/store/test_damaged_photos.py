"""A photo gone bad on the disk is never served: healed from a backup, or said and asked of the phones."""

from __future__ import annotations

import errno
import os
from collections.abc import Callable
from datetime import timedelta
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
from PIL import Image

from tarebook.store.backup import back_up_daily, is_due
from tests.home import Device, Home
from tests.photos import send_photo, sha
from tests.store.backups import NOON, photograph, record

Damage = Callable[[Path], Any]
DAMAGES: dict[str, Damage] = {
    "cut short": lambda file: os.truncate(file, 700),
    "overwritten": lambda file: file.write_bytes(b"\0" * file.stat().st_size),
    "one bit": lambda file: file.write_bytes(file.read_bytes()[:-9] + b"?" + file.read_bytes()[-8:]),
    "empty": lambda file: file.write_bytes(b""),
}
each_damage = pytest.mark.parametrize("damage", DAMAGES.values(), ids=DAMAGES)


@pytest.fixture
def data(phone: Device) -> bytes:
    record(phone, "j1")
    return photograph(phone, 7)


def file_of(home: Home, data: bytes) -> Path:
    return home.settings.photos / sha(data)[:2] / sha(data)


@each_damage
def test_without_a_backup_it_is_said_and_comes_again_from_a_phone(
    home: Home, phone: Device, data: bytes, damage: Damage
) -> None:
    assert phone.get(f"/photos/{sha(data)}").data == data
    damage(file_of(home, data))
    for size in ("full", "thumb", "full"):
        answer = phone.get(f"/photos/{sha(data)}?size={size}")
        assert (answer.status_code, answer.json["error"]["code"]) == (404, "photo_damaged")
    assert send_photo(phone, data)
    assert phone.get(f"/photos/{sha(data)}").data == data
    assert [path.name for path in file_of(home, data).parent.iterdir()] == [sha(data)]


@each_damage
def test_it_is_healed_from_a_daily_backup_when_it_is_next_read(
    home: Home, phone: Device, data: bytes, damage: Damage
) -> None:
    back_up_daily(home.settings, home.database, NOON)
    damage(file_of(home, data))
    assert phone.get(f"/photos/{sha(data)}").data == data
    damage(file_of(home, data))
    assert not send_photo(phone, data)  # healed, so it is here
    assert file_of(home, data).read_bytes() == data


def test_a_file_that_was_lost_is_healed_too(home: Home, phone: Device, data: bytes) -> None:
    back_up_daily(home.settings, home.database, NOON)
    file_of(home, data).unlink()
    assert phone.get(f"/photos/{sha(data)}").data == data


@each_damage
def test_a_small_picture_gone_bad_is_made_again(home: Home, phone: Device, data: bytes, damage: Damage) -> None:
    small = phone.get(f"/photos/{sha(data)}?size=thumb").data
    damage(file_of(home, data).with_name(f"{sha(data)}.thumb"))
    again = phone.get(f"/photos/{sha(data)}?size=thumb").data
    assert again == small
    assert Image.open(BytesIO(again)).format == "JPEG"


def test_what_came_again_is_due_for_a_backup(home: Home, phone: Device, data: bytes) -> None:
    DAMAGES["empty"](file_of(home, data))
    back_up_daily(home.settings, home.database, NOON)
    assert not is_due(home.settings, home.database, NOON + timedelta(days=1))
    assert send_photo(phone, data)
    assert is_due(home.settings, home.database, NOON + timedelta(days=1))


def test_what_cannot_be_read_just_now_is_not_called_damaged(
    home: Home, phone: Device, data: bytes, monkeypatch: pytest.MonkeyPatch
) -> None:
    def exhausted(_path: Path) -> bytes:
        raise OSError(errno.EMFILE, "Too many open files")

    with monkeypatch.context() as patch:
        patch.setattr(Path, "read_bytes", exhausted)
        assert phone.get(f"/photos/{sha(data)}").status_code >= 500
    assert phone.get(f"/photos/{sha(data)}").data == data


def test_a_whole_photo_is_read_for_its_hash_once(
    home: Home, phone: Device, data: bytes, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert phone.get(f"/photos/{sha(data)}").data == data
    read: list[Path] = []
    read_bytes = Path.read_bytes

    def noted(path: Path) -> bytes:
        read.append(path)
        return read_bytes(path)

    monkeypatch.setattr(Path, "read_bytes", noted)
    assert phone.get(f"/photos/{sha(data)}").data == data
    assert read == []
