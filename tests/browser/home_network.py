"""`tarebook serve --lan` as the phones of a test see it: its name is found, and all of it stays on this machine."""

import io
import ssl
import subprocess
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from http.server import HTTPServer, SimpleHTTPRequestHandler
from pathlib import Path

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


def trust(phone: Phone, authority: Path) -> None:
    """Install an authority on a phone, as its owner would in the settings."""
    store = phone.home / ".pki" / "nssdb"
    store.mkdir(parents=True)
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
