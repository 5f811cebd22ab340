"""The other engines: a Firefox and a WebKitGTK, each with a profile of its own that outlives a kill."""

import contextlib
import json
import os
import signal
import subprocess
from pathlib import Path

from tests.browser.home_network import trust
from tests.browser.serving import free_port
from tests.browser.webdriver import HttpWire, MarionetteWire, Wire, text_of, wait_until
from tests.machine import SYSTEM_PYTHON, find_firefox, webkit_version

# Firefox asks its maker about many things; every address but this machine's own and the look-up's name leads nowhere.
FIREFOX_SETTINGS = {
    "marionette.port": 0,
    "network.proxy.type": 1,
    "network.proxy.socks": "127.0.0.1",
    "network.proxy.socks_remote_dns": True,
    "app.update.disabledForTesting": True,
    "app.normandy.enabled": False,
    "browser.shell.checkDefaultBrowser": False,
    "datareporting.policy.dataSubmissionEnabled": False,
    "dom.disable_beforeunload": True,
    "intl.accept_languages": "en-GB, en",
}


NOWHERE = 9  # the port for throwing away (RFC 863), where nobody listens


class Engine:
    """A browser of one engine. `wire` steers it while it is open."""

    name: str
    wire: Wire
    lacks: tuple[str, ...] = ()

    def __init__(self, folder: Path) -> None:
        self.profile, self.home = folder / "profile", folder / "home"
        self.profile.mkdir(parents=True)
        self.home.mkdir()
        self.process: subprocess.Popen[bytes] | None = None

    def _start(self, *command: str, **more: str) -> None:
        self.log = (self.profile.parent / "log").open("ab")
        env = {**os.environ, "HOME": str(self.home), "LANG": "en_GB.UTF-8", **more}
        self.process = subprocess.Popen(command, env=env, stdout=self.log, stderr=self.log, start_new_session=True)

    def is_at_home(self, look_up: int, certificates: Path) -> None:
        """From its next start on it asks the look-up on this port for names, and trusts the home computer."""
        raise NotImplementedError

    def sigkill(self) -> None:
        """The system kills it, all its processes at once."""
        if self.process is None:
            return
        with contextlib.suppress(ProcessLookupError):
            os.killpg(self.process.pid, signal.SIGKILL)
        self.process.wait()
        self.process = None
        self.log.close()

    def close(self) -> None:
        """At the end of a test."""
        self.sigkill()

    def open(self) -> Wire:
        """Start it, cold."""
        raise NotImplementedError

    @classmethod
    def version(cls) -> str | None:
        """Its name and version, or None where it is not installed."""
        raise NotImplementedError


class Firefox(Engine):
    """Firefox without a window."""

    name = "Firefox"
    look_up = NOWHERE

    def open(self) -> Wire:
        wanted = {**FIREFOX_SETTINGS, "network.proxy.socks_port": self.look_up}
        settings = "".join(f"user_pref({json.dumps(name)}, {json.dumps(value)});\n" for name, value in wanted.items())
        (self.profile / "user.js").write_text(settings)
        port = self.profile / "MarionetteActivePort"
        port.unlink(missing_ok=True)
        self._start(
            str(find_firefox()), "--headless", "--no-remote", "--marionette", "--profile", str(self.profile),
        )  # fmt: skip
        self.wire = MarionetteWire(int(wait_until(lambda: text_of(port), "Firefox's port")))
        return self.wire

    def is_at_home(self, look_up: int, certificates: Path) -> None:
        self.look_up = look_up
        trust(self.profile, certificates / "authority.pem")

    @classmethod
    def version(cls) -> str | None:
        program = find_firefox()
        if program is None:
            return None
        return subprocess.run([program, "--version"], text=True, capture_output=True, check=True).stdout.strip()


class WebKit(Engine):
    """WebKitGTK, the nearest relation of an iPhone's browser that runs here, on a screen nobody sees."""

    name = "WebKitGTK"
    lacks = ("trust an authority of its own choice (it knows this machine's alone: told to believe the certificate)",)
    _at_home: tuple[str, ...] = ()
    screen: subprocess.Popen[str] | None = None

    def open(self) -> Wire:
        port = free_port()
        # Its sandbox wants rights that a container seldom gives; the pages are our own.
        self._start(
            "WebKitWebDriver", f"--port={port}",
            DISPLAY=self._screen(), GDK_BACKEND="x11", WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS="1",
        )  # fmt: skip
        window = [str(Path(__file__).with_name("webkit_window.py")), str(self.profile), *self._at_home]
        options = {"binary": SYSTEM_PYTHON, "args": window}
        self.wire = HttpWire(port, {"webkitgtk:browserOptions": options})
        return self.wire

    def is_at_home(self, look_up: int, certificates: Path) -> None:
        """It knows only the authorities of the whole machine, which tests leave alone: it is told to believe the
        server's certificate itself."""
        self._at_home = (str(look_up), str(certificates / "server.pem"))

    def _screen(self) -> str:
        if self.screen is None:
            command = ("Xvfb", "-displayfd", "1", "-screen", "0", "1280x1024x24", "-nolisten", "tcp")
            self.screen = subprocess.Popen(command, text=True, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL)
            assert self.screen.stdout
            self.display = ":" + self.screen.stdout.readline().strip()
        return self.display

    def close(self) -> None:
        """Its screen goes with it."""
        self.sigkill()
        if self.screen is not None:
            self.screen.kill()
            self.screen.wait()

    @classmethod
    def version(cls) -> str | None:
        version = webkit_version()
        return version and f"{cls.name} {version}"


KNOWN: tuple[type[Engine], ...] = (Firefox, WebKit)
VERSIONS = {engine.name: engine.version() for engine in KNOWN}
ENGINES = [engine for engine in KNOWN if VERSIONS[engine.name]]
# What the tests found that an engine does not have, by the engine's name.
lacking: dict[str, list[str]] = {}


def said_of_engines() -> list[str]:
    """One line for each engine, for the end of the report."""
    lines = []
    for name, version in VERSIONS.items():
        if version is None:
            lines.append(f"Engine {name}: NOT TRIED, it is not on this machine.")
        elif name in lacking:
            lines.append(f"Engine {version} cannot: {', '.join(lacking[name]) or 'nothing that the app asks for'}.")
    return lines
