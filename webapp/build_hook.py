"""Builds the web app when the Python package is built, so that `pip install .` is all anyone needs.

The result goes to server/tarebook/static_app with the hash of its sources in `.built-from`; when that hash is
unchanged (a second install, or a source distribution that carries the built files) npm is not even looked for.
Without a usable Node on PATH pip is asked to bring one into its own build environment.
"""

import hashlib
import sys
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

sys.path.insert(0, str(Path(__file__).parent))
from find_node import NODE_WHEEL, find_node, node_on_path

NOT_SOURCES = {"node_modules", "__pycache__"}


def source_hash(webapp: Path) -> str:
    """SHA-256 over the names and bytes of everything the built app is made from."""
    sources = sorted(p for p in webapp.rglob("*") if p.is_file() and not NOT_SOURCES & set(p.relative_to(webapp).parts))
    total = hashlib.sha256()
    for path in sources:
        total.update(path.relative_to(webapp).as_posix().encode() + b"\0")
        total.update(hashlib.sha256(path.read_bytes()).digest())
    return total.hexdigest()


class WebAppHook(BuildHookInterface):
    """hatchling calls `dependencies` before and `initialize` inside the build."""

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.webapp = Path(self.root) / "webapp"
        self.built = Path(self.root) / "server" / "tarebook" / "static_app"

    def is_current(self) -> bool:
        """True when the built files come from exactly these sources."""
        note = self.built / ".built-from"
        return note.is_file() and note.read_text() == source_hash(self.webapp)

    def packages_are_installed(self) -> bool:
        """True when npm last wrote node_modules from this lock: a developer's test tools stay where they are."""
        lock, installed = self.webapp / "package-lock.json", self.webapp / "node_modules" / ".package-lock.json"
        return installed.is_file() and installed.stat().st_mtime >= lock.stat().st_mtime

    def dependencies(self) -> list[str]:
        """What pip must bring for this build: a Node, when one is needed and none is here."""
        return [] if self.is_current() or node_on_path() else [NODE_WHEEL]

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        """Build the app unless it is already built from these sources."""
        if self.is_current():
            return
        node = find_node()
        if node is None:
            raise SystemExit(f"The web app needs Node 20.19 or newer, or the Python package {NODE_WHEEL}.")
        before = source_hash(self.webapp)
        if not self.packages_are_installed():
            node.run(["ci", "--omit=dev"], cwd=self.webapp)
        node.run(["run", "build"], cwd=self.webapp)
        (self.built / ".built-from").write_text(before)
