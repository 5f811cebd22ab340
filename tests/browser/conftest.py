"""Fixtures of the browser tests: a server, and phones by name."""

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Playwright, expect, sync_playwright

from tests.browser import closing
from tests.browser.engines import ENGINES, Engine, said_of_engines
from tests.browser.phone import Phone
from tests.browser.serving import Server
from tests.browser.shared import SharedHome

ENGINES_ASKED = pytest.StashKey[bool]()
# How long a screen may take on a busy machine before a test gives up; nothing is asserted about speed.
expect.set_options(timeout=20_000)


def pytest_collection_finish(session: pytest.Session) -> None:
    """Only where their tests are among those to be run can something be said of engines."""
    session.config.stash[ENGINES_ASKED] = any(item.path.name == "test_other_engines.py" for item in session.items)


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter, config: pytest.Config) -> None:
    """Say which engines were tried, what one of them cannot do, and what else a test found out."""
    engines = said_of_engines() if config.stash.get(ENGINES_ASKED, False) else []
    for line in [*engines, *closing.lines]:
        terminalreporter.write_line(line)


@pytest.fixture(scope="session")
def playwright() -> Iterator[Playwright]:
    """Playwright's driver, started once."""
    with sync_playwright() as started:
        yield started


@pytest.fixture
def server(tmp_path: Path) -> Iterator[Server]:
    """A running server with an empty garage."""
    running = Server(tmp_path / "server").start()
    yield running
    running.close()


@pytest.fixture(scope="session")
def shared(tmp_path_factory: pytest.TempPathFactory) -> Iterator[SharedHome]:
    """The server behind `garage`."""
    running = SharedHome(tmp_path_factory.mktemp("shared"))
    yield running
    running.close()


@pytest.fixture
def garage(shared: SharedHome) -> SharedHome:
    """An empty garage in a server that stays on."""
    if shared.process is None:
        shared.start()
    shared.another_garage()
    return shared


@pytest.fixture
def demo(tmp_path: Path) -> Iterator[Server]:
    """A running demo server."""
    running = Server(tmp_path / "demo", "--demo").start()
    yield running
    running.close()


@pytest.fixture(params=ENGINES, ids=lambda engine: engine.name)
def engine(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Engine]:
    """A fresh browser of each other engine that is on this machine."""
    opened: Engine = request.param(tmp_path / "engine")
    yield opened
    opened.close()


@pytest.fixture
def make_phone(playwright: Playwright, tmp_path: Path) -> Iterator[Callable[..., Phone]]:
    """`make_phone("anna", server)`: a new phone that knows the server's address. A script error fails the test."""
    made: list[Phone] = []

    def make(name: str, server: Server, **look: Any) -> Phone:
        made.append(Phone(playwright, tmp_path / name, server.address, **look))
        return made[-1]

    yield make
    for phone in made:
        phone.close()
    assert [trouble for phone in made for trouble in phone.troubles] == []
