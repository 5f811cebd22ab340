"""The process that serves all entrances: what it says when a connection goes wrong."""

import asyncio
import socket

import pytest
from gunicorn.config import Config
from gunicorn.glogging import Logger

from tarebook.cli.entrance import Entrance
from tarebook.cli.visit import Visit
from tarebook.cli.worker import Worker


def worker():
    """As much of one as a visit sees that asks for nothing."""
    made = Worker.__new__(Worker)
    made.cfg = Config()
    made.log = Logger(made.cfg)
    return made


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


@pytest.mark.parametrize("sent", [b"", b"GET", b"GET / HTTP/1.1\r\nHost: a\r\n", b"x" * 100_000])
def test_whoever_hangs_up_early_or_never_ends_is_not_worth_a_line(capfd, sent):
    assert said_to(sent) == b""
    assert capfd.readouterr() == ("", "")


def test_what_is_no_request_is_refused_and_the_line_closed():
    assert said_to(b"nonsense\r\n\r\n").startswith(b"HTTP/1.1 400 Bad Request\r\nConnection: close\r\n")
