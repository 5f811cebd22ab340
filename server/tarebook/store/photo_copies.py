"""Photos proven by their hash, read or on their way into a backup: one gone bad is set right where it can be."""

import errno
import hashlib
import zipfile
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

from tarebook.store.backup_file import photo_name
from tarebook.store.files import write_whole

_NOT_ON_THE_DISK = (errno.ENOENT, errno.ENOTDIR, errno.EISDIR, errno.EIO)
Put = Callable[[str, bytes], None]
"""Keeps a photo's bytes in the backup, by hash."""


def into_zip(archive: zipfile.ZipFile) -> Put:
    """Photos inside the backup, as they are: they are compressed already."""
    return lambda sha256, data: archive.writestr(zipfile.ZipInfo(photo_name(sha256)), data)


def into_pool(pool: Path) -> Put:
    """Photos beside the backup, in the folder that all of a folder's backups share."""

    def put(sha256: str, data: bytes) -> None:
        if whole(pool / photo_name(sha256), sha256) is None:
            place(pool / photo_name(sha256), data)

    return put


def take(live: Path, pool: Path | None, sha256: str, put: Put) -> bool:
    """Puts one photo of the data folder `live` into the backup; False when it is nowhere whole."""
    data = healed(live, pool, sha256)
    if data is not None:
        put(sha256, data)
    return data is not None


def healed(live: Path, pool: Path | None, sha256: str) -> bytes | None:
    """A photo of the data folder `live`, proven; None when it is nowhere whole.

    A bad file is healed from the backups' own photos, or put aside, so that a phone that has it is asked for it.
    """
    file = live / photo_name(sha256)
    data = whole(file, sha256)
    if data is None and pool is not None:
        data = whole(pool / photo_name(sha256), sha256)
        if data is not None:
            with suppress(OSError):  # a disk that takes nothing still gives the photo out
                place(file, data)
    if data is None and file.is_file():
        with suppress(OSError):
            file.replace(damaged(file))
    return data


def damaged(file: Path) -> Path:
    """Where a photo's bad bytes lie, until it has come again."""
    return file.with_name(f"{file.name}.damaged")


def whole(file: Path, sha256: str) -> bytes | None:
    """The file's bytes when they are those of the hash. Raises OSError when only this program cannot read it now."""
    try:
        data = file.read_bytes()
    except OSError as problem:
        if problem.errno in _NOT_ON_THE_DISK:
            return None
        raise
    return data if hashlib.sha256(data).hexdigest() == sha256 else None


def place(file: Path, data: bytes) -> None:
    """Writes a file whole, and the folder for it."""
    file.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    write_whole(file, data)
