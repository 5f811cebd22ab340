"""The process that serves all entrances: what it says when a connection goes wrong."""

import asyncio
import socket
from concurrent.futures import ThreadPoolExecutor

import pytest
from gunicorn.config import Config
from gunicorn.glogging import Logger

from tarebook.cli.entrance import Entrance
from tarebook.cli.visit import Visit
from tarebook.cli.worker import Worker
from tarebook.errors import ERRORS


def worker():
    """As much of one as a visit sees that asks for nothing."""
    made = Worker.__new__(Worker)
    made.cfg = Config()
    made.log = Logger(made.cfg)
    made.alive, made.wsgi = True, refusing
    made._home = made._others = ThreadPoolExecutor(1)
    return made


def refusing(environ, start_response):
    """Says why it was asked for nothing; breaks when asked for anything."""
    start_response(f"400 {environ['tarebook.unreadable'] or 1 / 0}", [("Content-Length", "0")])
    return []


def said_to(*sent):
    """What a visitor to the home entrance hears, after sending this and nothing more."""
    ours, theirs = socket.socketpair()
    for part in sent:
        theirs.sendall(part)
    theirs.shutdown(socket.SHUT_WR)
    ours.setblocking(False)
    asyncio.run(Visit(worker(), Entrance("home", 1, []), ours, ("127.0.0.1", 1)).run())
    with theirs:
        return theirs.makefile("rb").read()


@pytest.mark.parametrize("sent", [b"", b"GET", b"GET / HTTP/1.1\r\nHost: a\r\n"])
def test_whoever_hangs_up_early_is_not_worth_a_line(capfd, sent):
    assert said_to(sent) == b""
    assert capfd.readouterr() == ("", "")


@pytest.mark.parametrize(
    ("sent", "why"),
    [
        (b"nonsense\r\n\r\n", "bad_request"),
        (b"x" * 100_000, "head_too_large"),
        (b"\xff" * 9 + b"\r\n\r\n", "bad_request"),
    ],
)
def test_what_is_no_request_is_refused_by_the_application_and_the_line_closed(sent, why):
    said = said_to(sent)
    assert said.startswith(f"HTTP/1.1 400 {why}\r\n".encode())
    assert b"\r\nConnection: close\r\n" in said


def test_a_fault_that_the_application_lets_through_is_a_sentence_too(capfd):
    said = said_to(b"GET / HTTP/1.1\r\nHost: a\r\n\r\n")
    assert said.startswith(b"HTTP/1.1 500 ")
    assert said.endswith(f"{ERRORS['broken'].sentence} {ERRORS['broken'].do}\n".encode())
    assert "ZeroDivisionError" in capfd.readouterr().err
