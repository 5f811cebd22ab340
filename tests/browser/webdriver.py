"""
Commands to a browser as W3C WebDriver names them, over the two wires there are here: HTTP to WebKit's driver, and the
Marionette socket that Firefox opens itself, so that no driver program has to be fetched from anywhere.
"""

import contextlib
import http.client
import json
import socket
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any, Protocol

PATIENCE = 60  # seconds for one command; a busy machine needs a few
# How a reference to an element is written in scripts' arguments and results (W3C WebDriver, 12.1).
ELEMENT = "element-6066-11e4-a52e-4f735466cecf"


class CommandError(AssertionError):
    """What the browser answered instead of doing it."""


class Wire(Protocol):
    """One browser window's commands."""

    def go(self, address: str) -> None:
        """Open an address."""

    def script(self, source: str, *arguments: Any) -> Any:
        """Run the body of an async function; what it returns comes back."""

    def click(self, element: Any) -> None:
        """Press an element as a pointer does."""

    def type(self, element: Any, text: str) -> None:
        """Type into an element; for a file field, the path of a file."""

    def shot(self) -> str:
        """A picture of the window: PNG, base64."""


class HttpWire:
    """To a driver program that listens on a port of this machine."""

    def __init__(self, port: int, options: dict[str, Any]) -> None:
        self.port, self.session = port, ""
        wait_until(lambda: listens(port))
        self.session = "/session/" + self.ask("", {"capabilities": {"alwaysMatch": options}}, "/session")["sessionId"]

    def ask(self, path: str, parameters: dict[str, Any] | None, base: str | None = None, method: str = "POST") -> Any:
        """The value of an answer; a command's failure is an exception."""
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=PATIENCE)
        with contextlib.closing(connection):
            body = None if parameters is None else json.dumps(parameters)
            connection.request(method, (base or self.session) + path, body, {"Content-Type": "application/json"})
            answer = connection.getresponse()
            value = json.loads(answer.read())["value"]
        if answer.status != http.HTTPStatus.OK:
            raise CommandError(f"{path}: {value}")
        return value

    def go(self, address: str) -> None:
        self.ask("/url", {"url": address})

    def script(self, source: str, *arguments: Any) -> Any:
        return self.ask("/execute/async", {"script": asynchronous(source), "args": arguments})

    def click(self, element: Any) -> None:
        self.ask(f"/element/{element[ELEMENT]}/click", {})

    def type(self, element: Any, text: str) -> None:
        self.ask(f"/element/{element[ELEMENT]}/value", {"text": text})

    def shot(self) -> str:
        return str(self.ask("/screenshot", None, method="GET"))


class MarionetteWire:
    """To Firefox: messages `length:[0, number, command, parameters]`, answers `length:[1, number, error, result]`."""

    def __init__(self, port: int) -> None:
        self.socket = socket.create_connection(("127.0.0.1", port), timeout=PATIENCE)
        self.number = 0
        self._receive()  # it says who it is
        self.ask("NewSession", {})
        self.ask("SetTimeouts", {"script": PATIENCE * 1000})

    def ask(self, command: str, parameters: dict[str, Any]) -> Any:
        """The result of a command; a command's failure is an exception."""
        self.number += 1
        message = json.dumps([0, self.number, f"WebDriver:{command}", parameters]).encode()
        self.socket.sendall(b"%d:%s" % (len(message), message))
        _, _, error, result = self._receive()
        if error:
            raise CommandError(f"{command}: {error['error']}: {error['message']}")
        return result

    def _receive(self) -> Any:
        length = b""
        while not length.endswith(b":"):
            length += self._read(1)
        return json.loads(self._read(int(length[:-1])))

    def _read(self, most: int) -> bytes:
        read = b""
        while len(read) < most:
            piece = self.socket.recv(most - len(read))
            if not piece:
                raise CommandError("the browser hung up")
            read += piece
        return read

    def go(self, address: str) -> None:
        self.ask("Navigate", {"url": address})

    def script(self, source: str, *arguments: Any) -> Any:
        return self.ask("ExecuteAsyncScript", {"script": asynchronous(source), "args": arguments})["value"]

    def click(self, element: Any) -> None:
        self.ask("ElementClick", {"id": element[ELEMENT]})

    def type(self, element: Any, text: str) -> None:
        self.ask("ElementSendKeys", {"id": element[ELEMENT], "text": text})

    def shot(self) -> str:
        return str(self.ask("TakeScreenshot", {"full": False})["value"])


def asynchronous(source: str) -> str:
    """A script that calls its last argument with what an async function with this body returns."""
    return (
        "const done = arguments[arguments.length - 1];"
        f"(async function () {{ {source} }}).apply(null, arguments).then(done, (error) => done('failed: ' + error));"
    )


def listens(port: int) -> bool:
    """True when something on this machine takes connections on a port."""
    with socket.socket() as probe:
        return probe.connect_ex(("127.0.0.1", port)) == 0


def wait_until(true: Callable[[], Any], what: str = "it", within: float = PATIENCE) -> Any:
    """The first value that counts as true; an error when there is none in time."""
    until = time.monotonic() + within
    while time.monotonic() < until:
        found = true()
        if found:
            return found
        time.sleep(0.05)
    raise AssertionError(f"waited {within:.0f} s in vain for {what}")


def text_of(path: Path) -> str:
    """What a file says, or nothing while it is not there."""
    return path.read_text() if path.exists() else ""
