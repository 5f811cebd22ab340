"""What the tests need of this machine: browsers of three engines, a proxy, a Node, the built app."""

import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
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
FIREFOXES = ("firefox-esr", "firefox", "/Applications/Firefox.app/Contents/MacOS/firefox")
NO_BROWSER = (
    "The browser tests need Chromium or Chrome, and none was found. Install one (on Debian or Ubuntu: "
    "sudo apt-get install chromium), or set CHROME_PATH to one, and run this again."
)
# Debian's packages. WebKit's window is opened by the system's own Python, which has the bindings.
CHROMIUM = ("chromium",)
FIREFOX = ("firefox-esr",)
WEBKIT = ("webkit2gtk-driver", "xvfb", "gir1.2-webkit2-4.1", "gir1.2-gtk-3.0", "python3-gi")
TRUST = ("libnss3-tools",)
OPENSSL = ("openssl",)
NGINX = ("nginx-light",)
MEMORY = Path("/dev/shm")
ROOM = 2 << 30  # bytes; a whole run writes about a quarter of it
SYSTEM_PYTHON = "/usr/bin/python3"
WEBKIT_VERSION = (
    "import gi; gi.require_version('WebKit2', '4.1'); from gi.repository import WebKit2 as w;"
    "print(w.get_major_version(), w.get_minor_version(), w.get_micro_version(), sep='.')"
)


def find_chromium() -> str | None:
    """Path of the browser to test with, or None. CHROME_PATH wins."""
    named = os.environ.get("CHROME_PATH")
    on_path = (shutil.which(name) for name in BROWSERS)
    candidates = [named, *on_path, *ELSEWHERE]
    return next((path for path in candidates if path and Path(path).is_file()), None)


def find_firefox() -> str | None:
    """Path of a Firefox, or None."""
    return next((path for path in map(shutil.which, FIREFOXES) if path), None)


def webkit_version() -> str | None:
    """Which WebKitGTK there is, with everything that steering it takes, or None."""
    if not all(map(shutil.which, ("WebKitWebDriver", "Xvfb", SYSTEM_PYTHON))):
        return None
    asked = subprocess.run([SYSTEM_PYTHON, "-c", WEBKIT_VERSION], text=True, capture_output=True, check=False)
    return asked.stdout.strip() or None


def need_chromium() -> str:
    """Path of the browser, after installing Debian's when we may; `SystemExit` says what to do otherwise."""
    if not find_chromium():
        install(*CHROMIUM)
    found = find_chromium()
    if not found:
        raise SystemExit(NO_BROWSER)
    return found


def want_other_engines() -> None:
    """Installs what is missing of the other engines, a proxy, and what makes Chromium trust an authority, if we may."""
    missing = {
        FIREFOX: find_firefox() is None,
        WEBKIT: webkit_version() is None,
        TRUST: shutil.which("certutil") is None,
        OPENSSL: shutil.which("openssl") is None,
        NGINX: shutil.which("nginx") is None,
    }
    install(*(package for packages, is_missing in missing.items() if is_missing for package in packages))


def install(*packages: str) -> None:
    """Installs Debian packages where this process may do so; elsewhere does nothing."""
    if not packages or not shutil.which("apt-get") or os.geteuid() != 0:
        return
    print(f"Installing for the tests: {' '.join(packages)}.", flush=True)
    apt = ["apt-get", "-y", "-qq", "-o", "Dpkg::Use-Pty=0", "-o", "DPkg::Lock::Timeout=600"]
    env = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    for step in (["update"], ["install", "--no-install-recommends", *packages]):
        subprocess.run([*apt, *step], check=False, stdout=subprocess.DEVNULL, env=env)


@contextmanager
def passing_folder() -> Iterator[str]:
    """A folder for what tests write for a moment: in memory where there is room, else where the system has it."""
    has_room = MEMORY.is_dir() and os.access(MEMORY, os.W_OK) and shutil.disk_usage(MEMORY).free > ROOM
    with tempfile.TemporaryDirectory(prefix="tarebook-", dir=MEMORY if has_room else None) as folder:
        Path(folder).chmod(0o711)  # PostgreSQL, which will not run as root, has a folder of its own in it
        yield folder


def prepare() -> Node:
    """Make everything ready that the runners use, and return the Node they run on."""
    need_chromium()
    want_other_engines()
    node = need_node()
    install_packages(node, "vitest")
    build_if_changed()
    return node
