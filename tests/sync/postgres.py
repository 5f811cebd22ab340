"""A PostgreSQL server of the tests' own: a passing folder, a socket in it, no port.

PostgreSQL will not run as root, so a root user's tests run it as another user. It is installed by apt when it is
missing and we may; otherwise the tests that need it fail and say what to do.
"""

from __future__ import annotations

import os
import pwd
import shutil
import signal
import subprocess
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

MISSING = "These tests need PostgreSQL (on Debian or Ubuntu: sudo apt-get install postgresql); then run them again."
FAST = "-c fsync=off -c full_page_writes=off -c synchronous_commit=off"  # where who sees what, and when, is tested
DURABLE = ""  # as PostgreSQL is by itself: where it is killed


def programs() -> Path:
    """The folder of initdb and pg_ctl; installs Debian's when it is missing and we may."""
    if not _found() and shutil.which("apt-get") and os.geteuid() == 0:
        env = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
        for step in (["update"], ["install", "--no-install-recommends", "postgresql"]):
            subprocess.run(["apt-get", "-y", "-qq", *step], check=False, stdout=subprocess.DEVNULL, env=env)
    found = _found()
    if found is None:
        raise RuntimeError(MISSING)
    return found


def _found() -> Path | None:
    on_path = shutil.which("initdb")
    if on_path:
        return Path(on_path).resolve().parent
    return max(Path("/usr/lib/postgresql").glob("*/bin"), default=None, key=lambda folder: float(folder.parent.name))


def _someone() -> dict[str, Any]:
    """Who runs the server: ourselves, or an ordinary user when we are root."""
    if os.geteuid() != 0:
        return {}
    names = {entry.pw_name for entry in pwd.getpwall()}
    account = pwd.getpwnam("postgres" if "postgres" in names else "nobody")
    return {"user": account.pw_uid, "group": account.pw_gid, "extra_groups": []}


_ADDRESS = "postgresql+psycopg://tarebook@/postgres?host="


@contextmanager
def running(options: str = FAST) -> Iterator[str]:
    """The SQLAlchemy address of a fresh, empty database; gone afterwards."""
    someone = _someone()
    folder = Path(tempfile.mkdtemp(prefix="pg-"))
    if someone:
        os.chown(folder, someone["user"], someone["group"])
    try:
        _run(folder, "initdb", "-U", "tarebook", "-A", "trust", "-E", "UTF8", "--no-sync")
        _start(folder, options)
        try:
            yield f"{_ADDRESS}{folder}"
        finally:
            _run(folder, "pg_ctl", "-w", "-m", "immediate", "stop")
    finally:
        shutil.rmtree(folder, ignore_errors=True)


def kill_and_start(address: str) -> None:
    """SIGKILL to all processes of a durable server at once; it is there again, from its log, when this returns."""
    folder = Path(address.removeprefix(_ADDRESS))
    first = int((folder / "data" / "postmaster.pid").read_text().split()[0])
    children = Path(f"/proc/{first}/task/{first}/children").read_text().split()
    everyone = [first, *map(int, children)]
    for process in everyone:
        os.kill(process, signal.SIGKILL)
    while any(map(_is_there, everyone)):
        time.sleep(0.01)
    for left in (folder / "data" / "postmaster.pid", *folder.glob(".s.PGSQL.*")):
        left.unlink()  # its number may be a dead process's that nobody has asked after yet
    _start(folder, DURABLE)


def _is_there(process: int) -> bool:
    try:
        return Path(f"/proc/{process}/cmdline").read_bytes() != b""  # empty: dead, and not asked after
    except OSError:
        return False


def _start(folder: Path, options: str) -> None:
    said = f"-k {folder} -c listen_addresses='' {options}"
    _run(folder, "pg_ctl", "-w", "-l", str(folder / "log"), "-o", said, "start")


def _run(folder: Path, program: str, *arguments: str) -> None:
    command = [str(programs() / program), "-D", str(folder / "data"), *arguments]
    subprocess.run(command, check=True, cwd=folder, stdout=subprocess.DEVNULL, env={"LC_ALL": "C"}, **_someone())
