"""What the tests need of this machine: a Chromium, a Node, the built app."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
sys.path.insert(0, str(ROOT / "webapp"))
from build_app import build_if_changed, install_packages, need_node  # noqa: E402
from find_node import Node  # noqa: E402

BROWSERS = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome")
ELSEWHERE = (
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
)
NO_BROWSER = (
    "The browser tests need Chromium or Chrome, and none was found. Install one (on Debian or Ubuntu: "
    "sudo apt-get install chromium), or set CHROME_PATH to one, and run this again."
)


def find_chromium() -> str | None:
    """Path of the browser to test with, or None. CHROME_PATH wins."""
    named = os.environ.get("CHROME_PATH")
    on_path = (shutil.which(name) for name in BROWSERS)
    candidates = [named, *on_path, *ELSEWHERE]
    return next((path for path in candidates if path and Path(path).is_file()), None)


def need_chromium() -> str:
    """Path of the browser, after installing Debian's when we may; `SystemExit` says what to do otherwise."""
    if not find_chromium() and shutil.which("apt-get") and os.geteuid() == 0:
        print("No Chromium here: installing Debian's.", flush=True)
        apt = ["apt-get", "-y", "-qq", "-o", "Dpkg::Use-Pty=0"]
        env = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
        for step in (["update"], ["install", "--no-install-recommends", "chromium"]):
            subprocess.run([*apt, *step], check=False, stdout=subprocess.DEVNULL, env=env)
    found = find_chromium()
    if not found:
        raise SystemExit(NO_BROWSER)
    return found


def prepare() -> Node:
    """Make everything ready that the runners use, and return the Node they run on."""
    need_chromium()
    node = need_node()
    install_packages(node, "vitest")
    build_if_changed()
    return node
