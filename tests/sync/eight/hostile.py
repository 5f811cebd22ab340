"""A proxy that breaks every exchange, and a disk that is really full: in the end all is home, every photo by its hash.

The proxy is that of `tests/fuzz/proxy`, each of its faults by itself and all together. The disk is a small one of the
server's own, filled to the last byte and freed again by chance before each exchange.
"""

from __future__ import annotations

import base64
import os
import shutil
import signal
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from random import Random

from tarebook.store.rebuild import rebuild
from tests.browser.serving import free_port
from tests.fuzz import proxy
from tests.fuzz.proxy import FAULTS, Deal, all_home, between, phone_run
from tests.home import Home
from tests.photos import picture
from tests.sync.eight import Outcome

_SMALL = 'mount -t tmpfs -o size=40m tmpfs "$0" && cp -a "$1"/. "$0" && shift && exec "$@"'
_START_WITHIN = 60  # seconds


class Disk:
    """A folder on a disk of a server's own, seen from outside through the server's process."""

    def __init__(self, server: int, folder: Path) -> None:
        self.folder = Path(f"/proc/{server}/root{folder}")
        self.filling = self.folder / "filling"
        self.times_full = 0

    def fill(self) -> None:
        with suppress(OSError), self.filling.open("ab", buffering=0) as file:
            while True:
                file.write(bytes(4096))
        self.times_full += 1

    def free(self) -> None:
        self.filling.unlink(missing_ok=True)


class FullNowAndThen(Deal):
    """Breaks nothing; before each exchange the disk may be filled or freed."""

    def __init__(self, random: Random, disk: Disk) -> None:
        super().__init__(random, ("none",))
        self.disk = disk

    def fault(self) -> str:
        with self.lock:
            if self.random.random() < 0.5:
                self.disk.fill() if self.random.random() < 0.6 else self.disk.free()
        return "none"


class FreeFromNowOn(FullNowAndThen):
    def fault(self) -> str:
        with self.lock:
            self.disk.free()
        return "none"


@contextmanager
def on_a_small_disk(data: Path, port: int) -> Iterator[Disk]:
    """A server whose data folder is a copy of `data` on a disk of 40 MB, until the end."""
    there = data.with_name("small")
    there.mkdir()
    words = ["serve", "--port", str(port), "--no-browser", "--data", str(there)]
    command = [sys.executable, "-m", "tarebook", *words]
    env = {**os.environ, "TAREBOOK_RESERVE_BYTES": "0"}
    server = subprocess.Popen(
        ["unshare", "--map-root-user", "--mount", "sh", "-c", _SMALL, there, data, *command],
        env=env, start_new_session=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
    )  # fmt: skip
    try:
        until = time.monotonic() + _START_WITHIN
        while True:
            try:
                with urllib.request.urlopen(f"http://localhost:{port}/api/v1/health", timeout=10):
                    break
            except OSError:
                assert time.monotonic() < until, "the server did not start"
                time.sleep(0.05)
        yield Disk(server.pid, there)
    finally:
        os.killpg(server.pid, signal.SIGKILL)
        server.wait()


def full_disk(folder: Path, chance: Random) -> Outcome:
    """One phone saves jobs and photos and sends them while the home computer's disk is full now and then."""
    home = Home(folder / "data")
    phone = home.pair()
    home.close()
    port = free_port()
    steps = chance.choices(["save", "sync", "kill"], [4, 8, 1], k=40)
    for _ in range(3):
        steps.insert(chance.randrange(len(steps)), base64.b64encode(picture(chance.randrange(10**9))).decode())
    token = phone.headers["Authorization"].removeprefix("Bearer ")
    with on_a_small_disk(folder / "data", port) as disk:
        with (
            between(port, FullNowAndThen(chance, disk)) as often,
            between(port, FreeFromNowOn(chance, disk)) as later,
        ):
            told = phone_run({
                "proxy": often, "server": later, "token": token, "garage": phone.garage, "device": phone.id,
                "steps": steps,
            })  # fmt: skip
        shutil.copytree(disk.folder, folder / "after")
        full = disk.times_full
    after = Home(folder / "after")
    phone.client = after.client
    all_home(phone, told)
    with after.database.write() as session:
        assert rebuild(session, after.garage).changed == 0
    after.close()
    assert "disk_full" in told["troubles"], f"the disk was never met full: {told['troubles']}"
    found = Outcome()
    found.did.update({"phones": 1, "entries": len(told["saved"]), "photos": len(told["photos"]), "times full": full})
    return found


def run(folder: Path, seed: int, times: int) -> Outcome:
    """Each fault of the proxy, all together, and the full disk, so many times."""
    found = Outcome()
    for number in range(times):
        with proxy.opened(folder / f"proxy-{number}") as case:
            for kind in (*FAULTS, "all of them"):
                case(Random(f"{seed} {number} {kind}"), kind)
                found.did.update(["phones", "faulty networks"])
        home = Home(folder / f"proxy-{number}" / "data")
        with home.database.read() as session:
            for what in ("entry", "photo"):
                counted = session.connection().exec_driver_sql(f"SELECT count(*) FROM {what}").scalar()
                found.did["entries" if what == "entry" else "photos"] += counted
        home.close()
        found.add(full_disk(folder / f"disk-{number}", Random(f"{seed} {number} disk")))
    return found
