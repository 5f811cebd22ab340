"""Nobody else on the computer reads what is kept, whatever the folder's mode and the system's habits."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

import pytest

from tarebook.store.backup import back_up_daily, back_up_to
from tarebook.store.restore import restore
from tests.home import Home
from tests.photos import sha
from tests.store.backups import NOON, photograph, record


@pytest.fixture(autouse=True)
def _careless_system() -> Iterator[None]:
    before = os.umask(0)
    yield
    os.umask(before)


def open_to_others(folder: Path) -> list[str]:
    """What others may read and can reach, the folder itself left out."""
    found: list[str] = []
    for path in folder.iterdir():
        if path.stat().st_mode & 0o077:
            found += [path.name, *(open_to_others(path) if path.is_dir() else [])]
    return found


def test_in_a_folder_that_others_may_read_all_that_is_made_is_private(tmp_path: Path) -> None:
    data = tmp_path / "data"
    data.mkdir(mode=0o755)
    home = Home(data)
    phone = home.pair()
    record(phone, "j1")
    photo = photograph(phone, 1)
    phone.get(f"/photos/{sha(photo)}?size=thumb")
    assert phone.post("/photos", {"sha256": "a" * 64, "size": 10, "type": "image/jpeg"}).status_code == 201
    back_up_daily(home.settings, home.database, NOON)
    back_up_to(home.settings, home.database, data / "one.zip")
    assert open_to_others(data) == []
    home.close()
    restore(home.settings, data / "one.zip")
    assert open_to_others(data) == []
    every = [path for path in data.rglob("*") if path.is_file()]
    assert [path.name for path in every if path.stat().st_mode & 0o077] == []


def test_what_an_older_tarebook_left_open_is_closed_when_it_is_next_opened(tmp_path: Path) -> None:
    home = Home(tmp_path)
    record(home.pair(), "j1")
    (tmp_path / "certificates").mkdir(mode=0o755)
    for name in ("tarebook.sqlite3", "tarebook.sqlite3-wal", "tarebook.sqlite3-shm", "photos"):
        (tmp_path / name).chmod(0o755)
    home.open()
    assert open_to_others(tmp_path) == []
