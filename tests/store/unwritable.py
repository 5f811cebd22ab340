"""Disks that take nothing: the command line run where its data folder lies on one, mounted for it alone."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

_FULL = """mount -t tmpfs -o size=6m tmpfs "$0" && cp -a "$1"/. "$0"
{ cat /dev/zero > "$0/filling"; } 2>/dev/null; true"""
_READ_ONLY = """mount --bind "$1" "$0" && mount -o remount,ro,bind "$0" """
DISKS = {"full": _FULL, "read-only": _READ_ONLY}


def tarebook_on(disk: str, data: Path, *arguments: str | Path) -> subprocess.CompletedProcess[str]:
    """Runs `tarebook` with a copy or view of the folder `data` on such a disk; the mount ends with the command."""
    there = data.with_name("there")
    there.mkdir(exist_ok=True)
    shift = 'shift; exec "$@"'
    script = f"{disk} && {shift}"
    command = [sys.executable, "-m", "tarebook", *arguments]
    return subprocess.run(
        ["unshare", "--map-root-user", "--mount", "sh", "-c", script, there, data, *command],
        capture_output=True, text=True, check=False, timeout=120, env={**os.environ, "TAREBOOK_DATA": str(there)},
    )  # fmt: skip
