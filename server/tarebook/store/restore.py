"""A garage brought back from a backup: proven first, put in place by one rename, and announced by a new epoch.

Phones that meet the new epoch send again everything they hold, so what was written after the backup comes back. What
the folder knows of devices, of its own address and of its receipts is newer than the backup and stays; so do the
certificates, which are in no backup. Of all others a person says who may still come in, as a backup cannot know who was
taken off since. The database that was there is put aside, never deleted.
"""

import os
import shutil
import tempfile
from collections.abc import Callable, Collection, Iterator
from contextlib import closing, contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from sqlalchemy import delete, insert, select, update
from sqlalchemy.exc import SQLAlchemyError
from sqlalchemy.orm import Session

from tarebook.errors import TarebookError
from tarebook.settings import Settings
from tarebook.store import durable, garages, photo_copies
from tarebook.store.backup_file import DATABASE, BackupFile, Manifest, opened, photo_name, verify
from tarebook.store.database import Database, settings_database
from tarebook.store.files import fsync
from tarebook.store.lock import hold
from tarebook.store.migrate import make_folder, migrate
from tarebook.store.models import Base, DeviceRow, GarageRow, SettingRow, utc_now
from tarebook.store.photos import disk_troubles
from tarebook.store.snapshot import copy_rows, snapshot

_BESIDE = ("", "-wal", "-shm", "-journal")  # what SQLite may leave beside a database's file
_NEWER = (DeviceRow, SettingRow, GarageRow)
Rows = list[dict[str, Any]]
_Into = Callable[[Settings, Database, Path], Path | None]


@dataclass(frozen=True)
class Phone:
    """A device of the garage to come. `off`: when it was taken off since the backup was made, for all this computer
    knows; it stays off then."""

    garage: str
    id: str
    name: str
    paired_at: str
    last_seen: str
    off: str | None


Choose = Callable[[list[Phone]], Collection[Phone]]
"""Gives those of the phones that may still come in."""


def everyone(phones: list[Phone]) -> Collection[Phone]:
    return phones


@dataclass(frozen=True)
class Restored:
    """`aside`: the folder of the database that was there before; None when there was none."""

    made_at: str
    entries: int
    photos: int
    aside: Path | None


def restore(settings: Settings, file: Path, choose: Choose = everyone) -> Restored:
    """Puts the backup in the place of the garage the settings name. `choose` is asked once the backup is proven.

    Raises what `choose` raises, `folder_in_use` while a server holds the folder, `restore_not_empty` for a PostgreSQL
    database with a garage in it, `disk_full`, and what `opened` and `verify` have to say of the file; then nothing was
    changed.
    """
    make_folder(settings.data)
    with hold(settings.data), disk_troubles(), _scratch(settings.data) as scratch, opened(file) as backup:
        with closing(verify(backup, scratch)) as copy:
            _set_right(copy, backup.manifest, _newer_rows(settings))
            _let_in(copy, backup.manifest.made_at, choose)
            _place_photos(settings, backup)
            into: _Into = _into_server if settings.database_url else _into_folder
            aside = into(settings, copy, scratch)
        shutil.rmtree(settings.photos / "uploads", ignore_errors=True)  # halves whose beginnings nobody knows now
        entries = sum(number for number, _mark in backup.manifest.marks.values())
        return Restored(backup.manifest.made_at, entries, len(backup.manifest.photos), aside)


@contextmanager
def _scratch(folder: Path) -> Iterator[Path]:
    with tempfile.TemporaryDirectory(prefix=".restoring-", dir=folder, ignore_cleanup_errors=True) as name:
        yield Path(name)


def _newer_rows(settings: Settings) -> dict[type[Base], Rows]:
    """What the database that is there knows of devices and of the server; nothing when it cannot be read."""
    try:
        with closing(settings_database(settings)) as database:
            return {table: _rows(database, table) for table in _NEWER}
    except TarebookError:
        return {}


def _rows(database: Database, table: type[Base]) -> Rows:
    try:
        with database.read() as session:
            return [dict(row) for row in session.execute(select(*table.__table__.columns)).mappings()]
    except (SQLAlchemyError, TarebookError):
        return []  # damaged, or from before there was such a table


def _set_right(copy: Database, manifest: Manifest, newer: dict[type[Base], Rows]) -> None:
    with copy.write() as session:
        for row in newer.pop(GarageRow, []):
            key = update(GarageRow).where(GarageRow.id == row["id"]).values(receipt_key=row["receipt_key"])
            session.execute(key)  # a backup older than receipts has just been given another
        for table, rows in newer.items():
            for row in rows:
                if row.get("garage", "") in {"", *manifest.marks}:
                    _put(session, table, row)
        for garage in manifest.marks:
            garages.new_epoch(session, garage)
        durable.cover(session, manifest.marks, manifest.photos)


def _put(session: Session, table: type[Base], row: dict[str, Any]) -> None:
    key = [column == row[column.name] for column in table.__table__.primary_key]
    session.execute(delete(table).where(*key))
    session.execute(insert(table), [row])


def _let_in(copy: Database, made_at: str, choose: Choose) -> None:
    """Takes off whoever was not chosen."""
    with copy.read() as session:
        rows = session.scalars(select(DeviceRow).order_by(DeviceRow.name, DeviceRow.id)).all()
        phones = [
            Phone(row.garage, row.id, row.name, row.paired_at, row.last_seen, row.revoked_at)
            for row in rows
            if row.revoked_at is None or row.revoked_at > made_at
        ]
    if all(phone.off for phone in phones):
        return
    chosen = {(phone.garage, phone.id) for phone in choose(phones)}
    with copy.write() as session:
        for phone in phones:
            if not phone.off and (phone.garage, phone.id) not in chosen:
                here = DeviceRow.garage == phone.garage, DeviceRow.id == phone.id
                session.execute(update(DeviceRow).where(*here).values(revoked_at=utc_now()))


def _place_photos(settings: Settings, backup: BackupFile) -> None:
    for sha256 in backup.manifest.photos:
        file = settings.data / photo_name(sha256)
        if photo_copies.whole(file, sha256) is None:
            photo_copies.place(file, backup.photo(sha256))


def _into_server(settings: Settings, copy: Database, _scratch: Path) -> None:
    with closing(Database(settings.database)) as server:
        migrate(server)
        with copy.read() as source, server.write() as target:
            if garages.first(target) is not None:
                raise TarebookError("restore_not_empty")
            target.execute(delete(SettingRow))  # they are in the copy, as newer than the backup's
            copy_rows(source.connection(), target.connection())


def _into_folder(settings: Settings, copy: Database, scratch: Path) -> Path | None:
    """Renames a fresh database into place, so that at no moment there is none."""
    fresh = scratch / "fresh.sqlite3"
    with snapshot(copy, fresh):
        pass
    fsync(fresh)
    aside = _put_aside(settings.data)
    for ending in _BESIDE[1:]:
        (settings.data / f"{DATABASE}{ending}").unlink(missing_ok=True)
    os.replace(fresh, settings.data / DATABASE)
    fsync(settings.data)
    return aside


def _put_aside(data: Path) -> Path | None:
    there = [file for ending in _BESIDE if (file := data / f"{DATABASE}{ending}").exists()]
    if not there:
        return None
    aside = data / "replaced" / datetime.now(UTC).strftime("%Y%m%d-%H%M%S")
    aside.parent.mkdir(mode=0o700, exist_ok=True)  # `parents` would make it as the system likes
    aside.mkdir(mode=0o700, parents=True, exist_ok=True)
    for file in there:
        shutil.copy2(file, aside)
        fsync(aside / file.name)
    return aside
