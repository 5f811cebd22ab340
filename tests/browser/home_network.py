"""`tarebook serve --lan` as the phones of a test see it: its name is found, and all of it stays on this machine."""

import io
import re
import ssl
import subprocess
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from http.server import HTTPServer, SimpleHTTPRequestHandler
from pathlib import Path
from typing import Self

from PIL import Image
from playwright.sync_api import Locator

from tests.browser.phone import Phone
from tests.browser.serving import Server, free_port

NAME = "tarebook.local"
# Where a home network's own look-up would find the name.
FIND_NAME = f"--host-resolver-rules=MAP {NAME} 127.0.0.1, MAP elsewhere.example 127.0.0.1"


class HomeServer(Server):
    """A server for this machine and for phones: three ports, one process tree."""

    pair_options = ("--here",)

    def __init__(self, folder: Path) -> None:
        super().__init__(folder)
        self.lan_port, self.door_port = free_port(), free_port()
        self.options = (
            "--lan", "--no-announce", "--lan-port", str(self.lan_port), "--door-port", str(self.door_port),
        )  # fmt: skip

    def env(self) -> dict[str, str]:
        return {**super().env(), "TAREBOOK_LAN_ADDRESSES": "127.0.0.1"}

    @property
    def origin(self) -> str:
        """The permanent address."""
        return f"https://{NAME}:{self.lan_port}"

    @property
    def door(self) -> str:
        """The door page, by the name."""
        return f"http://{NAME}:{self.door_port}/"

    @property
    def certificates(self) -> Path:
        return self.folder / "data" / "certificates"


class Inviting:
    """`tarebook pair` in a terminal of the home computer: its short code, the two words it asks about, and a yes."""

    def __init__(self, house: HomeServer) -> None:
        self.process = subprocess.Popen(
            house.command("pair"), env=house.env(), text=True, stdin=subprocess.PIPE, stdout=subprocess.PIPE
        )

    def __enter__(self) -> Self:
        self.code = self._said(r"or type there: (\S+)")
        return self

    def _said(self, pattern: str) -> str:
        assert self.process.stdout
        found = next((found for line in self.process.stdout if (found := re.search(pattern, line))), None)
        assert found, f"tarebook pair ended without saying {pattern}"
        return found[1]

    def words(self) -> list[str]:
        """Those the phone must show too."""
        return self._said(r"must show these two words: (.+)").split()

    def say_yes(self) -> None:
        """And wait until it has ended."""
        assert "It is in" in self.process.communicate("y\n", timeout=60)[0]

    def __exit__(self, *_: object) -> None:
        if self.process.poll() is None:
            self.process.kill()
            self.process.communicate()


def camera_before(shown: Locator, file: Path) -> tuple[str, ...]:
    """The browser's flags for a camera that looks, at a distance, at what is shown on another screen."""
    seen = Image.new("L", (640, 480), 90)
    picture = Image.open(io.BytesIO(shown.screenshot())).convert("L").resize((330, 330))
    seen.paste(picture, (170, 60))
    colourless = bytes([128]) * (320 * 240)
    # YUV4MPEG2: a line for the stream, then for each frame a word and the three planes.
    frame = b"FRAME\n" + seen.tobytes() + 2 * colourless
    file.write_bytes(b"YUV4MPEG2 W640 H480 F10:1 Ip A1:1 C420jpeg\n" + 3 * frame)
    return (
        "--use-fake-device-for-media-stream",
        "--use-fake-ui-for-media-stream",
        f"--use-file-for-fake-video-capture={file}",
    )


def install(phone: Phone, authority: Path) -> None:
    """Install an authority on a phone, as its owner would in the settings."""
    store = phone.home / ".pki" / "nssdb"
    store.mkdir(parents=True)
    trust(store, authority)


def trust(store: Path, authority: Path) -> None:
    """Make a browser's list of certificates in this folder, with an authority on it."""
    certutil(store, "-N", "--empty-password")
    certutil(store, "-A", "-t", "C,,", "-n", "the home computer", "-i", str(authority))


def certutil(store: Path, *words: str) -> None:
    subprocess.run(["certutil", "-d", f"sql:{store}", *words], check=True, capture_output=True, timeout=60)


@contextmanager
def someone_else(certificate: Path) -> Iterator[int]:
    """Another server on this machine that shows a certificate of its own; the port it listens on."""
    context = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    context.load_cert_chain(certificate)
    server = HTTPServer(("127.0.0.1", 0), Quiet)
    server.socket = context.wrap_socket(server.socket, server_side=True)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    try:
        yield server.server_port
    finally:
        server.shutdown()
        server.server_close()


class Quiet(SimpleHTTPRequestHandler):
    """Answers every page alike and says nothing of it."""

    def do_GET(self) -> None:
        self.send_response(200)
        self.end_headers()
        self.wfile.write(b"<!doctype html><title>Somebody else</title>")

    def log_message(self, *_: object) -> None:
        return
