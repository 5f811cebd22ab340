"""The app opened cold with its server dead, on a slowed processor: until the car's weight stands there, and until a tap
has been answered. It has been used before, so the browser may have kept its compiled code.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from playwright.sync_api import Page

from tests.bench.figure import Figure
from tests.bench.garage import Change, garage
from tests.bench.workshop import LONG, Workshop
from tests.browser.phone import Phone
from tests.browser.serving import Server

SLOWER = 4
PARTS, WEIGHINGS = 2000, 10_000
USED_BEFORE, STAYED = 2, 3000  # times, milliseconds
STARTS = 3  # for each run asked for: a start is soon done, and varies
WATCH = Path(__file__).with_name("watch.js").read_text(encoding="utf-8")


def figures(shop: Workshop) -> Iterator[Figure]:
    yield from _of(shop, "the demo", None)
    yield from _of(shop, f"{PARTS:,} parts, {WEIGHINGS:,} weighings", garage(PARTS, WEIGHINGS))


def _of(shop: Workshop, what: str, changes: list[Change] | None) -> Iterator[Figure]:
    options = () if changes else ("--demo",)
    with shop.server(shop.app, *options, filled=changes) as server, shop.phone(server) as phone:
        _use(phone, server, len(changes or ()))
        server.kill()
        times = [_cold_start(phone) for _start in range(STARTS * shop.runs)]
    how = f"cold, offline, {SLOWER} times slower, {what}"
    yield Figure(f"{how}: weight drawn", [each["weight"] for each in times], "ms", None if changes else 1000)
    yield Figure(f"{how}: tap answered", [each["tap"] for each in times], "ms", None if changes else 1000)


def _use(phone: Phone, server: Server, entries: int) -> None:
    """The whole garage on the phone, the app's files kept, and a few visits made."""
    page = phone.start()
    page.add_init_script(WATCH)
    page.goto(server.pairing_link() if entries else server.address)
    page.locator(".weight-now .figure").wait_for(timeout=LONG)
    while page.evaluate("entriesHeld()") < entries:
        page.wait_for_timeout(200)
    phone.is_installed()
    phone.close()
    for _time in range(USED_BEFORE):
        phone.open().wait_for_timeout(STAYED)
        phone.close()


def _cold_start(phone: Phone) -> dict[str, float]:
    page = phone.start()
    page.add_init_script(WATCH)
    _slow_down(page)
    page.goto(phone.origin)
    times: dict[str, float] = page.evaluate("firstScreen")
    phone.close()
    return times


def _slow_down(page: Page) -> None:
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
