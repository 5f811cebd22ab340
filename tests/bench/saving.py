"""Saving one weighing, until it may be called saved: the real `save`, one strict transaction each, at its screen."""

from __future__ import annotations

from collections.abc import Iterator
from statistics import median, quantiles

from tests.bench.figure import Figure
from tests.bench.garage import garage
from tests.bench.workshop import Workshop, in_page

SAVES = 200
PAUSE = 20  # milliseconds between two saves: nobody weighs faster
PARTS = 500
GARAGE = garage(PARTS, 2000 + SAVES)
HELD, SAVED = GARAGE[:-SAVES], GARAGE[-SAVES:]


def figures(shop: Workshop) -> Iterator[Figure]:
    for where, is_reached in (("no server", False), ("server in reach", True)):
        times = [_saves(shop, is_reached) for _run in range(shop.runs)]
        yield Figure(f"save one weighing of {len(HELD):,}, {where}: p50", [median(each) for each in times], "ms")
        yield Figure(f"save one weighing of {len(HELD):,}, {where}: p95", [_p95(each) for each in times], "ms", 20)


def _p95(times: list[float]) -> float:
    return quantiles(times, n=20)[-1]


def _saves(shop: Workshop, is_reached: bool) -> list[float]:
    with shop.server(filled=HELD) as server, shop.joined(server) as (_phone, page):
        page.goto(server.address + "/#/weigh-part")
        in_page(page, "bench.hasRecords(it)", len(HELD))
        if not is_reached:
            server.kill()
        times: list[float] = in_page(page, f"bench.saveEach(it, {PAUSE})", SAVED)
        return times
