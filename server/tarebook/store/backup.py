"""Backups: made while others go on writing, and called one only after it was restored elsewhere and folded again.

A backup is put together in a passing folder beside its name and renamed when it is proven, so a disk that fills or a
power cut leaves the older ones as they were. Then `garage.durable` says how far it reaches, and phones hear of it.
"""

import hashlib
import os
import shutil
import tempfile
import zipfile
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from sqlalchemy import delete, select

from tarebook.errors import TarebookError
from tarebook.settings import Settings
from tarebook.store import durable, house, photo_copies
from tarebook.store.backup_file import DATABASE, MANIFEST, Manifest, Marks, opened, photo_name, verify
from tarebook.store.database import Database
from tarebook.store.files import disk_trouble, fsync, locked
from tarebook.store.journal_rows import check_marks, mark_at
from tarebook.store.kept import backups_in, name_at, staying
from tarebook.store.lock import hold
from tarebook.store.log import note
from tarebook.store.migrate import make_folder
from tarebook.store.models import GarageRow, PhotoRow, utc_now
from tarebook.store.snapshot import snapshot
from tarebook.version import __version__

_PASSING = ".tarebook-backup-"
State = tuple[Marks, frozenset[str]]
"""How far each journal goes, and the photos it has: equal states need no second backup."""


@dataclass(frozen=True)
class Made:
    """A backup that was made: the file, and what it says of itself."""

    file: Path
    manifest: Manifest


def back_up_to(settings: Settings, database: Database, file: Path) -> Made:
    """A backup in one file, with everything inside.

    Raises `backup_no_room`, `file_unwritable`, `backup_differs`, and what the database has to say.
    """
    return _make(settings, database, file, None)


def back_up_daily(settings: Settings, database: Database, now: datetime) -> Made:
    """A backup in the folder of the kept ones, which share their photos; then those past their age go."""
    folder = settings.backups
    make_folder(folder)
    if shutil.disk_usage(folder).free < settings.reserve_bytes:
        raise TarebookError("backup_no_room", folder=str(folder))
    with locked(folder / "making.lock"):
        made = _make(settings, database, folder / name_at(now), folder)
        _let_go(folder, made.file, now)
    return made


def is_due(settings: Settings, database: Database, now: datetime) -> bool:
    """Whether today has no backup yet, and something has changed since those there are."""
    kept = backups_in(settings.backups)
    if now.date() in {moment.date() for moment in kept.values()}:
        return False
    state = contents(database)
    return any(number for number, _mark in state[0].values()) and state not in [
        state_of(file, settings.data) for file in kept
    ]


def contents(database: Database) -> State:
    """What the garages have now."""
    with database.read() as session:
        heads = {row.id: row.head for row in session.scalars(select(GarageRow))}
        marks = {garage: (head, mark_at(session, garage, head) or "") for garage, head in heads.items()}
        return marks, frozenset(session.scalars(select(PhotoRow.sha256)))


def state_of(file: Path, live: Path) -> State | None:
    """What a backup has; a photo that could not go in counts until it is in the data folder `live` again."""
    try:
        with opened(file) as backup:
            said = backup.manifest
            missing = {sha256 for sha256 in said.left_out if not (live / photo_name(sha256)).is_file()}
            return said.marks, said.photos | missing
    except TarebookError:
        return None


def _make(settings: Settings, database: Database, file: Path, pool: Path | None) -> Made:
    database.check_pages()
    with troubles(file), _blaming(database), passing_folder(file.parent) as passing:
        whole = passing / "whole.zip"
        _put_together(settings, database, whole, pool)
        with opened(whole, pool) as backup:
            manifest = backup.manifest
            (passing / "elsewhere").mkdir()
            verify(backup, passing / "elsewhere").close()
        fsync(whole)
        os.replace(whole, file)
        fsync(file.parent)
    with database.write() as session:
        durable.cover(session, manifest.marks, manifest.photos)
        house.keep_proven(session, manifest.made_at)
    note(
        settings.data,
        "backup",
        entries=sum(number for number, _mark in manifest.marks.values()),
        photos=len(manifest.photos),
        left_out=len(manifest.left_out),
    )
    return Made(file, manifest)


def _put_together(settings: Settings, database: Database, whole: Path, pool: Path | None) -> None:
    plain = whole.parent / DATABASE
    handle = os.open(whole, os.O_RDWR | os.O_CREAT | os.O_EXCL, 0o600)
    with os.fdopen(handle, "w+b") as out, zipfile.ZipFile(out, "w") as archive:
        put = photo_copies.into_zip(archive) if pool is None else photo_copies.into_pool(pool)
        with snapshot(database, plain) as copy:
            marks, photos = contents(copy)
            missing = frozenset(name for name in photos if not photo_copies.take(settings.data, pool, name, put))
            _forget_photos(copy, missing)
        with plain.open("rb") as file:
            hashed = hashlib.file_digest(file, "sha256").hexdigest()
        manifest = Manifest(utc_now(), __version__, hashed, marks, photos - missing, missing)
        with plain.open("rb") as file, archive.open(_named(DATABASE), "w", force_zip64=True) as inside:
            shutil.copyfileobj(file, inside, 1 << 20)
        archive.writestr(_named(MANIFEST), manifest.to_json())


def _named(name: str) -> zipfile.ZipInfo:
    """It says no moment: a clock before 1980 could not be written."""
    told = zipfile.ZipInfo(name)
    told.compress_type = zipfile.ZIP_DEFLATED
    return told


def _forget_photos(copy: Database, missing: frozenset[str]) -> None:
    """A restored garage asks the phones for what it does not know to have."""
    with copy.write() as session:
        for sha256 in missing:
            session.execute(delete(PhotoRow).where(PhotoRow.sha256 == sha256))


def _let_go(folder: Path, made: Path, now: datetime) -> None:
    kept = backups_in(folder)
    these_stay = staying(kept.values(), now)
    for file, moment in kept.items():
        if moment not in these_stay and file != made:
            file.unlink()
    states = [state_of(file, folder) for file in backups_in(folder)]
    if None in states:
        return  # what an unreadable one needs is not known
    needed = {sha256 for state in states if state for sha256 in state[1]}
    for photo in (folder / "photos").glob("??/*"):
        if photo.name not in needed:
            photo.unlink()


@contextmanager
def passing_folder(parent: Path) -> Iterator[Path]:
    """A folder for the time of making, held meanwhile; those that a killed program no longer holds are cleared away."""
    for old in parent.glob(f"{_PASSING}*"):
        with suppress(TarebookError, OSError), hold(old):
            shutil.rmtree(old, ignore_errors=True)
    passing = tempfile.TemporaryDirectory(prefix=_PASSING, dir=parent, ignore_cleanup_errors=True)
    with passing as folder, hold(Path(folder)):
        yield Path(folder)


@contextmanager
def _blaming(database: Database) -> Iterator[None]:
    """A copy that does not prove whole may be so because what it was made from is not."""
    try:
        yield
    except TarebookError as problem:
        if problem.code in ("backup_damaged", "database_damaged"):
            with database.read() as session:
                check_marks(session, database.name)
        raise


@contextmanager
def troubles(file: Path) -> Iterator[None]:
    """Turns a full disk, or one that cannot be written, into a sentence about the backup."""
    try:
        yield
    except OSError as problem:
        if disk_trouble(problem).code == "disk_full":
            raise TarebookError("backup_no_room", folder=str(file.parent)) from problem
        raise TarebookError("file_unwritable", file=str(file), reason=problem.strerror or str(problem)) from problem
    except TarebookError as problem:
        if problem.code != "disk_full":
            raise
        raise TarebookError("backup_no_room", folder=str(file.parent)) from problem
