"""The doctor finds nothing in a sound garage, and each thing that is broken in turn, without changing anything."""

from __future__ import annotations

import json
import os
import sqlite3
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from ipaddress import ip_address
from pathlib import Path
from typing import Any

import pytest

from tarebook.devices import authority, certificates
from tarebook.store import house
from tarebook.store.kept import backups_in
from tarebook.store.rounds import make_round
from tests.home import Device, Home
from tests.photos import picture, sha
from tests.store.backups import damage_pages, photograph, record, spoil_text
from tests.store.unwritable import DISKS, tarebook_on

NAME = "tarebook.local"


@pytest.fixture
def data(home: Home, phone: Device) -> Path:
    record(phone, *(f"j{n}" for n in range(200)))
    photograph(phone, 1)
    with home.database.write() as session:
        house.keep_origin(session, f"https://{NAME}:8443")
    certify(home.settings.data, datetime.now(UTC))
    make_round(home.settings, home.database, datetime.now(UTC))
    home.close()
    return home.settings.data


def certify(data: Path, when: datetime) -> None:
    folder = data / "certificates"
    for file in folder.glob("*"):
        file.unlink()
    folder.mkdir(mode=0o700, exist_ok=True)
    certificates.renew(folder, authority.make(folder, NAME, when), NAME, [ip_address("192.168.1.2")], when)


def sql(statement: str) -> Callable[[Path], None]:
    def change(data: Path) -> None:
        with sqlite3.connect(data / "tarebook.sqlite3") as plain:
            plain.execute(statement)

    return change


def spoil_backup(data: Path) -> None:
    for file in backups_in(data / "backups"):
        file.write_bytes(file.read_bytes()[:-30])


def open_up(data: Path) -> None:
    data.chmod(0o755)
    (data / "tarebook.sqlite3").chmod(0o644)


def spoil_photo(data: Path) -> None:
    name = sha(picture(1))
    os.truncate(data / "photos" / name[:2] / name, 100)


OLD = (datetime.now(UTC) - timedelta(days=3)).isoformat(timespec="milliseconds")
AHEAD = (datetime.now(UTC) + timedelta(days=400)).isoformat(timespec="milliseconds")
BREAKS: dict[str, tuple[Callable[[Path], Any], str, str]] = {
    "pages": (lambda data: damage_pages(data / "tarebook.sqlite3"), "database", "database_damaged"),
    "references": (sql("INSERT INTO verdict VALUES ('nowhere', 'e', 1)"), "database", "database_damaged"),
    "newer": (sql("UPDATE alembic_version SET version_num = '9999'"), "database", "database_newer"),
    "text": (lambda data: spoil_text(data / "tarebook.sqlite3"), "journal", "database_damaged"),
    "cut short": (sql("DELETE FROM entry WHERE number = 150"), "journal", "database_damaged"),
    "tables": (sql("UPDATE record SET standing = '{}' WHERE id = 'j7'"), "journal", "tables_differ"),
    "photo": (spoil_photo, "photos", "photos_damaged"),
    "certificate": (
        lambda data: certify(data, datetime.now(UTC) - timedelta(days=9000)), "certificate", "authority_expired",
    ),
    "key": (
        lambda data: (data / "certificates" / authority.KEY).chmod(0o644), "certificate", "authority_exposed",
    ),
    "clock": (sql(f"UPDATE entry SET received_at = '{AHEAD}' WHERE number = 9"), "clock", "clock_behind"),
    "old": (sql(f"UPDATE setting SET value = '{OLD}' WHERE name = 'backup_proven'"), "backups", "backup_old"),
    "none": (sql("DELETE FROM setting WHERE name = 'backup_proven'"), "backups", "backup_none"),
    "backup": (spoil_backup, "backups", "not_a_backup"),
    "permissions": (open_up, "permissions", "open_to_others"),
}  # fmt: skip


def contents(data: Path) -> dict[str, bytes]:
    """SQLite's own logs left out: whoever looks at a database has them beside it."""
    files = [path for path in data.rglob("*") if path.is_file() and not path.name.endswith(("-wal", "-shm"))]
    return {str(path): path.read_bytes() for path in files}


def test_a_sound_garage_is_well_and_stays_as_it_was(data: Path, tarebook: Any) -> None:
    before = contents(data)
    ran = tarebook("doctor")
    assert (ran.code, ran.out.count("NOT WELL"), ran.out.count("\n")) == (0, 0, 8), ran.out
    assert json.loads(tarebook("doctor", "--json").out)["ok"] is True
    assert contents(data) == before


@pytest.mark.parametrize(("damage", "about", "code"), BREAKS.values(), ids=BREAKS)
def test_each_thing_broken_is_found_and_told_with_what_to_do(
    data: Path, tarebook: Any, damage: Callable[[Path], Any], about: str, code: str
) -> None:
    damage(data)
    ran = tarebook("doctor", "--json")
    assert ran.code == 1
    found = [each for each in json.loads(ran.out)["findings"] if not each["ok"]]
    assert [(each["about"], each["error"]["code"]) for each in found] == [(about, code)]
    ran = tarebook("doctor")
    assert ran.code == 1
    assert f"{about}: NOT WELL. {found[0]['error']['sentence']} {found[0]['error']['do']}" in ran.out
    assert "{" not in ran.out


def test_little_room_is_told(data: Path, tarebook: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("TAREBOOK_RESERVE_BYTES", str(10**12))
    ran = tarebook("doctor")
    assert (ran.code, ran.out.count("NOT WELL")) == (1, 1)
    assert "MB are free" in ran.out


@pytest.mark.parametrize("name", DISKS)
def test_on_a_disk_that_takes_nothing_all_the_rest_is_looked_at(data: Path, name: str) -> None:
    ran = tarebook_on(DISKS[name], data, "doctor")
    assert (ran.returncode, ran.stdout.count("NOT WELL"), ran.stdout.count("\n")) == (1, 1, 8), ran.stdout
    assert f"is {name}." in ran.stdout


def test_beside_a_server_that_writes_it_is_well_too(home: Home, data: Path, phone: Device, tarebook: Any) -> None:
    record(phone, "one more")
    with home.database.write():
        ran = tarebook("doctor")
    assert ran.code == 0, ran.out


def test_without_a_garage_it_says_so(tarebook: Any) -> None:
    ran = tarebook("doctor")
    assert ran.code == 1
    assert "There is no garage in the folder" in ran.err
