"""One server to a data folder. The lock is the kernel's, so a killed server leaves none behind."""

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from tarebook.errors import TarebookError

NAME = "serving.lock"


@contextmanager
def hold(folder: Path) -> Iterator[None]:
    """Holds the folder while the block runs, in this process and any it forks. Raises `folder_in_use`."""
    handle = os.open(folder / NAME, os.O_RDWR | os.O_CREAT, 0o600)
    try:
        _lock(handle, folder)
        yield
    finally:
        os.close(handle)


def _lock(handle: int, folder: Path) -> None:
    try:
        if sys.platform == "win32":
            import msvcrt

            msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)
        else:
            import fcntl

            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError as problem:
        raise TarebookError("folder_in_use", folder=str(folder)) from problem
