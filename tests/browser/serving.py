"""A real `tarebook serve` in a scratch folder, that can be killed, frozen and started again."""

import io
import json
import os
import re
import signal
import socket
import subprocess
import sys
import threading
import time
import urllib.request
from contextlib import redirect_stderr, redirect_stdout
from pathlib import Path
from typing import Any, Self
from unittest.mock import patch

from tarebook.cli import main

START_WITHIN = 60  # seconds; a slow machine starts gunicorn and migrates in a few
PAIRING_LINK = re.compile(r"(http://\S*pair\S*)")


def free_port() -> int:
    """A port nobody listens on now; the server keeps it over restarts, because another port is another origin."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


class Server:
    """`tarebook serve` on one folder and one port."""

    pair_options: tuple[str, ...] = ()

    def __init__(self, folder: Path, *options: str) -> None:
        self.folder, self.options, self.port = folder, options, free_port()
        self.lines: list[str] = []
        self.has_printed_link = False
        self.process: subprocess.Popen[str] | None = None

    @property
    def address(self) -> str:
        """The origin, by the name a person would use."""
        return f"http://localhost:{self.port}"

    def env(self) -> dict[str, str]:
        """The environment: nothing of the real home or of real settings is seen."""
        kept = {name: value for name, value in os.environ.items() if not name.startswith(("TAREBOOK_", "DATABASE_URL"))}
        home = self.folder / "home"
        home.mkdir(parents=True, exist_ok=True)
        return {
            **kept,
            "HOME": str(home),
            "XDG_DATA_HOME": str(home / "data"),
            "TAREBOOK_DATA": str(self.folder / "data"),
        }

    def command(self, *words: str) -> list[str]:
        """A `tarebook` command line run by the Python of the tests."""
        return [sys.executable, "-m", "tarebook", *words]

    def run(self, *words: str) -> str:
        """Run a command on this server's folder and return what it printed.

        In this process, which has its modules loaded; `tests/cli` runs commands as people do.
        """
        printed = io.TextIOWrapper(io.BytesIO(), encoding="utf-8", write_through=True)
        with patch.dict(os.environ, self.env(), clear=True), redirect_stdout(printed), redirect_stderr(printed):
            code = main(list(words))
        said = printed.buffer.getvalue().decode()
        assert code == 0, f"tarebook {' '.join(words)}: {said}"
        return said

    def start(self) -> Self:
        """Start and wait until it answers."""
        words = self.command("serve", "--port", str(self.port), "--no-browser", *self.options)
        self.process = subprocess.Popen(
            words, env=self.env(), text=True, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, start_new_session=True
        )
        self.lines = []
        threading.Thread(target=self._listen, args=(self.process, self.lines), daemon=True).start()
        self._wait_until_well(self.process)
        self.has_printed_link = "--demo" not in self.options
        return self

    def _listen(self, process: subprocess.Popen[str], lines: list[str]) -> None:
        for line in process.stdout or ():
            lines.append(line.rstrip())

    def _wait_until_well(self, process: subprocess.Popen[str]) -> None:
        until = time.monotonic() + START_WITHIN
        while time.monotonic() < until and process.poll() is None:
            try:
                self.ask("/api/v1/health")
            except OSError:
                time.sleep(0.05)
            else:
                return
        raise AssertionError("the server did not start:\n" + "\n".join(self.lines))

    def says(self, pattern: re.Pattern[str]) -> str:
        """The part of its words that a pattern's group holds, once it has said them."""
        until = time.monotonic() + START_WITHIN
        while time.monotonic() < until:
            found = next((found for line in list(self.lines) if (found := pattern.search(line))), None)
            if found:
                return found[1]
            time.sleep(0.05)
        raise AssertionError(f"the server never said {pattern.pattern}:\n" + "\n".join(self.lines))

    def ask(self, path: str, token: str | None = None, body: object = None) -> bytes:
        """The bytes of an answer to a GET, or to a POST when there is a body to send as JSON."""
        headers = {"Authorization": f"Bearer {token}"} if token else {}
        data = None if body is None else json.dumps(body).encode()
        request = urllib.request.Request(self.address + path, data, {"Content-Type": "application/json", **headers})
        with urllib.request.urlopen(request, timeout=10) as answer:
            return bytes(answer.read())

    def join(self) -> str:
        """The token of a new device."""
        code = self.pairing_link().partition("#pair=")[2]
        return str(json.loads(self.ask("/api/v1/pair", body={"code": code}))["token"])

    def entries(self, token: str) -> list[dict[str, Any]]:
        """Every entry of the journal, in order (a test's garage fits into one page)."""
        page = json.loads(self.ask("/api/v1/sync/pull?epoch=&since=0", token))
        assert not page["more"]
        return [json.loads(row["text"]) for row in page["entries"]]

    def pairing_link(self) -> str:
        """A fresh one-time link: the one printed at the start, and after that as `tarebook pair` prints it."""
        if self.has_printed_link:
            self.has_printed_link = False
            return self.says(PAIRING_LINK)
        found = PAIRING_LINK.search(self.run("pair", *self.pair_options, "--port", str(self.port)))
        assert found, "tarebook pair printed no link"
        return found[1]

    def _signal(self, number: int) -> subprocess.Popen[str]:
        assert self.process is not None
        os.killpg(self.process.pid, number)
        return self.process

    def kill(self) -> None:
        """Gone at once, workers too, as by a power cut: the honest way to be out of reach."""
        self._signal(signal.SIGKILL).wait()
        self.process = None

    def freeze(self) -> None:
        """It takes connections and never answers, like a phone at the edge of the signal."""
        self._signal(signal.SIGSTOP)

    def thaw(self) -> None:
        """It goes on."""
        self._signal(signal.SIGCONT)

    def close(self) -> None:
        """At the end of a test, in whatever state."""
        if self.process is not None and self.process.poll() is None:
            self.kill()
