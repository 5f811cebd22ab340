"""A hostile proxy between the phone's own code and a real server: in the end all is home, every photo by its hash.

It cuts requests and answers short, empties them, turns bits, sends twice, delays, and answers with other pages. The
phone runs in Node on a store of its own (`phone_run.ts`); it saves and dies meanwhile. Then the proxy is left out.
"""

from __future__ import annotations

import base64
import hashlib
import json
import subprocess
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from http.client import HTTPConnection
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from random import Random
from typing import Any

from build_app import need_node

from tarebook.store.rebuild import rebuild
from tests.browser.serving import free_port
from tests.cli.process import serving
from tests.home import Device, Home
from tests.machine import ROOT
from tests.photos import picture

PROGRAM = """
import { runnerImport } from "vite";
const alias = {
  dexie: import.meta.resolve("dexie/dist/modern/dexie.mjs"),
  "fake-indexeddb": import.meta.resolve("fake-indexeddb"),
};
const settings = { configFile: false, logLevel: "error", resolve: { alias } };
const { module: { run } } = await runnerImport(process.argv[1], settings);
process.stdout.write(JSON.stringify(await run(JSON.parse(process.argv[2]))) + "\\n", () => process.exit(0));
"""
FAULTS = (
    "dropped", "lost", "half", "empty", "page", "413", "500", "twice", "slow", "cut", "turned going", "turned coming",
    "zeros",
)  # fmt: skip
MOST_SECONDS = 240


class Proxy(BaseHTTPRequestHandler):
    """One connection; what happens to each exchange is dealt by `deal`."""

    protocol_version = "HTTP/1.1"
    deal: Any
    port: int

    def log_message(self, *_words: Any) -> None:
        """Says nothing."""

    def handle_any(self) -> None:
        body = self.rfile.read(int(self.headers.get("Content-Length") or 0))
        fault = self.deal.fault()
        self.close_connection = True
        match fault:
            case "dropped":
                return
            case "slow":
                time.sleep(0.3)
            case "cut":
                body = body[: len(body) // 2]
            case "turned going":
                body = self.deal.turned(body)
            case "twice":
                self.forward(body)
        if fault in ("page", "413", "500"):
            page = b"<html>Please log in to this network</html>"
            return self.give(200 if fault == "page" else int(fault), {}, page, len(page))
        status, headers, answer = self.forward(body)
        whole = len(answer)
        match fault:
            case "lost":
                return
            case "half":
                answer = answer[: whole // 2]
            case "empty":
                answer, whole = b"", 0
            case "zeros":
                answer = bytes(whole)
            case "turned coming":
                answer = self.deal.turned(answer)
        self.give(status, headers, answer, whole)

    do_GET = do_POST = do_HEAD = do_PATCH = handle_any  # noqa: N815

    def forward(self, body: bytes) -> tuple[int, dict[str, str], bytes]:
        server = HTTPConnection("127.0.0.1", self.port, timeout=30)
        headers = {
            name: value for name, value in self.headers.items() if name.lower() not in ("content-length", "host")
        }
        server.request(self.command, self.path, body, {**headers, "Host": f"localhost:{self.port}"})
        answer = server.getresponse()
        data = answer.read()
        server.close()
        self.deal.answered += answer.status < 300
        return answer.status, dict(answer.getheaders()), data

    def give(self, status: int, headers: dict[str, str], answer: bytes, length: int) -> None:
        self.send_response(status)
        for name in ("Content-Type", "Upload-Offset"):
            if name in headers:
                self.send_header(name, headers[name])
        if status != 204:
            self.send_header("Content-Length", str(length))
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(answer)


class Deal:
    """Faults in a seeded order; which exchange meets which is the phone's own doing."""

    def __init__(self, random: Random, kinds: tuple[str, ...]) -> None:
        self.random, self.kinds = random, kinds
        self.lock = threading.Lock()
        self.answered = 0

    def fault(self) -> str:
        with self.lock:
            return self.random.choice(self.kinds) if self.random.random() < 0.5 else "none"

    def turned(self, data: bytes) -> bytes:
        broken = bytearray(data)
        with self.lock:
            if broken:
                broken[self.random.randrange(len(broken))] ^= 1 << self.random.randrange(8)
        return bytes(broken)


@contextmanager
def between(port: int, deal: Deal) -> Iterator[str]:
    """The address of a proxy before the server at `port`."""
    handler = type("Dealt", (Proxy,), {"deal": deal, "port": port})
    with ThreadingHTTPServer(("127.0.0.1", 0), handler) as proxy:
        threading.Thread(target=proxy.serve_forever, daemon=True).start()
        yield f"http://127.0.0.1:{proxy.server_address[1]}"
        proxy.shutdown()


def phone_run(given: dict[str, Any], runner: str = "tests/fuzz/phone_run.ts") -> dict[str, Any]:
    """What the phone's own code in Node answers: `run(given)` of that module."""
    file = str(ROOT / runner)
    command = ["node", "--input-type=module", "--eval", PROGRAM, "--", file, json.dumps(given)]
    ended = subprocess.run(
        command, cwd=ROOT / "webapp", env=need_node().env, capture_output=True, timeout=MOST_SECONDS, encoding="utf-8"
    )
    assert ended.returncode == 0, ended.stderr[-1500:]
    found: dict[str, Any] = json.loads(ended.stdout.splitlines()[-1])
    return found


def all_home(phone: Device, told: dict[str, Any]) -> None:
    """Everything the phone called saved is in the journal as it was, and its photos are here, byte for byte."""
    here: set[str] = set()
    page: dict[str, Any] = {"epoch": "", "mark": "", "more": True}
    since = 0
    while page["more"]:
        page = phone.pull(page["epoch"], since, page["mark"]).json
        here |= {row["text"] for row in page["entries"]}
        since += len(page["entries"])
    assert [text for text in told["saved"] if text not in here] == []
    for name, state in told["photos"]:
        data = phone.get(f"/photos/{name}").data
        assert hashlib.sha256(data).hexdigest() == name, state
        assert state == "sent"


@contextmanager
def opened(folder: Path) -> Iterator[Callable[..., str]]:
    """A real server, and for each case a phone of its own, behind a proxy with one kind of fault or all of them."""
    home = Home(folder / "data")
    devices = iter(lambda: home.pair(), None)
    port = free_port()
    came: list[int] = []  # answers the phone of each case had that were no refusal: one may have none, by bad luck
    with serving("--port", port, "--no-browser", "--data", folder / "data"):

        def case(random: Random, kind: str = "") -> str:
            phone = next(devices)
            photos = [base64.b64encode(picture(random.randrange(10**9))).decode() for _ in range(2)]
            steps = random.choices(["save", "sync", "kill"], [4, 8, 1], k=random.choice((8, 16, 40)))
            for photo in photos:
                steps.insert(random.randrange(len(steps)), photo)
            kind = kind or random.choice((*FAULTS, "all of them"))
            deal = Deal(random, (kind,) if kind in FAULTS else FAULTS)
            given = {
                "server": f"http://127.0.0.1:{port}", "token": phone.headers["Authorization"].removeprefix("Bearer "),
                "garage": phone.garage, "device": phone.id, "steps": steps,
            }  # fmt: skip
            with between(port, deal) as address:
                told = phone_run({**given, "proxy": address})
            came.append(deal.answered)
            all_home(phone, told)
            assert len(told["photos"]) >= 2
            return f"home past {kind}"

        yield case
    assert sum(came) >= len(came), f"hardly anything came through the proxy: {came}"
    with home.database.write() as session:
        assert rebuild(session, home.garage).changed == 0
