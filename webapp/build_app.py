"""Builds the web app into server/tarebook/static_app, when its sources have changed since the last time.

Used by the build hook and by the test command; standard library only. The built folder keeps the hash of its
sources in `.built-from`: a second install, or a source distribution that carries the built files, needs no npm.
"""

import hashlib
import shutil
from pathlib import Path

from find_node import NODE_WHEEL, Node, find_node

WEBAPP = Path(__file__).resolve().parent
BUILT = WEBAPP.parent / "server" / "tarebook" / "static_app"
NOT_SOURCES = {"node_modules", "__pycache__"}


def source_hash() -> str:
    """SHA-256 over the names and bytes of everything the built app is made from."""
    paths = (path for path in WEBAPP.rglob("*") if not NOT_SOURCES & set(path.relative_to(WEBAPP).parts))
    total = hashlib.sha256()
    for path in sorted(path for path in paths if path.is_file()):
        total.update(path.relative_to(WEBAPP).as_posix().encode() + b"\0")
        total.update(hashlib.sha256(path.read_bytes()).digest())
    return total.hexdigest()


def is_current() -> bool:
    """True when the built files come from exactly these sources."""
    note = BUILT / ".built-from"
    return note.is_file() and note.read_text() == source_hash()


def need_node() -> Node:
    """The Node to build and test with; `SystemExit` with a sentence when there is none."""
    node = find_node()
    if node is None:
        raise SystemExit(f"Node 20.19 or newer is needed, or the Python package {NODE_WHEEL}.")
    return node


def install_packages(node: Node, tool: str, *options: str) -> None:
    """`npm ci`, unless node_modules was written from this lock and holds `tool` (npm empties the folder first)."""
    installed = WEBAPP / "node_modules" / ".package-lock.json"
    lock_time = (WEBAPP / "package-lock.json").stat().st_mtime
    has_tool = (WEBAPP / "node_modules" / tool).is_dir()
    if not (has_tool and installed.is_file() and installed.stat().st_mtime >= lock_time):
        node.run(["ci", *options], cwd=WEBAPP)


def build_if_changed() -> None:
    """Build beside the old files and swap, so that a running server never serves half a build."""
    if is_current():
        return
    node, made_from, fresh = need_node(), source_hash(), BUILT.with_name("static_app.new")
    install_packages(node, "vite", "--omit=dev")
    node.run(["run", "build", "--", "--outDir", str(fresh), "--emptyOutDir"], cwd=WEBAPP)
    (fresh / ".built-from").write_text(made_from)
    shutil.rmtree(BUILT, ignore_errors=True)
    fresh.rename(BUILT)


if __name__ == "__main__":
    build_if_changed()
