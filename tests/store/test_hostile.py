"""A backup made to do harm: told by its shape and its sizes, before anything of it is read or unpacked."""

from __future__ import annotations

import hashlib
import json
import sqlite3
import subprocess
import sys
import zipfile
from collections.abc import Iterator
from pathlib import Path

import pytest

from tarebook.errors import TarebookError
from tarebook.settings import Settings
from tarebook.store.backup import back_up_to
from tarebook.store.restore import restore
from tests.home import Device, Home
from tests.store.backups import record

SHAPES = {
    "trigger": "CREATE TRIGGER x AFTER UPDATE ON garage BEGIN DELETE FROM entry; DELETE FROM record; END",
    "view in a table's place": "ALTER TABLE waiting RENAME TO kept; CREATE VIEW waiting AS SELECT * FROM kept",
    "virtual table": "CREATE VIRTUAL TABLE x USING fts5(y)",
    "generated column": "ALTER TABLE setting ADD COLUMN x TEXT GENERATED ALWAYS AS (upper(value)) VIRTUAL",
    "index over an expression": "CREATE INDEX x ON record (lower(standing))",
    "index over some": "CREATE UNIQUE INDEX x ON record (kind) WHERE deleted",
    "table more": "CREATE TABLE x (y TEXT)",
    "column with a condition": "ALTER TABLE setting ADD COLUMN x TEXT CHECK (x IS NULL)",
    "table less": "DROP TABLE upload",
}


@pytest.fixture
def made(home: Home, phone: Device, tmp_path: Path) -> Path:
    record(phone, *(f"j{n}" for n in range(20)))
    back_up_to(home.settings, home.database, tmp_path / "one.zip")
    home.close()
    return tmp_path / "one.zip"


def forged(file: Path, script: str) -> Path:
    """The backup after statements on its database, with its hash set right."""
    plain, changed = file.with_name("plain.sqlite3"), file.with_name("forged.zip")
    with zipfile.ZipFile(file) as archive:
        plain.write_bytes(archive.read("tarebook.sqlite3"))
        said = json.loads(archive.read("backup.json"))
    database = sqlite3.connect(plain)
    database.executescript(script)
    database.close()
    said["database"] = hashlib.sha256(plain.read_bytes()).hexdigest()
    with zipfile.ZipFile(changed, "w") as archive:
        archive.write(plain, "tarebook.sqlite3")
        archive.writestr("backup.json", json.dumps(said))
    return changed


@pytest.mark.parametrize("script", SHAPES.values(), ids=SHAPES)
def test_a_database_of_another_shape_is_refused_before_a_row_is_read(
    home: Home, made: Path, tmp_path: Path, script: str
) -> None:
    elsewhere = Settings(data=tmp_path / "elsewhere")
    with pytest.raises(TarebookError) as refusal:
        restore(elsewhere, forged(made, script))
    assert refusal.value.code == "backup_damaged"
    assert "its tables are not Tarebook's" in refusal.value.sentence
    assert not (elsewhere.data / "tarebook.sqlite3").exists()


def test_the_same_way_without_a_change_restores(home: Home, made: Path, tmp_path: Path) -> None:
    assert restore(Settings(data=tmp_path / "elsewhere"), forged(made, "VACUUM")).entries == 20


def zeros(size: int) -> Iterator[bytes]:
    for _ in range(size >> 20):
        yield bytes(1 << 20)


def bomb(file: Path, name: str, size: int, made: Path) -> Path:
    """A small zip in which one member says truly that it is of this size: nothing but zeros."""
    hashed = hashlib.sha256()
    with zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED, compresslevel=1) as archive:
        with archive.open(name, "w", force_zip64=True) as out:
            for some in zeros(size):
                hashed.update(some)
                out.write(some)
        with zipfile.ZipFile(made) as sound:
            said = json.loads(sound.read("backup.json"))
            if name != "backup.json":
                archive.writestr("backup.json", json.dumps({**said, "database": hashed.hexdigest()}))
    return file


@pytest.mark.parametrize("name", ["tarebook.sqlite3", "backup.json"])
def test_a_bomb_is_refused_by_its_size_with_memory_flat(made: Path, tmp_path: Path, name: str) -> None:
    hostile = bomb(tmp_path / "bomb.zip", name, 3 << 28, made)
    assert hostile.stat().st_size < 5_000_000
    program = (
        "import resource, sys\n"
        "from pathlib import Path\n"
        "from tarebook.settings import Settings\n"
        "from tarebook.store.restore import restore\n"
        "from tarebook.errors import TarebookError\n"
        "most = lambda: resource.getrusage(resource.RUSAGE_SELF).ru_maxrss\n"
        "before = most()  # a child begins with its parent's\n"
        "try: restore(Settings(data=Path(sys.argv[2])), Path(sys.argv[1]))\n"
        "except TarebookError as told: print(told.code, most() - before)\n"
    )
    ran = subprocess.run(
        [sys.executable, "-c", program, hostile, tmp_path / "elsewhere"], capture_output=True, text=True, check=True
    )
    code, kilobytes = ran.stdout.split()
    assert code == "backup_damaged"
    assert int(kilobytes) < 100_000
    assert not any((tmp_path / "elsewhere").glob("**/*sqlite3*"))


def test_a_photo_larger_than_any_is_refused(home: Home, phone: Device, made: Path, tmp_path: Path) -> None:
    photo = hashlib.sha256(bytes(60_000_000)).hexdigest()
    with zipfile.ZipFile(made) as archive:
        inside = {name: archive.read(name) for name in archive.namelist()}
    said = json.loads(inside["backup.json"])
    with zipfile.ZipFile(tmp_path / "large.zip", "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("tarebook.sqlite3", inside["tarebook.sqlite3"])
        archive.writestr("backup.json", json.dumps({**said, "photos": [photo]}))
        archive.writestr(f"photos/{photo[:2]}/{photo}", bytes(60_000_000))
    with pytest.raises(TarebookError) as refusal:
        restore(Settings(data=tmp_path / "elsewhere"), tmp_path / "large.zip")
    assert refusal.value.code == "backup_damaged"
