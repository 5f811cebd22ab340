"""
The look-up of a home network, for browsers that cannot be told where a name leads: a SOCKS proxy (RFC 1928) that leads
one name to this machine, and every other nowhere.
"""

import socket
import struct
import threading
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from socketserver import StreamRequestHandler, ThreadingTCPServer

NO_PASSWORD = b"\x05\x00"
GRANTED = b"\x05\x00\x00\x01" + bytes(6)
UNREACHABLE = b"\x05\x04\x00\x01" + bytes(6)
BY_NAME = 3


class LookUp(ThreadingTCPServer):
    """Listens on a port of this machine."""

    daemon_threads = True
    allow_reuse_address = True

    def __init__(self, name: str) -> None:
        super().__init__(("127.0.0.1", 0), Visit)
        self.name = name

    @property
    def port(self) -> int:
        return int(self.server_address[1])


class Visit(StreamRequestHandler):
    """One connection of a browser."""

    server: LookUp

    def handle(self) -> None:
        with suppress(OSError, struct.error):  # either end may hang up at any time
            _, methods = self.rfile.read(2)
            self.rfile.read(methods)
            self.request.sendall(NO_PASSWORD)
            self._pass_on(*self._wanted())

    def _wanted(self) -> tuple[str, int]:
        """Name and port; the name is empty where an address was asked for."""
        *_, kind, length = self.rfile.read(5)
        if kind != BY_NAME:
            return "", 0
        name = self.rfile.read(length).decode()
        return name, struct.unpack("!H", self.rfile.read(2))[0]

    def _pass_on(self, name: str, port: int) -> None:
        try:
            if name != self.server.name:
                raise ConnectionRefusedError(name)
            there = socket.create_connection(("127.0.0.1", port))
        except OSError:
            self.request.sendall(UNREACHABLE)
            return
        with there:
            self.request.sendall(GRANTED)
            back = threading.Thread(target=pour, args=(there, self.request), daemon=True)
            back.start()
            pour(self.request, there)
            back.join()


def pour(source: socket.socket, target: socket.socket) -> None:
    """Every byte of one into the other, until one of them ends."""
    with suppress(OSError):
        while piece := source.recv(65536):
            target.sendall(piece)
    with suppress(OSError):
        target.shutdown(socket.SHUT_WR)


@contextmanager
def leading_home(name: str) -> Iterator[int]:
    """The port of a look-up that leads a name to this machine."""
    with LookUp(name) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield server.port
        server.shutdown()
