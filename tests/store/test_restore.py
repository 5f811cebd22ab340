"""Bringing a garage back: all of it, nothing damaged, and what was there is put aside."""

from __future__ import annotations

import hashlib
import json
import sqlite3
import zipfile
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest
from sqlalchemy import select

from tarebook.devices.pairing import Paired
from tarebook.errors import TarebookError
from tarebook.garage.records import all_records, all_texts
from tarebook.settings import Settings
from tarebook.store import garages, house
from tarebook.store.backup import back_up_daily, back_up_to
from tarebook.store.database import Database
from tarebook.store.lock import hold
from tarebook.store.migrate import migrate
from tarebook.store.models import EntryRow
from tarebook.store.restore import restore
from tests.home import Device, Home, entry
from tests.photos import photo_entry, picture, send_photo, sha
from tests.store.backups import NOON


@pytest.fixture
def made(home: Home, phone: Device, tmp_path: Path) -> Path:
    """A backup of two jobs and a photo; the server is stopped."""
    phone.push(entry("j1", {"name": "one"}, device=phone.id), entry("j2", {"name": "two"}, device=phone.id))
    data = picture(1)
    send_photo(phone, data)
    phone.push(photo_entry(data, "j1", phone))
    back_up_to(home.settings, home.database, tmp_path / "one.zip")
    home.close()
    return tmp_path / "one.zip"


def contents(home: Home) -> tuple[object, ...]:
    with home.database.read() as session:
        return all_records(session, home.garage, deleted=True), all_texts(session, home.garage)


def refused(settings: Settings, file: Path) -> str:
    with pytest.raises(TarebookError) as refusal:
        restore(settings, file)
    return refusal.value.code


def rewritten(file: Path, change: Callable[[dict[str, bytes]], None]) -> Path:
    """The backup with other contents, as a zip that is sound in itself."""
    with zipfile.ZipFile(file) as archive:
        inside = {name: archive.read(name) for name in archive.namelist()}
    change(inside)
    changed = file.with_name("changed.zip")
    with zipfile.ZipFile(changed, "w") as archive:
        for name, data in inside.items():
            archive.writestr(name, data)
    return changed


def with_database(file: Path, statement: str) -> Path:
    """The backup after a statement on its database, with the hash set right as a forger would."""

    def change(inside: dict[str, bytes]) -> None:
        plain = file.with_name("plain.sqlite3")
        plain.write_bytes(inside["tarebook.sqlite3"])
        with sqlite3.connect(plain) as database:
            database.execute(statement)
        database.close()
        with_hash(inside, plain.read_bytes())

    return rewritten(file, change)


def with_hash(inside: dict[str, bytes], database: bytes) -> None:
    said = json.loads(inside["backup.json"])
    said["database"] = hashlib.sha256(database).hexdigest()
    inside.update({"tarebook.sqlite3": database, "backup.json": json.dumps(said).encode()})


def test_in_an_empty_folder_everything_is_there_again(home: Home, phone: Device, made: Path, tmp_path: Path) -> None:
    elsewhere = Settings(data=tmp_path / "elsewhere", static_app=tmp_path / "app")
    done = restore(elsewhere, made)
    assert (done.entries, done.photos, done.aside) == (3, 1, None)
    back = Home(tmp_path / "elsewhere")
    assert back.garage == home.garage
    assert contents(back) == contents(home)
    device = Device(back.client, Paired(phone.garage, phone.id, "", ""))
    device.headers = phone.headers
    assert device.get(f"/photos/{sha(picture(1))}").data == picture(1)
    assert device.pull().json["durable"] == 3


def test_a_new_epoch_tells_every_phone(home: Home, phone: Device, made: Path) -> None:
    before = phone.pull().json
    home.close()
    restore(home.settings, made)
    assert phone.pull(before["epoch"], 3, before["mark"]).json["error"]["code"] == "rewound"


def test_what_was_there_is_put_aside_whole(home: Home, phone: Device, made: Path) -> None:
    phone.push(entry("j3", {"name": "after"}, device=phone.id))
    later = contents(home)
    home.close()
    aside = restore(home.settings, made).aside
    assert contents(home) != later
    home.close()
    assert aside is not None
    old = Home(aside)
    assert contents(old) == later


def test_a_damaged_database_does_not_keep_the_backup_out(home: Home, phone: Device, made: Path) -> None:
    wanted = contents(home)
    home.close()
    (home.settings.data / "tarebook.sqlite3").write_bytes(b"SQLite format 3\0 and then noise" * 1000)
    aside = restore(home.settings, made).aside
    assert contents(home) == wanted
    assert aside is not None
    assert (aside / "tarebook.sqlite3").read_bytes().endswith(b"noise")


def test_a_log_left_beside_the_old_database_does_not_flow_into_the_new_one(
    home: Home, phone: Device, made: Path
) -> None:
    wanted = contents(home)
    home.close()
    held = sqlite3.connect(home.settings.data / "tarebook.sqlite3")
    held.execute("UPDATE record SET standing = '{}'")
    held.commit()
    log = (home.settings.data / "tarebook.sqlite3-wal").read_bytes()
    held.close()
    (home.settings.data / "tarebook.sqlite3").write_bytes(b"")
    (home.settings.data / "tarebook.sqlite3-wal").write_bytes(log)
    restore(home.settings, made)
    assert contents(home) == wanted


def test_devices_taken_off_since_stay_off_and_those_joined_since_stay_on(home: Home, phone: Device, made: Path) -> None:
    joined = home.pair("joined since")
    joined.post(f"/devices/{phone.id}/revoke")
    with home.database.write() as session:
        house.keep_origin(session, "https://tarebook.local:8443")
    home.close()
    restore(home.settings, made)
    assert phone.get("/devices").json["error"]["code"] == "revoked"
    assert joined.get("/devices").status_code == 200
    with home.database.read() as session:
        assert house.origin(session) == "https://tarebook.local:8443"


def test_receipts_given_since_stay_good_though_the_backup_is_older_than_any(
    home: Home, phone: Device, made: Path
) -> None:
    with home.database.read() as session:
        key = garages.get(session, home.garage).receipt_key
    home.close()
    restore(home.settings, with_database(made, "UPDATE garage SET receipt_key = x'00'"))
    with home.database.read() as session:
        assert garages.get(session, home.garage).receipt_key == key


def test_certificates_and_backups_stay_where_they_are(home: Home, made: Path) -> None:
    for folder in ("certificates", "backups"):
        (home.settings.data / folder).mkdir()
        (home.settings.data / folder / "kept").touch()
    restore(home.settings, made)
    assert {path.parent.name for path in home.settings.data.glob("*/kept")} == {"certificates", "backups"}


def test_a_photo_damaged_here_is_set_right(home: Home, phone: Device, made: Path) -> None:
    file = home.settings.photos / sha(picture(1))[:2] / sha(picture(1))
    file.write_bytes(b"bad")
    restore(home.settings, made)
    assert file.read_bytes() == picture(1)


def test_while_a_server_holds_the_folder_nothing_is_done(home: Home, made: Path) -> None:
    before = contents(home)
    with hold(home.settings.data):
        assert refused(home.settings, made) == "folder_in_use"
    assert contents(home) == before


def test_a_daily_backup_comes_back_with_the_photos_beside_it(home: Home, phone: Device, made: Path) -> None:
    file = back_up_daily(home.settings, home.database, NOON).file
    elsewhere = Settings(data=home.settings.data.parent / "elsewhere")
    assert restore(elsewhere, file).photos == 1
    alone = home.settings.data.parent / "alone.zip"
    alone.write_bytes(file.read_bytes())
    assert refused(elsewhere, alone) == "backup_damaged"


def test_a_bit_turned_anywhere_is_refused_or_changes_nothing(home: Home, made: Path, tmp_path: Path) -> None:
    """Bits that say nothing about the contents, such as those of a date, may turn unseen."""
    wanted, whole = contents(home), made.read_bytes()
    home.close()
    codes = []
    for n in range(60):
        place = n * len(whole) // 60
        made.write_bytes(whole[:place] + bytes([whole[place] ^ 0x10]) + whole[place + 1 :])
        target = Settings(data=tmp_path / f"target-{n}")
        try:
            restore(target, made)
        except TarebookError as refusal:
            codes.append(refusal.code)
            assert not (target.data / "tarebook.sqlite3").exists()
            continue
        back = Home(target.data)
        assert contents(back) == wanted
        back.close()
    assert set(codes) <= {"backup_damaged", "not_a_backup"}
    assert len(codes) > 50


@pytest.mark.parametrize("part", [0, 0.3, 0.99])
def test_a_file_cut_short_is_refused(home: Home, made: Path, part: float) -> None:
    whole = made.read_bytes()
    made.write_bytes(whole[: int(part * len(whole))])
    assert refused(home.settings, made) == "not_a_backup"


@pytest.mark.parametrize(
    ("statement", "code"),
    [
        ("UPDATE entry SET text = CAST(replace(CAST(text AS TEXT), 'one', 'own') AS BLOB)", "backup_damaged"),
        ("DELETE FROM entry WHERE number = 3", "backup_damaged"),
        ("UPDATE garage SET head = 2", "backup_damaged"),
        ("UPDATE entry SET intake = 'stranger' WHERE number = 1", "backup_damaged"),
        ("DELETE FROM photo", "backup_damaged"),
        ("DROP TABLE device", "backup_damaged"),
        ("DELETE FROM garage", "backup_damaged"),
        ("UPDATE record SET standing = replace(standing, 'one', 'own')", "backup_differs"),
        ("UPDATE alembic_version SET version_num = '9999'", "database_newer"),
    ],
)
def test_a_backup_forged_with_a_right_hash_is_refused(home: Home, made: Path, statement: str, code: str) -> None:
    before = contents(home)
    home.close()
    assert refused(home.settings, with_database(made, statement)) == code
    assert contents(home) == before


def test_a_photo_missing_cut_or_another_is_refused(home: Home, made: Path) -> None:
    name = f"photos/{sha(picture(1))[:2]}/{sha(picture(1))}"
    without = rewritten(made, lambda inside: inside.update({name: inside.pop(name)[:0]}))
    assert refused(home.settings, without) == "backup_damaged"
    other = rewritten(made, lambda inside: inside.update({name: picture(2)}))
    assert refused(home.settings, other) == "backup_damaged"
    whole = made.read_bytes()
    made.write_bytes(whole[:100] + whole[104:])  # now it begins before the file does, which is no trouble of the disk
    assert refused(home.settings, made) == "backup_damaged"


def test_a_backup_of_a_newer_program_or_of_something_else_is_refused(home: Home, made: Path) -> None:
    def say(**more: object) -> Callable[[dict[str, bytes]], None]:
        return lambda inside: inside.update(
            {"backup.json": json.dumps({**json.loads(inside["backup.json"]), **more}).encode()}
        )

    assert refused(home.settings, rewritten(made, say(version=2))) == "backup_newer"
    assert refused(home.settings, rewritten(made, say(format="x"))) == "backup_damaged"
    assert refused(home.settings, rewritten(made, say(marks=3))) == "backup_damaged"
    assert refused(home.settings, rewritten(made, lambda inside: inside.clear())) == "not_a_backup"
    assert refused(home.settings, made.with_name("nowhere.zip")) == "file_unreadable"


def test_a_backup_from_before_the_last_migrations_comes_up_to_date(
    home: Home, phone: Device, made: Path, tmp_path: Path
) -> None:
    first = Database(f"sqlite:///{tmp_path / 'first.sqlite3'}")
    migrate(first, "0001")
    first.close()

    def change(inside: dict[str, bytes]) -> None:
        (tmp_path / "now.sqlite3").write_bytes(inside["tarebook.sqlite3"])
        with closing(sqlite3.connect(tmp_path / "first.sqlite3", isolation_level=None)) as plain:
            plain.execute("ATTACH ? AS now", (str(tmp_path / "now.sqlite3"),))
            for table in ("garage", "entry", "record", "waiting", "verdict", "device", "photo"):
                columns = ", ".join(row[1] for row in plain.execute(f"PRAGMA main.table_info({table})"))
                plain.execute(f"INSERT INTO {table} ({columns}) SELECT {columns} FROM now.{table}")
            plain.execute("UPDATE entry SET sent_by = 'home' WHERE number = 2")
            plain.execute("PRAGMA journal_mode=DELETE")
        with_hash(inside, (tmp_path / "first.sqlite3").read_bytes())

    older = rewritten(made, change)
    restore(Settings(data=tmp_path / "elsewhere"), older)
    new = Home(tmp_path / "elsewhere")
    assert contents(new) == contents(home)
    with new.database.read() as session:
        assert [(row.number, row.sent_for) for row in session.scalars(select(EntryRow))] == [
            (1, None), (2, phone.id), (3, None),
        ]  # fmt: skip
        assert len(garages.get(session, new.garage).receipt_key) == 32
