"""The web server of `tarebook serve`: gunicorn inside this process, over sockets that are already ours.

Ports are claimed before anything is made, so that a taken one is refused in a sentence. One worker process
with threads: SQLite has one writer at a time. gunicorn's control socket in the home folder stays off.
"""

from __future__ import annotations

import os
import signal
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from types import FrameType
from typing import TYPE_CHECKING, Any, Protocol

from gunicorn.app.base import BaseApplication

from tarebook import create_app
from tarebook.cli.entrance import Entrance, Reception
from tarebook.cli.worker import Worker
from tarebook.settings import Settings

if TYPE_CHECKING:
    from _typeshed.wsgi import WSGIApplication

_SECONDS_TO_END = 20  # for requests under way, and for what runs alongside, before the worker is killed


class Alongside(Protocol):
    """A thread of its own. `stop` is also called in a process where nothing was started, and does nothing there."""

    def start(self) -> None: ...

    def stop(self) -> None: ...


@dataclass(frozen=True)
class House:
    """What is served where. `alongside`: what else runs in the process that serves, for as long as it does."""

    settings: Settings
    entrances: Sequence[Entrance]
    door: Callable[[], WSGIApplication] | None = None
    alongside: Sequence[Alongside] = ()


def serve(house: House, ready: Callable[[], None]) -> None:
    """Serves until Ctrl-C or SIGTERM. `ready` is called once, when requests are answered."""
    owner = os.getpid()
    try:
        _Server(house, ready).run()
    except SystemExit as end:
        # The worker process leaves by the same door; only the owner goes on to tidy up.
        if os.getpid() != owner:
            os._exit(end.code if isinstance(end.code, int) else 0)
        if end.code not in (None, 0):
            raise


class _Server(BaseApplication):
    def __init__(self, house: House, ready: Callable[[], None]) -> None:
        self._house, self._ready = house, ready
        self.entrances = house.entrances  # the worker looks here
        super().__init__()

    def load_config(self) -> None:
        chosen = {
            # gunicorn takes the descriptors over and closes them at the end
            "bind": [f"fd://{one.detach()}" for entrance in self.entrances for one in entrance.sockets],
            "worker_class": Worker,
            "workers": 1,
            "threads": self._house.settings.threads,
            "graceful_timeout": _SECONDS_TO_END,
            "control_socket_disable": True,
            "loglevel": "warning",
            "when_ready": self._when_ready,
            "post_fork": _until_it_listens,
            "post_worker_init": self._when_serving,
            "worker_exit": self._when_over,
        }
        for name, value in chosen.items():
            self.cfg.set(name, value)

    def load(self) -> Reception:
        kinds = {str(entrance.port): entrance.kind for entrance in self.entrances}
        door = self._house.door
        return Reception(kinds, create_app(self._house.settings), door() if door else None)

    def _when_ready(self, _arbiter: Any) -> None:
        # A closed terminal would make gunicorn reload and live on; it means stop.
        signal.signal(signal.SIGHUP, _terminate)
        self._ready()

    def _when_serving(self, _worker: Any) -> None:
        for one in self._house.alongside:
            one.start()

    def _when_over(self, _arbiter: Any, _worker: Any) -> None:
        for one in self._house.alongside:
            one.stop()


def _until_it_listens(_arbiter: Any, _worker: Any) -> None:
    """A worker is born with its parent's handlers, which would note a signal down for nobody; later it has its own."""
    for number in (signal.SIGINT, signal.SIGTERM, signal.SIGQUIT):
        signal.signal(number, lambda *_: os._exit(0))


def _terminate(_number: int, _frame: FrameType | None) -> None:
    os.kill(os.getpid(), signal.SIGTERM)
