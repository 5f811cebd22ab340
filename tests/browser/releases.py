"""Two releases of the app, really built, and a server whose app can be replaced under its open pages."""

import shutil
import subprocess
import sys
from pathlib import Path

from build_app import need_node

from tests.browser.serving import Server
from tests.machine import ROOT

COPIED = ("src", "public", "index.html", "package.json", "vite.config.ts", "service_worker_plugin.ts")
VITE = ROOT / "webapp" / "node_modules" / "vite" / "bin" / "vite.js"


def build_release(folder: Path, number: str, protocol: int = 1) -> Path:
    """The app built with `data-release` on its root element; every release has other bytes under other names.

    `protocol`: the version of the wire that it speaks.
    """
    webapp = folder / "webapp"
    webapp.mkdir(parents=True)
    for name in COPIED:
        source = ROOT / "webapp" / name
        if source.is_dir():
            shutil.copytree(source, webapp / name)
        else:
            shutil.copy(source, webapp / name)
    for config in (ROOT / "webapp").glob("tsconfig*.json"):
        shutil.copy(config, webapp)
    (webapp / "node_modules").symlink_to(ROOT / "webapp" / "node_modules")
    with (webapp / "src" / "route.ts").open("a") as module:  # a module that every screen's file leans on
        module.write(f'\ndocument.documentElement.dataset.release = "{number}";\n')
    post = webapp / "src" / "sync" / "post.ts"
    post.write_text(replaced(post.read_text(), "PROTOCOL = 1;", f"PROTOCOL = {protocol};"))
    command = ["node", str(VITE), "build", "--outDir", "built", "--logLevel", "error"]
    subprocess.run(command, cwd=webapp, env=need_node().env, check=True, timeout=120)
    return webapp / "built"


def replaced(text: str, old: str, new: str) -> str:
    """The text with one piece of it replaced, which has to be there."""
    assert text.count(old) == 1, old
    return text.replace(old, new)


class ReleasedServer(Server):
    """A server that serves the app from a folder of its own, and may speak another version of the wire."""

    protocol = 1

    def command(self, *words: str) -> list[str]:
        patch = f"from tarebook.api import sync, system; sync.PROTO = system.PROTO = {self.protocol}"
        return [
            sys.executable,
            "-c",
            f"{patch}; from tarebook.cli import main; raise SystemExit(main({list(words)!r}))",
        ]

    @property
    def app(self) -> Path:
        return self.folder / "app"

    def env(self) -> dict[str, str]:
        return {**super().env(), "TAREBOOK_STATIC_APP": str(self.app)}

    def release(self, built: Path) -> None:
        """Puts another release in place of the present one; nothing of the old one is left on the server."""
        shutil.rmtree(self.app, ignore_errors=True)
        shutil.copytree(built, self.app)
