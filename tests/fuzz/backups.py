"""Broken and hostile backups to the restore: refused by a row with nothing changed, or restored whole."""

from __future__ import annotations

import hashlib
import json
import warnings
import zipfile
from collections.abc import Iterator
from contextlib import closing, contextmanager
from io import BytesIO
from pathlib import Path
from random import Random
from typing import Any

from tarebook.errors import TarebookError
from tarebook.store.backup import back_up_to
from tarebook.store.database import settings_database
from tarebook.store.rebuild import rebuild
from tarebook.store.restore import restore
from tests.fuzz.kind import Case, limited
from tests.fuzz.mutate import changed, damaged
from tests.home import Home
from tests.store.backups import photograph, record

DATABASE, MANIFEST = "tarebook.sqlite3", "backup.json"
LOST = {"backup_damaged", "backup_newer", "backup_differs", "not_a_backup", "file_unreadable", "database_newer"}
"""What a bad backup may be refused for."""
OUTSIDE = (
    "../escaped",
    "/tmp/tarebook-escaped",
    "photos/../../escaped",
    "photos/ab/" + "c" * 300,
    "tarebook.sqlite3/x",
)


def entries_of(backup: bytes) -> dict[str, bytes]:
    with zipfile.ZipFile(BytesIO(backup)) as archive:
        return {name: archive.read(name) for name in archive.namelist()}


def zipped(entries: list[tuple[str | zipfile.ZipInfo, bytes]]) -> bytes:
    kept = BytesIO()
    with warnings.catch_warnings(), zipfile.ZipFile(kept, "w", zipfile.ZIP_DEFLATED) as archive:
        warnings.simplefilter("ignore")  # a name that is there twice is meant
        for name, data in entries:
            archive.writestr(name, data)
    return kept.getvalue()


def broken(random: Random, backup: bytes) -> bytes:
    """The backup with one thing done to it: its bytes, its entries, what it says of itself, or its database."""
    inside = entries_of(backup)
    names = list(inside)
    one = random.choice(names)
    match random.randrange(9):
        case 0 | 1:
            return damaged(random, backup)
        case 2:  # an entry's own bytes, in a sound zip
            inside[one] = damaged(random, inside[one])
        case 3:
            del inside[one]
        case 4:
            other = random.choice(names)
            inside[one], inside[other] = inside[other], inside[one]
        case 5:  # names that lead elsewhere, or a link, or an entry twice
            link = zipfile.ZipInfo(one)
            link.external_attr = 0o120777 << 16
            odd: list[tuple[str | zipfile.ZipInfo, bytes]] = [(name, b"escaped") for name in OUTSIDE] + [
                (link, b"/etc/passwd"),
                (one, b"twice"),
            ]
            return zipped([*inside.items(), random.choice(odd)])
        case 6:  # sizes that are not so, in the zip's own list
            at = backup.rindex(b"PK\x01\x02") + random.choice((20, 24))
            return (
                backup[:at] + random.choice((b"\xff\xff\xff\xff", b"\0\0\0\0", b"\xff\xff\xff\x7f")) + backup[at + 4 :]
            )
        case 7:
            inside[MANIFEST] = json.dumps(changed(random, json.loads(inside[MANIFEST]))).encode("utf-8", "replace")
        case 8:  # a database that is not its journal's, with its hash set right
            inside[DATABASE] = damaged(random, inside[DATABASE])
            said = json.loads(inside[MANIFEST])
            said["database"] = hashlib.sha256(inside[DATABASE]).hexdigest()
            inside[MANIFEST] = json.dumps(said).encode()
    return zipped(list(inside.items()))


def everything(folder: Path) -> dict[str, str]:
    """Every file of a folder by its hash; what SQLite and the lock write beside theirs apart."""
    files = (path for path in sorted(folder.rglob("*")) if path.is_file() or path.is_symlink())
    apart = ("-wal", "-shm", ".lock")
    return {
        str(path.relative_to(folder)): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in files
        if not path.name.endswith(apart) and path.parent != folder / "replaced"
    }


def journal(home: Home) -> list[tuple[Any, ...]]:
    with home.database.read() as session:
        return [
            tuple(row) for row in session.connection().exec_driver_sql("SELECT number, text FROM entry ORDER BY number")
        ]


def refusal_of(home: Home, file: Path) -> str:
    """The code for which the backup is not restored; empty when it is."""
    try:
        with limited(20):
            restore(home.settings, file)
    except TarebookError as refused:
        return refused.code
    return ""


@contextmanager
def opened(folder: Path) -> Iterator[Case]:
    """A garage with a backup, and more written since."""
    home = Home(folder / "data")
    phone = home.pair()
    record(phone, *(f"job-{number}" for number in range(30)))
    photos = [photograph(phone, seed) for seed in (1, 2)]
    back_up_to(home.settings, home.database, folder / "good.zip")
    good = (folder / "good.zip").read_bytes()
    backed_up = journal(home)
    record(phone, "since")
    home.close()
    current = folder / "data" / DATABASE
    before, plain = everything(folder), current.read_bytes()

    def case(random: Random) -> str:
        file = folder / "bad.zip"
        file.write_bytes(good if random.randrange(40) == 0 else broken(random, good))
        code = refusal_of(home, file)
        if code:
            file.unlink()
            assert code in LOST, code
            assert everything(folder) == before, code
            return code
        with closing(settings_database(home.settings)) as database, database.write() as session:
            assert rebuild(session, phone.garage).changed == 0
        assert journal(home) == backed_up
        for data in photos:
            name = hashlib.sha256(data).hexdigest()
            assert (folder / "data" / "photos" / name[:2] / name).read_bytes() == data
        home.close()
        file.unlink()
        _as_before(folder / "data", plain)
        assert everything(folder) == before
        return "restored whole"

    yield case


def _as_before(data: Path, plain: bytes) -> None:
    """The garage as it was, for the next case."""
    for old in sorted((data / "replaced").rglob("*"), reverse=True):
        old.rmdir() if old.is_dir() else old.unlink()
    (data / "replaced").rmdir()
    for ending in ("-wal", "-shm"):
        (data / f"{DATABASE}{ending}").unlink(missing_ok=True)
    (data / DATABASE).write_bytes(plain)
