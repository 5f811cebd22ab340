"""Phones that weigh and save all at once, through the README's proxy, with strangers holding on beside them.

What is measured is what a phone and the home computer meet: how long a push takes, how long health at home takes, what
was answered otherwise than it should be, and how much memory the process that serves holds.
"""

from __future__ import annotations

import itertools
import json
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from statistics import median, quantiles
from typing import Any

from tarebook.devices import pairing
from tarebook.devices.pairing import Paired
from tarebook.settings import Settings
from tarebook.store import garages
from tarebook.store.migrate import prepare
from tests.cli import nginx
from tests.cli.strangers import BODY, HEAD, Stranger, health, kinds, trusting_anybody
from tests.home import entry, id_of

BETWEEN = 1  # seconds between two saves of one phone
HEALTH_EVERY, MEMORY_EVERY = 0.5, 2.0


@dataclass
class Figures:
    """Seconds and bytes as they were measured, and what went wrong."""

    pushes: list[float] = field(default_factory=list)
    pulls: list[float] = field(default_factory=list)
    health: list[float] = field(default_factory=list)
    memory: list[int] = field(default_factory=list)
    strangers: int = 0
    errors: list[str] = field(default_factory=list)

    @property
    def push_p95(self) -> float:
        return quantiles(self.pushes, n=20)[-1]

    @property
    def growth(self) -> float:
        """By what share the memory of the last quarter is above that of the second."""
        quarter = max(1, len(self.memory) // 4)
        return median(self.memory[-quarter:]) / median(self.memory[quarter : 2 * quarter] or self.memory) - 1

    def __str__(self) -> str:
        pushes, pulls = (
            [_ms(median(each)), _ms(quantiles(each, n=20)[-1]), _ms(max(each))] for each in (self.pushes, self.pulls)
        )
        return "\n".join((
            f"pushes {len(self.pushes)}: median {pushes[0]}, p95 {pushes[1]}, longest {pushes[2]}",
            f"pulls {len(self.pulls)}: median {pulls[0]}, p95 {pulls[1]}, longest {pulls[2]}",
            f"health at home {len(self.health)}: longest {_ms(max(self.health))}",
            f"memory: from {self.memory[0] >> 20} to {self.memory[-1] >> 20} MiB, highest {max(self.memory) >> 20}, "
            f"last quarter against the second {100 * self.growth:+.1f} %",
            f"strangers who held on: 16 at any time, {self.strangers} in all",
            f"errors {len(self.errors)}{''.join(f'{chr(10)}  {each}' for each in self.errors[:10])}",
        ))  # fmt: skip


def _ms(seconds: float) -> str:
    return f"{1000 * seconds:.0f} ms"


def load(folder: Path, seconds: float, phones: int, strangers: int = 16) -> Figures:
    """What was measured of so many phones in so much time."""
    paired, figures, over = _paired(folder / "garage", phones), Figures(), threading.Event()
    with nginx.proxied(folder) as house:
        health(house.home)  # the first answer of all takes longer
        jobs: list[Callable[[], None]] = [
            *(_Phone(house, one, f"127.0.3.{n + 1}", figures, over).live for n, one in enumerate(paired)),
            *(lambda make=make: _hold(make, figures, over) for make in _ways(house, strangers)),
            lambda: _watch(HEALTH_EVERY, over, lambda: figures.health.append(health(house.home))),
            lambda: _watch(MEMORY_EVERY, over, lambda: figures.memory.append(_resident(house.process.pid))),
        ]
        with _all_at_once(jobs, figures, over):
            time.sleep(seconds)
    return figures


def _paired(folder: Path, phones: int) -> list[Paired]:
    database = prepare(Settings(data=folder))
    with database.write() as session:
        garage = garages.open_or_create(session).id
        paired = [pairing.admit(session, garage, f"phone {n}") for n in range(phones)]
    database.close()
    return paired


def _ways(house: nginx.House, strangers: int) -> Iterator[Callable[[], Stranger]]:
    """Half of them through the proxy, half past it, as another program on this computer might."""
    name = nginx.NAME.encode()
    straight = kinds(house.home, house.public)
    ways = (
        lambda: Stranger(trusting_anybody(house.public), HEAD % name),
        straight["head at home"],
        lambda: Stranger(trusting_anybody(house.public), BODY % name),
        straight["proxied body"],
    )
    return itertools.islice(itertools.cycle(ways), strangers)


@contextmanager
def _all_at_once(jobs: list[Callable[[], None]], figures: Figures, over: threading.Event) -> Iterator[None]:
    def done(job: Callable[[], None]) -> None:
        try:
            job()
        except Exception as problem:
            figures.errors.append(repr(problem))

    threads = [threading.Thread(target=done, args=(job,)) for job in jobs]
    for thread in threads:
        thread.start()
    try:
        yield
    finally:
        over.set()
        for thread in threads:
            thread.join()


def _hold(make: Callable[[], Stranger], figures: Figures, over: threading.Event) -> None:
    """A stranger comes back as soon as he is shown out."""
    while not over.is_set():
        one, figures.strangers = make(), figures.strangers + 1
        while not over.wait(1) and not one.is_shown_out():
            one.trickle()
        one.socket.close()


def _watch(every: float, over: threading.Event, look: Callable[[], None]) -> None:
    while True:
        look()
        if over.wait(every):
            return


def _resident(server: int) -> int:
    """Bytes of memory of the processes under the server's."""
    children = Path(f"/proc/{server}/task/{server}/children").read_text().split()
    pages = [int(Path(f"/proc/{child}/statm").read_text().split()[1]) for child in children]
    return sum(pages) * 4096


class _Phone:
    """Saves a job and hears what the others saved, again and again, over one connection."""

    def __init__(
        self, house: nginx.House, paired: Paired, address: str, figures: Figures, over: threading.Event
    ) -> None:
        self._line, self._paired, self._figures, self._over = house.through(address), paired, figures, over
        self._cursor: dict[str, Any] = {"epoch": "", "since": 0, "since_id": ""}

    def live(self) -> None:
        for n in itertools.count():
            if self._over.wait(BETWEEN):
                self._line.close()
                return
            text = entry(f"{self._paired.device}-{n}", {"name": f"Job {n}"}, device=self._paired.device)
            self._push(text)
            self._pull()

    def _push(self, text: str) -> None:
        body = {"proto": 1, "schema": 1, "garage": self._paired.garage, "epoch": "", "entries": [text]}
        answer = self._ask(self._figures.pushes, "POST", "/sync/push", json.dumps(body))
        if answer and [(one["id"], one["state"]) for one in answer["results"]] != [(id_of(text), "accepted")]:
            self._figures.errors.append(f"not accepted: {answer}")

    def _pull(self) -> None:
        asked = "&".join(f"{name}={value}" for name, value in self._cursor.items())
        answer = self._ask(self._figures.pulls, "GET", f"/sync/pull?{asked}")
        if answer and answer["entries"]:
            last = answer["entries"][-1]["number"]
            self._cursor = {"epoch": answer["epoch"], "since": last, "since_id": answer["mark"]}

    def _ask(self, times: list[float], method: str, path: str, body: str | None = None) -> dict[str, Any] | None:
        headers = {"Authorization": f"Bearer {self._paired.token}", "Content-Type": "application/json"}
        begun = time.monotonic()
        self._line.request(method, f"/api/v1{path}", body, headers)
        answer = self._line.getresponse()
        said = answer.read()
        times.append(time.monotonic() - begun)
        if answer.status == 200:
            told: dict[str, Any] = json.loads(said)
            return told
        self._figures.errors.append(f"{method} {path}: {answer.status} {said[:200]!r}")
        return None
