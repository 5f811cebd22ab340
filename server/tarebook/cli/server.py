"""The web server of `tarebook serve`: gunicorn inside this process, over a socket that is already ours.

The port is claimed before anything is made, so that a taken one is refused in a sentence. One worker process
with threads: SQLite has one writer at a time. gunicorn's control socket in the home folder stays off.
"""

from __future__ import annotations

import os
import signal
import socket
from collections.abc import Callable
from types import FrameType
from typing import Any

from flask import Flask
from gunicorn.app.base import BaseApplication

from tarebook import create_app
from tarebook.errors import TarebookError
from tarebook.settings import Settings

_SECONDS_TO_FINISH = 5  # for requests under way when it is stopped


def claimed_port(host: str, port: int) -> socket.socket:
    """A socket that listens on the port; raises `port_taken`."""
    try:
        return socket.create_server((host, port))
    except OSError as problem:
        raise TarebookError("port_taken", port=port) from problem


def serve(settings: Settings, listening: socket.socket, ready: Callable[[], None]) -> None:
    """Serves until Ctrl-C or SIGTERM. `ready` is called once, when requests are answered."""
    owner = os.getpid()
    try:
        _Server(settings, listening, ready).run()
    except SystemExit as end:
        # The worker process leaves by the same door; only the owner goes on to tidy up.
        if os.getpid() != owner:
            os._exit(end.code if isinstance(end.code, int) else 0)
        if end.code not in (None, 0):
            raise


class _Server(BaseApplication):
    def __init__(self, settings: Settings, listening: socket.socket, ready: Callable[[], None]) -> None:
        self._settings, self._listening, self._ready = settings, listening, ready
        super().__init__()

    def load_config(self) -> None:
        chosen = {
            # gunicorn takes the descriptor over and closes it at the end
            "bind": f"fd://{self._listening.detach()}",
            "worker_class": "gthread",
            "workers": 1,
            "threads": self._settings.threads,
            "graceful_timeout": _SECONDS_TO_FINISH,
            "control_socket_disable": True,
            "loglevel": "warning",
            "when_ready": self._when_ready,
        }
        for name, value in chosen.items():
            self.cfg.set(name, value)

    def load(self) -> Flask:
        return create_app(self._settings)

    def _when_ready(self, _arbiter: Any) -> None:
        # A closed terminal would make gunicorn reload and live on; it means stop.
        signal.signal(signal.SIGHUP, _terminate)
        self._ready()


def _terminate(_number: int, _frame: FrameType | None) -> None:
    os.kill(os.getpid(), signal.SIGTERM)
