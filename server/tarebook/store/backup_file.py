"""A backup as a file: one zip that unpacks to a data folder, and what proves that it is whole.

`backup.json` says what must be inside, by hashes. `tarebook.sqlite3` is the database, `photos/ab/abcd…` the photos. The
daily backups leave their photos in one folder beside them, which they share: a photo never changes.

Nothing of a backup is believed: its sizes are looked at before it is unpacked and its tables before a row is read,
hashes are made again, the journal's chain of marks is walked, and the records are folded anew and must come out as the
rows that are there.
"""

from __future__ import annotations

import errno
import hashlib
import json
import shutil
import sqlite3
import zipfile
import zlib
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, fields
from pathlib import Path
from typing import Any

from sqlalchemy import select, text
from sqlalchemy.exc import SQLAlchemyError
from sqlalchemy.orm import Session

from tarebook.errors import TarebookError
from tarebook.store.database import Database
from tarebook.store.journal_rows import walked
from tarebook.store.migrate import migrate
from tarebook.store.models import Base, GarageRow, PhotoRow
from tarebook.store.rebuild import rebuild, rules
from tarebook.store.schema import check_shape

FORMAT, VERSION = "tarebook-backup", 1
MANIFEST, DATABASE = "backup.json", "tarebook.sqlite3"
_MOST_DATABASE, _MOST_MANIFEST, _MOST_PHOTO = 2 << 30, 16 << 20, 50_000_000
_MOST_SHRUNK = 200
"""No more times larger than in the zip: rows with their hashes come out about fifteen times as large."""
Marks = dict[str, tuple[int, str]]
"""Garage -> (number of its last entry, mark of its journal there)."""

_AT_ONCE = 1 << 20
_BAD_BYTES = (
    zipfile.BadZipFile, zlib.error, EOFError, KeyError, TypeError, ValueError, AttributeError, NotImplementedError,
    RuntimeError, SQLAlchemyError, sqlite3.Error,
)  # fmt: skip


@dataclass(frozen=True)
class Manifest:
    """What `backup.json` says. `database`: its hash. `photos`: hashes. `left_out`: those of photos that the garage
    knows but that were not on its disk, or not whole there."""

    made_at: str
    tarebook: str
    database: str
    marks: Marks
    photos: frozenset[str]
    left_out: frozenset[str]

    def to_json(self) -> str:
        plain = {**vars(self), "photos": sorted(self.photos), "left_out": sorted(self.left_out)}
        return json.dumps({"format": FORMAT, "version": VERSION, **plain}, indent=1) + "\n"

    @classmethod
    def of(cls, said: dict[str, Any]) -> Manifest:
        """Raises ValueError and its like for what cannot be one."""
        marks = {garage: (int(number), str(mark)) for garage, (number, mark) in said["marks"].items()}
        named = {"marks": marks, "photos": frozenset(said["photos"]), "left_out": frozenset(said["left_out"])}
        return cls(**{field.name: said[field.name] for field in fields(cls)} | named)


@dataclass(frozen=True)
class BackupFile:
    """An open backup. `beside`: the folder that holds the photos which are not inside."""

    file: Path
    archive: zipfile.ZipFile
    beside: Path
    manifest: Manifest

    def photo(self, sha256: str) -> bytes:
        """A photo's bytes, proven by their hash. Raises `backup_damaged`."""
        name = photo_name(sha256)
        with damage(self.file):
            if name in self.archive.NameToInfo:
                return _proven(_read(self.archive, name, _MOST_PHOTO), sha256, f"photo {sha256[:8]}")
            file = self.beside / name
            if not file.is_file():
                raise ValueError(f"photo {sha256[:8]} is missing")
            _within(file.stat().st_size, _MOST_PHOTO, name)
            return _proven(file.read_bytes(), sha256, f"photo {sha256[:8]}")

    def unpack_database(self, to: Path) -> None:
        """Writes the database's file, never all of it in memory. Raises `backup_damaged`, OSError."""
        with damage(self.file):
            told = self.archive.getinfo(DATABASE)
            _within(
                told.file_size, min(_MOST_DATABASE, max(_MOST_MANIFEST, _MOST_SHRUNK * told.compress_size)), DATABASE
            )
            with self.archive.open(told) as inside, to.open("xb") as out:
                shutil.copyfileobj(inside, out, _AT_ONCE)  # gives no more bytes than the zip says
            with to.open("rb") as whole:
                found = hashlib.file_digest(whole, "sha256").hexdigest()
            _same(found, self.manifest.database, "the database is not what it was")


def photo_name(sha256: str) -> str:
    """Where a photo lies, in a backup as in a data folder."""
    return f"photos/{sha256[:2]}/{sha256}"


def _read(archive: zipfile.ZipFile, name: str, most: int) -> bytes:
    _within(archive.getinfo(name).file_size, most, name)
    return archive.read(name)


def _within(size: int, most: int, name: str) -> None:
    if size > most:
        raise ValueError(f"{name} is far too large")


def _proven(data: bytes, sha256: str, what: str) -> bytes:
    _same(hashlib.sha256(data).hexdigest(), sha256, f"{what} is not what it was")
    return data


def _same(found: object, expected: object, otherwise: str) -> None:
    if found != expected:
        raise ValueError(otherwise)


@contextmanager
def damage(file: Path) -> Iterator[None]:
    """Whatever bad bytes bring about in here is a damaged backup."""
    try:
        yield
    except _BAD_BYTES as problem:
        reason = (str(problem) or type(problem).__name__).splitlines()[0]
        raise TarebookError("backup_damaged", file=str(file), reason=reason) from problem
    except OSError as problem:
        if problem.errno != errno.EINVAL:  # only a place that its list of contents gives wrong is asked for like that
            raise
        reason = "its list of contents is not what it was"
        raise TarebookError("backup_damaged", file=str(file), reason=reason) from problem
    except TarebookError as problem:
        if problem.code not in ("database_damaged", "database_unreachable"):
            raise
        reason = "the database is not sound"
        raise TarebookError("backup_damaged", file=str(file), reason=reason) from problem


@contextmanager
def opened(file: Path, beside: Path | None = None) -> Iterator[BackupFile]:
    """Opens a backup. Raises `file_unreadable`, `not_a_backup`, `backup_newer`, `backup_damaged`."""
    try:
        archive = zipfile.ZipFile(file)
    except OSError as problem:
        raise TarebookError("file_unreadable", file=str(file), reason=problem.strerror or str(problem)) from problem
    except zipfile.BadZipFile as problem:
        raise TarebookError("not_a_backup", file=str(file)) from problem
    with archive:
        yield BackupFile(file, archive, beside or file.parent, _manifest(file, archive))


def _manifest(file: Path, archive: zipfile.ZipFile) -> Manifest:
    if MANIFEST not in archive.NameToInfo:
        raise TarebookError("not_a_backup", file=str(file))
    with damage(file):
        said = json.loads(_read(archive, MANIFEST, _MOST_MANIFEST))
        _same(said["format"], FORMAT, "its list of contents is of something else")
        if said["version"] > VERSION:
            raise TarebookError("backup_newer", file=str(file))
        return Manifest.of(said)


def verify(backup: BackupFile, scratch: Path) -> Database:
    """Restores the backup's database into the folder `scratch`, folds it again, and looks at every photo.

    Gives the database, brought up to this program. Raises `backup_damaged`, `backup_differs`, `database_newer`.
    """
    backup.unpack_database(scratch / DATABASE)
    with damage(backup.file):
        check_shape(scratch / DATABASE)
    database = Database(f"sqlite:///{(scratch / DATABASE).absolute()}")
    try:
        with damage(backup.file):
            with database.read() as session:
                _same(session.scalar(text("PRAGMA integrity_check")), "ok", "the database is not sound")
            migrate(database)
            with database.write() as session:
                for table in Base.metadata.sorted_tables:
                    session.execute(select(table).limit(1)).all()
                _check(session, backup.manifest)
        for sha256 in sorted(backup.manifest.photos):
            backup.photo(sha256)
    except BaseException:
        database.close()
        raise
    return database


def _check(session: Session, manifest: Manifest) -> None:
    garages = {row.id: row for row in session.scalars(select(GarageRow))}
    found = {garage: walked(session, garage) for garage in garages}
    _same(found, manifest.marks, "its journal is not what it was")
    _same({garage: row.head for garage, row in garages.items()}, _numbers(manifest.marks), "its journal is cut short")
    _same(set(session.scalars(select(PhotoRow.sha256))), manifest.photos, "its photos are others")
    for garage, row in garages.items():
        comparable = row.folded_by == rules()
        changed = rebuild(session, garage).changed
        if comparable and changed:
            raise TarebookError("backup_differs", changed=changed)


def _numbers(marks: Marks) -> dict[str, int]:
    return {garage: number for garage, (number, _mark) in marks.items()}
