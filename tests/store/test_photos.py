"""The photo store when the disk or the power fails."""

from __future__ import annotations

import errno
import hashlib
import os
from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image

from tarebook.errors import TarebookError
from tarebook.store.photos import Photos
from tests.home import Home


@pytest.fixture
def photos(home: Home) -> Photos:
    return Photos(home.settings, home.database)


def picture() -> bytes:
    kept = BytesIO()
    Image.effect_noise((200, 200), 60).save(kept, "JPEG")
    return kept.getvalue()


def files(home: Home) -> set[str]:
    return {path.name for path in home.settings.photos.rglob("*") if path.is_file()}


def test_the_server_keeps_a_photo_of_its_own_once(home: Home, photos: Photos) -> None:
    data = picture()
    for _ in range(2):
        kept = photos.keep(home.garage, data, "image/jpeg", "home")
        assert (kept.type, kept.width, kept.height) == ("image/jpeg", 200, 200)
    assert files(home) == {hashlib.sha256(data).hexdigest()}


def test_a_disk_that_fills_half_way_through_a_piece_leaves_the_offset_where_it_was(
    home: Home, photos: Photos, monkeypatch: pytest.MonkeyPatch
) -> None:
    data = picture()
    upload = photos.announce(home.garage, hashlib.sha256(data).hexdigest(), len(data), "image/jpeg")
    assert upload is not None
    photos.append(upload, 0, data[:100], "home")
    write = os.write

    def filling(handle: int, piece: memoryview) -> int:
        if len(piece) <= 50:
            raise OSError(errno.ENOSPC, "No space left on device")
        return write(handle, piece[:50])

    with monkeypatch.context() as patch:
        patch.setattr("tarebook.store.files.os.write", filling)
        with pytest.raises(TarebookError) as refusal:
            photos.append(upload, 100, data[100:], "home")
    assert refusal.value.code == "disk_full"
    assert photos.offset(upload) == 100
    assert photos.append(upload, 100, data[100:], "home") == len(data)


def test_a_photo_that_cannot_be_brought_to_the_disk_is_not_called_here(
    home: Home, photos: Photos, monkeypatch: pytest.MonkeyPatch
) -> None:
    data = picture()

    def failing(_path: Path) -> None:
        raise OSError(errno.EIO, "Input/output error")

    with monkeypatch.context() as patch:
        patch.setattr("tarebook.store.photos.fsync", failing)
        with pytest.raises(TarebookError) as refusal:
            photos.keep(home.garage, data, "image/jpeg", "home")
    assert refusal.value.code == "store_unwell"
    with home.database.read() as session:
        assert photos.find(session, home.garage, hashlib.sha256(data).hexdigest()) is None


def test_killed_between_the_rename_and_the_row_the_photo_is_asked_for_again(
    home: Home, photos: Photos, monkeypatch: pytest.MonkeyPatch
) -> None:
    data = picture()
    with monkeypatch.context() as patch:
        patch.setattr(Photos, "_record", lambda *_: 1 / 0)
        with pytest.raises(ZeroDivisionError):
            photos.keep(home.garage, data, "image/jpeg", "home")
    assert photos.keep(home.garage, data, "image/jpeg", "home").width == 200
    assert files(home) == {hashlib.sha256(data).hexdigest()}


def test_a_photo_whose_file_was_lost_is_asked_for_again(home: Home, photos: Photos) -> None:
    data = picture()
    mark = hashlib.sha256(data).hexdigest()
    photos.keep(home.garage, data, "image/jpeg", "home")
    photos.path(mark).unlink()
    assert photos.announce(home.garage, mark, len(data), "image/jpeg") is not None
    photos.keep(home.garage, data, "image/jpeg", "home")
    assert photos.path(mark).read_bytes() == data


def test_an_upload_nobody_finished_in_a_month_is_forgotten(home: Home, photos: Photos) -> None:
    from sqlalchemy import text

    old = photos.announce(home.garage, "a" * 64, 100, "image/jpeg")
    assert old is not None
    photos.append(old, 0, b"x", "home")
    with home.database.write() as session:
        session.execute(text("UPDATE upload SET started_at = '2020-01-01T00:00:00.000+00:00'"))
    photos.announce(home.garage, "b" * 64, 100, "image/jpeg")
    assert files(home) == set()
    with home.database.read() as session, pytest.raises(TarebookError):
        photos.find_upload(session, home.garage, old.id)


def test_a_thumbnail_that_cannot_be_written_leaves_no_file(
    home: Home, photos: Photos, monkeypatch: pytest.MonkeyPatch
) -> None:
    data = picture()
    mark = hashlib.sha256(data).hexdigest()
    photos.keep(home.garage, data, "image/jpeg", "home")

    def full(_path: Path) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    with monkeypatch.context() as patch:
        patch.setattr("tarebook.store.files.fsync", full)
        with pytest.raises(TarebookError) as refusal:
            photos.thumb(mark)
    assert refusal.value.code == "disk_full"
    assert files(home) == {mark}
    assert Image.open(BytesIO(photos.thumb(mark))).format == "JPEG"


@pytest.mark.parametrize("kind", ["JPEG", "WEBP"])
def test_a_photo_whose_exif_is_broken_has_a_small_picture_all_the_same(home: Home, photos: Photos, kind: str) -> None:
    kept = BytesIO()
    Image.new("RGB", (40, 30)).save(kept, kind, exif=b"Exif\0\0" + bytes(range(16, 80)))
    photos.keep(home.garage, kept.getvalue(), f"image/{kind.lower()}", "home")
    with Image.open(BytesIO(photos.thumb(hashlib.sha256(kept.getvalue()).hexdigest()))) as small:
        assert small.size == (40, 30)
