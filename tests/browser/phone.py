"""A real Chromium with a profile of its own: a phone that can be opened, killed and opened again."""

import contextlib
import os
import signal
import time
from pathlib import Path
from typing import Any

from playwright.sync_api import BrowserContext, Error, Page, Playwright

from tests.machine import need_chromium

FLAGS = [
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
PHONE = {"viewport": {"width": 390, "height": 844}, "device_scale_factor": 2, "is_mobile": True, "has_touch": True}
DESK = {"viewport": {"width": 1280, "height": 800}}
# What Chromium itself writes when a server is gone; the app is expected to live with that.
NETWORK_NOISE = ("net::ERR_", "Failed to load resource")


def processes_of(profile: Path) -> list[int]:
    """Process ids of the browser that runs on a profile."""
    word = f"--user-data-dir={profile}".encode()
    found = []
    for entry in Path("/proc").iterdir():
        if entry.name.isdigit():
            try:
                arguments = (entry / "cmdline").read_bytes().split(b"\0")
            except OSError:  # it ended meanwhile
                continue
            if word in arguments:
                found.append(int(entry.name))
    return found


class Phone:
    """One browser profile. `page` is there while it is open; `troubles` collects what scripts complained about."""

    flags: tuple[str, ...] = ()

    def __init__(self, playwright: Playwright, folder: Path, origin: str, **look: Any) -> None:
        self.playwright, self.origin, self.look = playwright, origin, look or PHONE
        self.profile, self.home = folder / "profile", folder / "home"
        self.home.mkdir(parents=True)
        self.troubles: list[str] = []
        self._context: BrowserContext | None = None

    def open(self, path: str = "/") -> Page:
        """Start the browser, cold, and go to a page of the app."""
        page = self.start()
        page.goto(self.origin + path)
        return page

    def start(self) -> Page:
        """Start the browser, cold, with nothing in it yet."""
        self._context = self.playwright.chromium.launch_persistent_context(
            str(self.profile),
            executable_path=need_chromium(),
            headless=True,
            args=[*FLAGS, *self.flags],
            env={**os.environ, "HOME": str(self.home)},
            locale="en-GB",
            **self.look,
        )
        self._context.on("weberror", lambda error: self.troubles.append(str(error.error)))
        self._context.on("console", self._hear)
        return self.page

    def _hear(self, message: Any) -> None:
        if message.type == "error" and not any(noise in message.text for noise in NETWORK_NOISE):
            self.troubles.append(message.text)

    @property
    def context(self) -> BrowserContext:
        """The open browser."""
        assert self._context is not None, "the phone is not open"
        return self._context

    @property
    def page(self) -> Page:
        """The first tab."""
        return self.context.pages[0]

    def is_installed(self) -> None:
        """Wait until the service worker is active and rules the page, so that the next start needs no server."""
        self.page.evaluate("navigator.serviceWorker.ready.then(() => undefined)")

    def sigkill(self) -> None:
        """The system kills the browser, all its processes at once."""
        context, self._context = self.context, None
        for process in processes_of(self.profile):
            os.kill(process, signal.SIGKILL)
        while processes_of(self.profile):
            time.sleep(0.02)
        with contextlib.suppress(Error):  # it is gone, as we wanted
            context.close()

    def close(self) -> None:
        """Close it as a person would."""
        if self._context is not None:
            # Of an answer that is being changed on its way nobody wants to hear any more; the next test would.
            self._context.unroute_all(behavior="ignoreErrors")
            self._context.close()
            self._context = None
