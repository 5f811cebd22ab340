"""Ballast at eight places on a slowed phone: up to forty blocks each, every preference, with and without ranges."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import asdict
from random import Random
from statistics import median, quantiles
from typing import Any

from tests.bench.figure import Figure
from tests.bench.workshop import Workshop, in_page
from tests.core.ballast_asked import CAR, instance

SEED, QUESTIONS, SLOWER = 20_261_125, 300, 4


def figures(shop: Workshop) -> Iterator[Figure]:
    asked = questions()
    runs = [_run(shop, asked) for _run_number in range(shop.runs)]
    took = [[each["took"] for each in run] for run in runs]
    what = f"ballast with 8 places, phone {SLOWER} times slower, {len(asked)} questions"
    yield Figure(f"{what}: p50", [median(run) for run in took], "ms", 50)
    yield Figure(f"{what}: p95", [quantiles(run, n=20)[-1] for run in took], "ms", 50)
    yield Figure(f"{what}: most", [max(run) for run in took], "ms")
    yield Figure(f"{what}: proven best", [100 * sum(each["proven"] for each in run) / len(run) for run in runs], "%")


def questions() -> list[dict[str, Any]]:
    random = Random(SEED)
    made = (instance(random) for _ in range(QUESTIONS))
    return [
        {"car": asdict(CAR), "places": [asdict(place) for place in places], "wanted": asdict(wanted)}
        for places, wanted in made
    ]


def _run(shop: Workshop, asked: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """Every question once, in an app that was just opened."""
    with shop.server(shop.app_with_hand, "--demo") as server, shop.phone(server) as phone:
        page = phone.open()
        page.wait_for_function("globalThis.bench !== undefined")
        browser = page.context.new_cdp_session(page)
        browser.send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
        answers: list[dict[str, Any]] = in_page(page, "bench.choose(it)", asked)
        browser.send("Emulation.setCPUThrottlingRate", {"rate": 1})
    return answers
