"""What the figures share: a scratch folder, a browser's driver, and the app, as it is and with a hand in it."""

from __future__ import annotations

import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cached_property
from pathlib import Path
from typing import Any

from playwright.sync_api import Page, Playwright

from tarebook.garage import author
from tarebook.settings import Settings
from tarebook.store import garages
from tarebook.store.migrate import prepare
from tests.bench.garage import Change
from tests.browser.doing import join
from tests.browser.phone import PHONE, Phone
from tests.browser.serving import Server
from tests.machine import ROOT

VITE = ROOT / "webapp" / "node_modules" / "vite" / "bin" / "vite.js"
LONG = 120_000  # milliseconds a whole measurement may take in the page


class AppServer(Server):
    """A server of one build of the app."""

    def __init__(self, folder: Path, app: Path, *options: str) -> None:
        super().__init__(folder, *options)
        self.app = app

    def env(self) -> dict[str, str]:
        return {**super().env(), "TAREBOOK_STATIC_APP": str(self.app)}

    def fill(self, changes: list[Change]) -> None:
        """Writes changes into the garage, before the server has started."""
        database = prepare(Settings(data=self.folder / "data"))
        with database.write() as session:
            garage = garages.open_or_create(session).id
            wanted = [author.Change(one["kind"], one["record"], one["set"], base=()) for one in changes]
            author.write(session, garage, wanted)
        database.close()


class Workshop:
    """Everything is made when it is first asked for."""

    def __init__(self, folder: Path, playwright: Playwright, env: dict[str, str], runs: int) -> None:
        """`env`: the environment in which Node is found; `runs`: how often each figure is measured."""
        self.folder, self.playwright, self.env, self.runs = folder, playwright, env, runs
        self._made = 0

    def new_folder(self) -> Path:
        self._made += 1
        path = self.folder / str(self._made)
        path.mkdir()
        return path

    @cached_property
    def app(self) -> Path:
        """The app as people get it."""
        return self._built("app")

    @cached_property
    def app_with_hand(self) -> Path:
        """The app with `page.ts` in it."""
        return self._built("app-with-hand", "--config", str(Path(__file__).with_name("vite.config.ts")))

    def _built(self, name: str, *options: str) -> Path:
        built = self.folder / name
        command = ["node", str(VITE), "build", "--outDir", str(built), "--logLevel", "error", *options]
        subprocess.run(command, cwd=ROOT / "webapp", env=self.env, check=True)
        return built

    @contextmanager
    def server(self, app: Path | None = None, *options: str, filled: list[Change] | None = None) -> Iterator[AppServer]:
        """A running server, filled before; by default of the app with the bench's hand."""
        server = AppServer(self.new_folder(), app or self.app_with_hand, *options)
        if filled:
            server.fill(filled)
        try:
            yield server.start()
        finally:
            server.close()

    @contextmanager
    def phone(self, server: Server) -> Iterator[Phone]:
        phone = Phone(self.playwright, self.new_folder(), server.address, **PHONE)
        try:
            yield phone
        finally:
            phone.close()

    @contextmanager
    def joined(self, server: Server) -> Iterator[tuple[Phone, Page]]:
        """A phone that has joined the server's garage, at its first screen."""
        with self.phone(server) as phone:
            page = join(phone, server)
            page.set_default_timeout(LONG)
            yield phone, page


def in_page(page: Page, call: str, argument: Any = None) -> Any:
    """What the bench's hand in the page answers: `in_page(page, "bench.saveAll(it)", changes)`."""
    late = f"new Promise((_, no) => setTimeout(() => no(new Error('too long: {call.split('(')[0]}')), {LONG}))"
    return page.evaluate(f"(it) => Promise.race([{call}, {late}])", argument)
