"""Files that are whole or not there."""

import errno
import os
import secrets
import stat
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from tarebook.errors import TarebookError


def write_all(handle: int, data: bytes, offset: int) -> None:
    """Writes all of the data at the offset; the system may take it in several bites."""
    os.lseek(handle, offset, os.SEEK_SET)
    view = memoryview(data)
    while view:
        view = view[os.write(handle, view) :]


def write_whole(path: Path, data: bytes, mode: int = 0o600) -> None:
    """Writes a file under a passing name, brings it to the disk, and gives it its name. `mode`: before the umask."""
    passing = path.with_name(f"{path.name}.{secrets.token_hex(4)}")
    try:
        with open(passing, "xb", opener=lambda name, flags: os.open(name, flags, mode)) as file:
            file.write(data)
        fsync(passing)
        os.replace(passing, path)
    finally:
        passing.unlink(missing_ok=True)


def fsync(path: Path) -> None:
    """Brings a file, or a folder's list of names, to the disk."""
    if path.is_dir() and sys.platform == "win32":
        return  # Windows keeps a folder's list by itself
    handle = os.open(path, os.O_RDONLY if sys.platform != "win32" else os.O_RDWR)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


_OTHERS = stat.S_IRWXG | stat.S_IRWXO
_CAUSES = {errno.ENOSPC: "disk_full", errno.EDQUOT: "disk_full", errno.EROFS: "disk_read_only"}


def make_private(path: Path) -> None:
    """Takes from others what they may do with a file or folder of ours. One of somebody else's is left as it is."""
    with suppress(OSError):
        mode = stat.S_IMODE(path.stat().st_mode)
        if mode & _OTHERS:
            path.chmod(mode & ~_OTHERS)


def disk_trouble(problem: OSError) -> TarebookError:
    """The refusal that names the true cause: `disk_full`, `disk_read_only`, else `store_unwell`."""
    return TarebookError(_CAUSES.get(problem.errno or 0, "store_unwell"), reason=problem.strerror or str(problem))


def try_folder(folder: Path) -> None:
    """Writes a passing file into the folder. Raises OSError when that cannot be done."""
    with tempfile.TemporaryFile(dir=folder) as file:
        file.write(b"x")
        file.flush()
        os.fsync(file.fileno())


@contextmanager
def locked(path: Path) -> Iterator[int]:
    """A file opened for reading and writing, made when missing, that no other thread or process holds meanwhile."""
    handle = os.open(path, os.O_RDWR | os.O_CREAT, 0o600)
    try:
        if sys.platform != "win32":
            import fcntl

            fcntl.flock(handle, fcntl.LOCK_EX)
        yield handle
    finally:
        os.close(handle)
