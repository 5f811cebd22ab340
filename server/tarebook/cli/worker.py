"""gunicorn's threaded worker, taught that one of its sockets speaks TLS and the others do not.

gunicorn wraps all sockets in TLS or none. Here each connection is wrapped, or not, by the port it came to, with
whatever certificate is good at that moment. A phone that walks out of range in the middle of a request never says so;
its thread is given back after a while.
"""

from __future__ import annotations

import errno
import logging
import os
import socket
import ssl
from types import FrameType
from typing import TYPE_CHECKING, Any

from gunicorn.workers.gthread import TConn, ThreadWorker

if TYPE_CHECKING:
    from tarebook.cli.entrance import Entrance

SILENT_SECONDS = 60
SECONDS_TO_FINISH = 5  # for requests under way when it is stopped
_GONE = (errno.EAGAIN, errno.ECONNABORTED, errno.EWOULDBLOCK)


class Connection(TConn):
    sock: socket.socket

    def __init__(self, *given: Any, entrance: Entrance | None) -> None:
        super().__init__(*given)
        self._entrance = entrance

    def init(self) -> None:
        """In a thread of its own, before each request."""
        if self._entrance and self._entrance.tls and not self.initialized:
            self.sock.settimeout(SILENT_SECONDS)
            # Only wrapped at first: a handshake that fails must leave a socket that can be closed.
            context = self._entrance.tls.context()
            self.sock = context.wrap_socket(self.sock, server_side=True, do_handshake_on_connect=False)
            self.sock.do_handshake()
        super().init()
        self.sock.settimeout(SILENT_SECONDS)


class Worker(ThreadWorker):
    def init_process(self) -> None:
        self._entrances = {entrance.port: entrance for entrance in self.app.entrances}
        self.log.error_log.addFilter(_is_worth_saying)
        # Here alone: the parent has to wait for what is tidied up afterwards, too.
        self.cfg.set("graceful_timeout", SECONDS_TO_FINISH)
        super().init_process()

    def handle_quit(self, sig: int, frame: FrameType | None) -> None:
        """Ends without waiting for requests. gunicorn's own leaves by an exception from within the signal, which what
        it interrupts may swallow or, holding the thread pool's lock, never live to see."""
        self.cfg.set("graceful_timeout", 0)
        self.handle_exit(sig, frame)

    def accept(self, listener: socket.socket) -> None:
        try:
            client, address = listener.accept()
        except OSError as problem:
            if problem.errno in _GONE:
                return
            raise
        self.nr_conns += 1
        server = listener.getsockname()
        self.enqueue_req(Connection(self.cfg, client, address, server, entrance=self._entrances.get(server[1])))

    def handle_error(self, req: Any, client: socket.socket, addr: Any, exc: BaseException) -> None:
        """A phone that does not trust us hangs up at every try; that is for the door page to say, not for a log."""
        if not isinstance(exc, ssl.SSLError):
            super().handle_error(req, client, addr, exc)
        elif getattr(exc, "reason", None) == "HTTP_REQUEST":
            self._point_to_https(client)

    def _point_to_https(self, client: socket.socket) -> None:
        """For whoever typed the name without https://."""
        entrance = self._entrances[client.getsockname()[1]]
        answer = f"HTTP/1.1 308 Permanent Redirect\r\nLocation: {entrance.address}/\r\nContent-Length: 0\r\n"
        with socket.socket(fileno=os.dup(client.fileno())) as plain:
            plain.sendall(f"{answer}Connection: close\r\n\r\n".encode("ascii"))


def _is_worth_saying(record: logging.LogRecord) -> bool:
    """Not that somebody stopped talking."""
    return not (record.exc_info and isinstance(record.exc_info[1], TimeoutError | ConnectionError))
