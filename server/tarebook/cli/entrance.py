"""The ways into the server: this computer's browser, phones over TLS, and the plain door page.

All are served by one process over one database; which way a request came is told by the port of the socket it came
through, never by anything the request says.
"""

from __future__ import annotations

import socket
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from tarebook.errors import TarebookError

if TYPE_CHECKING:
    from _typeshed.wsgi import StartResponse, WSGIApplication, WSGIEnvironment

    from tarebook.devices.live_tls import LiveTls

Kind = Literal["home", "lan", "door"]
KEY = "tarebook.entrance"
TRUSTED = "/trusted"


@dataclass(frozen=True)
class Entrance:
    """Listening sockets of one port. `tls`: what phones are shown; `address`: where a plain request there belongs."""

    kind: Kind
    port: int
    sockets: Sequence[socket.socket]
    tls: LiveTls | None = None
    address: str = ""


class Reception:
    """Sends each request to the application of its entrance."""

    def __init__(self, kinds: dict[str, Kind], garage: WSGIApplication, door: WSGIApplication | None) -> None:
        self._kinds, self._garage, self._door = kinds, garage, door

    def __call__(self, environ: WSGIEnvironment, start_response: StartResponse) -> Iterable[bytes]:
        kind = self._kinds[environ["SERVER_PORT"]]
        environ[KEY] = kind
        if kind == "door" and self._door:
            return self._door(environ, start_response)
        if kind == "lan":
            environ["wsgi.url_scheme"] = "https"
            if environ["PATH_INFO"] == TRUSTED:
                return _trusted(start_response)
        return self._garage(environ, start_response)


def _trusted(start_response: StartResponse) -> Iterable[bytes]:
    """Nothing, for any page: that it arrives at all says that the browser trusts the certificate."""
    open_to_all = ("Cross-Origin-Resource-Policy", "cross-origin")
    start_response("204 No Content", [open_to_all, ("Cache-Control", "no-store")])
    return []


def claimed(host: str, port: int, option: str, taken: str = "port_taken") -> socket.socket:
    """A socket that listens on the port; raises `port_taken`, or as told, and `port_forbidden`."""
    family = socket.AF_INET6 if ":" in host else socket.AF_INET
    try:
        return socket.create_server((host, port), family=family)
    except PermissionError as problem:
        raise TarebookError("port_forbidden", port=port, option=option) from problem
    except OSError as problem:
        raise TarebookError(taken, port=port, option=option) from problem


def claimed_everywhere(port: int, option: str, taken: str = "port_taken") -> list[socket.socket]:
    """Sockets on every address of this computer, as `claimed`. IPv6 has its own, so that IPv4 callers look as such."""
    first = claimed("0.0.0.0", port, option, taken)
    number = first.getsockname()[1]
    return [first, claimed("::", number, option, taken)] if _has_ipv6() else [first]


def _has_ipv6() -> bool:
    """Whether this computer can listen by IPv6; many a system has it built in and switched off."""
    try:
        with socket.create_server(("::1", 0), family=socket.AF_INET6):
            return True
    except OSError:
        return False
