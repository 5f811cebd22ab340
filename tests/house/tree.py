"""What git tracks here, for the checks of this folder."""

import functools
import subprocess
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
CODE = {".py", ".ts", ".tsx", ".css", ".html", ".sh"}
PICTURES = {".png", ".heic", ".avif", ".jpg", ".jpeg", ".webp", ".ico"}


@functools.cache
def tracked() -> list[Path]:
    """Every tracked file that is still there, as paths relative to the root."""
    told = subprocess.run(["git", "ls-files", "-z"], cwd=ROOT, capture_output=True, text=True, check=True).stdout
    return [Path(name) for name in told.split("\0") if name and (ROOT / name).is_file()]


def texts() -> list[tuple[Path, str]]:
    """Every tracked file that is text, with its text."""
    return [(path, (ROOT / path).read_text(encoding="utf-8")) for path in tracked() if path.suffix not in PICTURES]


def code() -> list[tuple[Path, str]]:
    """Every tracked file that people wrote as code; what a program generates is left out."""
    return [(path, text) for path, text in texts() if path.suffix in CODE and "generated" not in path.parts]
