"""A disk that is full or read-only keeps nobody from their records, and is called what it is."""

from __future__ import annotations

import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from tarebook.errors import TarebookError
from tarebook.store.backup import back_up_daily
from tarebook.store.database import Database, in_memory
from tarebook.store.photos import Photos
from tests.home import Device, Home, entry
from tests.photos import sha
from tests.store.backups import NOON, photograph, proven, record
from tests.store.unwritable import DISKS, tarebook_on

each_disk = pytest.mark.parametrize("disk", DISKS.values(), ids=DISKS)
KILLED = "import os, sqlite3; c = sqlite3.connect({!r}); c.execute({!r}); c.commit(); os._exit(0)"


@pytest.fixture
def data(home: Home, phone: Device) -> Path:
    """A folder with two records and a photo, its server ended."""
    record(phone, "j1", "j2")
    photograph(phone, 3)
    home.close()
    return home.settings.data


def killed(data: Path, statement: str) -> None:
    """Changes the database in a program that is killed: the change stands in the log beside it."""
    database = str(data / "tarebook.sqlite3")
    subprocess.run([sys.executable, "-c", KILLED.format(database, statement)], check=True)


@each_disk
def test_all_that_reads_still_works(data: Path, tmp_path: Path, disk: str) -> None:
    for arguments in (
        ("report", "--format", "json"), ("devices",), ("export", tmp_path / "all.json"),
        ("backup", tmp_path / "one.zip"),
    ):  # fmt: skip
        ran = tarebook_on(disk, data, *arguments)
        assert ran.returncode == 0, ran.stderr
        assert ran.stderr.count("It is read from a copy in memory.") == 1
    assert "phone" in tarebook_on(disk, data, "devices").stdout
    assert {number for number, _mark in proven(tmp_path / "one.zip", tmp_path / "scratch").values()} == {3}


@each_disk
@pytest.mark.parametrize("with_index", [True, False])
def test_what_stands_only_in_the_log_is_read_too(data: Path, disk: str, with_index: bool) -> None:
    killed(data, "UPDATE device SET name = 'only in the log'")
    assert (data / "tarebook.sqlite3-wal").stat().st_size > 0
    if not with_index:
        (data / "tarebook.sqlite3-shm").unlink()
    assert "only in the log" in tarebook_on(disk, data, "devices").stdout


@pytest.mark.parametrize(
    ("name", "words"), [("full", "the folder {} is full."), ("read-only", "the folder {} is read-only.")]
)
def test_what_must_write_names_the_true_cause(data: Path, name: str, words: str) -> None:
    for arguments in (("serve", "--no-browser", "--port", "0"), ("pair",), ("devices", "revoke", "phone")):
        ran = tarebook_on(DISKS[name], data, *arguments)
        assert ran.returncode == 1
        assert words.format(data.with_name("there")) in ran.stderr
        assert "{" not in ran.stderr


def test_a_copy_in_memory_can_be_changed_and_leaves_the_file_as_it_was(data: Path) -> None:
    before = (data / "tarebook.sqlite3").read_bytes()
    copy = in_memory(data / "tarebook.sqlite3")
    with copy.write() as session:
        session.connection().exec_driver_sql("DELETE FROM device")
    assert (data / "tarebook.sqlite3").read_bytes() == before


def test_beside_a_running_server_the_copy_has_what_it_has_just_written(home: Home, phone: Device) -> None:
    record(phone, "j1")
    with in_memory(home.settings.data / "tarebook.sqlite3").read() as session:
        assert session.connection().exec_driver_sql("SELECT count(*) FROM entry").scalar() == 1


def test_a_database_that_became_read_only_while_serving_is_called_so(
    home: Home, phone: Device, monkeypatch: pytest.MonkeyPatch
) -> None:
    def locked(_folder: Path) -> None:
        raise OSError(30, "Read-only file system")

    monkeypatch.setattr("tarebook.store.database.try_folder", locked)
    database = Database(home.settings.database)

    def write() -> None:
        with database.write() as session:
            session.connection().exec_driver_sql("PRAGMA query_only=ON")
            session.connection().exec_driver_sql("DELETE FROM device")

    with pytest.raises(TarebookError) as refusal:
        write()
    assert refusal.value.code == "disk_read_only"


def test_the_last_room_is_for_weighings_and_not_for_photos(home: Home, phone: Device) -> None:
    kept = photograph(phone, 1)
    home.settings = replace(home.settings, reserve_bytes=10**12)
    home.open()
    phone.client = home.client
    told = {"sha256": "a" * 64, "size": 100, "type": "image/jpeg"}
    answer = phone.post("/photos", told)
    assert (answer.status_code, answer.json["error"]["code"]) == (507, "photo_no_room")
    assert phone.post("/photos", {**told, "sha256": sha(kept), "size": len(kept)}).json == {"present": True}
    assert phone.push(entry("j9", {"name": "x"}, device=phone.id)).json["results"][0]["state"] == "accepted"
    with pytest.raises(TarebookError) as refusal:
        back_up_daily(home.settings, home.database, NOON)
    assert refusal.value.code == "backup_no_room"


def test_a_photo_begun_before_the_room_ran_short_waits_with_what_is_there(home: Home, phone: Device) -> None:
    photos = Photos(home.settings, home.database)
    upload = photos.announce(home.garage, "a" * 64, 100, "image/jpeg")
    assert upload is not None
    photos.append(upload, 0, b"x" * 40, "home")
    photos.reserve = 10**15
    with pytest.raises(TarebookError) as refusal:
        photos.append(upload, 40, b"x" * 60, "home")
    assert refusal.value.code == "photo_no_room"
    assert photos.offset(upload) == 40
