"""A PostgreSQL server of the tests' own: a passing folder, a socket in it, no port.

PostgreSQL will not run as root, so a root user's tests run it as another user. It is installed by apt when it is
missing and we may; otherwise the tests that need it fail and say what to do.
"""

from __future__ import annotations

import os
import pwd
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

MISSING = "These tests need PostgreSQL (on Debian or Ubuntu: sudo apt-get install postgresql); then run them again."
FAST = "-c fsync=off -c full_page_writes=off -c synchronous_commit=off"  # what is tested is who sees what, and when


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


@contextmanager
def running() -> Iterator[str]:
    """The SQLAlchemy address of a fresh, empty database; gone afterwards."""
    bin_, someone = programs(), _someone()
    folder = Path(tempfile.mkdtemp(prefix="pg-"))
    if someone:
        os.chown(folder, someone["user"], someone["group"])
    data, log = str(folder / "data"), str(folder / "log")

    def run(*command: str) -> None:
        subprocess.run(command, check=True, cwd=folder, stdout=subprocess.DEVNULL, env={"LC_ALL": "C"}, **someone)

    try:
        run(str(bin_ / "initdb"), "-D", data, "-U", "tarebook", "-A", "trust", "-E", "UTF8", "--no-sync")
        options = f"-k {folder} -c listen_addresses='' {FAST}"
        run(str(bin_ / "pg_ctl"), "-D", data, "-w", "-l", log, "-o", options, "start")
        try:
            yield f"postgresql+psycopg://tarebook@/postgres?host={folder}"
        finally:
            run(str(bin_ / "pg_ctl"), "-D", data, "-w", "-m", "immediate", "stop")
    finally:
        shutil.rmtree(folder, ignore_errors=True)
