"""The backups that are kept: one a day, their photos shared, the old ones gone."""

from __future__ import annotations

import shutil
import sqlite3
import zipfile
from datetime import UTC, datetime, timedelta
from pathlib import Path

from tarebook.store.backup import back_up_daily, is_due
from tarebook.store.kept import name_at
from tests.home import Device, Home
from tests.photos import picture, send_photo, sha
from tests.store.backups import NOON, photograph, proven, record


def also_on(made: Path, *days: datetime) -> None:
    """The same backup again, as if it had been made on those days too."""
    for day in days:
        shutil.copy(made, made.with_name(name_at(day)))


def test_daily_backups_share_their_photos_and_let_go_of_what_no_backup_needs(home: Home, phone: Device) -> None:
    record(phone, "j1")
    first = photograph(phone, 9)
    old = back_up_daily(home.settings, home.database, NOON - timedelta(days=800)).file
    home.close()
    with sqlite3.connect(home.settings.data / "tarebook.sqlite3") as plain:
        plain.execute("DELETE FROM photo")  # nothing in the program does so: that nobody needs it is what matters
    second = photograph(phone, 10)
    made = back_up_daily(home.settings, home.database, NOON - timedelta(days=400)).file
    pool = home.settings.backups / "photos"
    assert {photo.name for photo in pool.glob("??/*")} == {sha(first), sha(second)}
    also_on(made, *(NOON - timedelta(days=29 * month) for month in range(1, 14)))
    newest = back_up_daily(home.settings, home.database, NOON).file
    assert not old.exists()
    assert {photo.name for photo in pool.glob("??/*")} == {sha(second)}
    with zipfile.ZipFile(newest) as archive:
        assert set(archive.namelist()) == {"tarebook.sqlite3", "backup.json"}
    assert proven(newest, home.settings.data / "scratch")


def test_while_a_backup_cannot_be_read_no_photo_goes(home: Home, phone: Device) -> None:
    record(phone, "j1")
    photo = photograph(phone, 12)
    made = back_up_daily(home.settings, home.database, NOON - timedelta(days=1)).file
    made.write_bytes(b"no zip")
    (home.settings.photos / sha(photo)[:2] / sha(photo)).unlink()
    home.close()
    with sqlite3.connect(home.settings.data / "tarebook.sqlite3") as plain:
        plain.execute("DELETE FROM photo")
    back_up_daily(home.settings, home.database, NOON)
    assert (home.settings.backups / "photos" / sha(photo)[:2] / sha(photo)).read_bytes() == photo


def test_the_one_just_made_stays_though_the_clock_went_back(home: Home, phone: Device) -> None:
    record(phone, "j1")
    ahead = back_up_daily(home.settings, home.database, datetime(2035, 1, 1, tzinfo=UTC)).file
    also_on(ahead, *(datetime(2035, 1, 1, tzinfo=UTC) + timedelta(days=day) for day in range(1, 500)))
    made = back_up_daily(home.settings, home.database, NOON)
    assert made.file.exists()
    assert len(list(home.settings.backups.glob("*.zip"))) <= 7 + 5 + 12 + 1


def test_one_is_due_on_each_day_on_which_something_is_new(home: Home, phone: Device) -> None:
    assert not is_due(home.settings, home.database, NOON)  # nothing to lose yet
    record(phone, "j1")
    assert is_due(home.settings, home.database, NOON)
    back_up_daily(home.settings, home.database, NOON)
    record(phone, "j2")
    assert not is_due(home.settings, home.database, NOON + timedelta(hours=11))
    assert is_due(home.settings, home.database, NOON + timedelta(hours=13))
    back_up_daily(home.settings, home.database, NOON + timedelta(days=1))
    assert not is_due(home.settings, home.database, NOON + timedelta(days=2))  # nothing has changed
    send_photo(phone, picture(11))
    assert is_due(home.settings, home.database, NOON + timedelta(days=2))


def test_a_photo_gone_bad_is_healed_from_a_daily_backup(home: Home, phone: Device) -> None:
    record(phone, "j1")
    data = photograph(phone, 7)
    back_up_daily(home.settings, home.database, NOON)
    file = home.settings.photos / sha(data)[:2] / sha(data)
    file.write_bytes(b"bad")
    made = back_up_daily(home.settings, home.database, NOON + timedelta(days=1))
    assert made.manifest.left_out == frozenset()
    assert file.read_bytes() == data
