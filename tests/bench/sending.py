"""5,000 entries from one phone to the home computer, and from there into another phone: the app's own steps of sync, in
a real browser with its real store, against a real `tarebook serve`.
"""

from __future__ import annotations

from collections.abc import Iterator

from playwright.sync_api import Page, expect

from tests.bench.figure import Figure
from tests.bench.garage import garage
from tests.bench.workshop import AppServer, Workshop, in_page

ENTRIES = 5000
CHANGES = garage(parts=800, weighings=ENTRIES)[:ENTRIES]
NOTHING_TIMES = 20


def figures(shop: Workshop) -> Iterator[Figure]:
    pushed, taken_back, pulled, nothing = [], [], [], []
    for _run in range(shop.runs):
        with shop.server() as server, shop.joined(server) as (_writer, page):
            _written(server, page)
            pushed.append(_a_second(in_page(page, "bench.pushAll()")))
            taken_back.append(_a_second(in_page(page, "bench.pullAll()")))
            nothing.extend(in_page(page, "bench.syncNothing(it)", NOTHING_TIMES))
            with shop.phone(server) as other:
                reader = _empty(server, other.open(), in_page(page, "bench.garageId()"))
                pulled.append(_a_second(in_page(reader, "bench.pullAll()")))
                in_page(reader, "bench.hasRecords(it)", ENTRIES)
    yield Figure("push, 5,000 entries", pushed, "/s", 1400, "more")
    yield Figure("pull and apply, 5,000 entries of another phone", pulled, "/s", 1500, "more")
    yield Figure("pull and apply, 5,000 own entries come back", taken_back, "/s")
    yield Figure("no-op sync, 5,000 entries held", nothing, "ms", 100)


def _written(server: AppServer, page: Page) -> None:
    """All entries on the phone and none at home; sync stands still."""
    server.kill()
    in_page(page, "bench.saveAll(it)", CHANGES)
    in_page(page, "bench.holdSync(bench.garageId())")
    server.start()


def _empty(server: AppServer, page: Page, garage_id: str) -> Page:
    """A phone that has joined and read nothing yet; sync stands still."""
    in_page(page, "bench.holdSync(it)", garage_id)
    in_page(page, "void (location.hash = it)", "#" + server.pairing_link().partition("#")[2])
    expect(page.get_by_role("navigation", name="Main")).to_be_visible()
    return page


def _a_second(milliseconds: float) -> float:
    return ENTRIES / milliseconds * 1000
