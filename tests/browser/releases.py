"""Two releases of the app, really built, and a server whose app can be replaced under its open pages."""

import shutil
import subprocess
from pathlib import Path

from build_app import need_node

from tests.browser.serving import Server
from tests.machine import ROOT

COPIED = ("src", "public", "index.html", "package.json", "vite.config.ts", "service_worker_plugin.ts")
VITE = ROOT / "webapp" / "node_modules" / "vite" / "bin" / "vite.js"


def build_release(folder: Path, number: str) -> Path:
    """The app built with `data-release` on its root element; every release has other bytes under other names."""
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
    command = ["node", str(VITE), "build", "--outDir", "built", "--logLevel", "error"]
    subprocess.run(command, cwd=webapp, env=need_node().env, check=True, timeout=120)
    return webapp / "built"


class ReleasedServer(Server):
    """A server that serves the app from a folder of its own."""

    @property
    def app(self) -> Path:
        return self.folder / "app"

    def env(self) -> dict[str, str]:
        return {**super().env(), "TAREBOOK_STATIC_APP": str(self.app)}

    def release(self, built: Path) -> None:
        """Puts another release in place of the present one; nothing of the old one is left on the server."""
        shutil.rmtree(self.app, ignore_errors=True)
        shutil.copytree(built, self.app)
