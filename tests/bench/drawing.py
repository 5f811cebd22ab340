"""One of three hundred weights dragged over the car on a slowed processor: script time a frame, by Chromium's trace.

A frame's script is whatever ran from the end of one frame's callback to the end of the next: pointer events and the
callback, in time the page's thread had the processor, so that what else the machine does is not in it.
"""

from __future__ import annotations

import random
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import cos, sin
from statistics import quantiles
from typing import Any

from playwright.sync_api import CDPSession, Page

from tests.bench.figure import Figure
from tests.bench.garage import Change, garage
from tests.bench.workshop import LONG, Workshop

PARTS, SLOWER = 300, 4
MOVES, PAUSE = 180, 16  # touches, milliseconds
CAR = {
    "wheelbase": "2420 mm", "track_front": "1430 mm", "track_rear": "1395 mm", "beltline": "880 mm",
    "length": "3720 mm", "width": "1600 mm", "height": "1290 mm", "front_overhang": "690 mm",
}  # fmt: skip
SCRIPT = frozenset(
    ("EventDispatch", "FireAnimationFrame", "FunctionCall", "TimerFire", "RunMicrotasks", "EvaluateScript")
)


@dataclass(frozen=True)
class Ran:
    """A stretch of script, in microseconds of its thread's own clock."""

    name: str
    start: float
    end: float


def figures(shop: Workshop) -> Iterator[Figure]:
    with (
        shop.server(shop.app, filled=placed(garage(PARTS, 2 * PARTS))) as server,
        shop.joined(server) as (_phone, page),
    ):
        page.goto(server.address + "/#/balance")
        page.get_by_text(f"Every weight on the drawing: {PARTS}").click(timeout=LONG)
        page.locator(".disclosure .row").first.click()
        page.get_by_role("button", name="Move it").click()
        frames = [script_in_frames(_trace_of_drag(page)) for _run in range(shop.runs)]
    what = f"dragging one of {PARTS} weights, {SLOWER} times slower: script in a frame"
    yield Figure(f"{what}, p95", [quantiles(each, n=20)[-1] for each in frames], "ms", 16)
    yield Figure(f"{what}, most", [max(each) for each in frames], "ms")


def placed(changes: list[Change]) -> list[Change]:
    """The garage with the car's dimensions, and every part measured somewhere in it."""
    chance = random.Random(PARTS)
    for change in changes:
        if change["kind"] == "car":
            change["set"] |= CAR
        if change["kind"] == "part":
            x, y, z = chance.randint(-600, 2900), chance.randint(-700, 700), chance.randint(150, 1200)
            change["set"] |= {"x": f"{x} mm", "y": f"{y} mm", "z": f"{z} mm"}
    return changes


def _trace_of_drag(page: Page) -> list[dict[str, Any]]:
    """A finger slides over the car in loops, and lifts; the trace's events."""
    browser = page.context.new_cdp_session(page)
    ground = page.locator(".ground-under[data-view=top]")
    ground.scroll_into_view_if_needed()
    box = ground.bounding_box()
    assert box is not None
    middle = (box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
    path = [(middle[0] + 60 * sin(n / 9), middle[1] + 120 * cos(n / 13)) for n in range(MOVES)]
    browser.send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
    events: list[dict[str, Any]] = []
    browser.on("Tracing.dataCollected", lambda data: events.extend(data["value"]))
    browser.send("Tracing.start", {"transferMode": "ReportEvents", "categories": "devtools.timeline"})
    _slide(page, browser, path)
    done: list[bool] = []
    browser.on("Tracing.tracingComplete", lambda _data: done.append(True))
    browser.send("Tracing.end")
    while not done:
        page.wait_for_timeout(50)
    browser.send("Emulation.setCPUThrottlingRate", {"rate": 1})
    return events


def _slide(page: Page, browser: CDPSession, path: Sequence[tuple[float, float]]) -> None:
    def touch(kind: str, points: list[dict[str, float]]) -> None:
        browser.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})

    for number, (x, y) in enumerate(path):
        touch("touchMove" if number else "touchStart", [{"x": x, "y": y}])
        page.wait_for_timeout(PAUSE)
    touch("touchEnd", [])
    page.wait_for_timeout(200)


def script_in_frames(events: Sequence[dict[str, Any]]) -> list[float]:
    """Milliseconds of script from callback to callback, and after the last, on the thread that had most of them."""
    callbacks = [(event["pid"], event["tid"]) for event in events if event["name"] == "FireAnimationFrame"]
    thread = max(set(callbacks), key=callbacks.count)
    own = [event for event in events if (event["pid"], event["tid"]) == thread and event.get("ph") == "X"]
    ran = [Ran(e["name"], e["tts"], e["tts"] + e["tdur"]) for e in own if e["name"] in SCRIPT and "tdur" in e]
    ends = sorted(each.end for each in ran if each.name == "FireAnimationFrame")
    frames = [0.0] * (len(ends) + 1)
    for start, end in _apart(ran):
        frames[sum(1 for each in ends if each < end)] += (end - start) / 1000
    return frames[1:]


def _apart(ran: Sequence[Ran]) -> Iterator[tuple[float, float]]:
    """The stretches without what runs inside another: a callback holds the calls it makes."""
    reached = 0.0
    for each in sorted(ran, key=lambda one: (one.start, -one.end)):
        if each.end > reached:
            yield max(each.start, reached), each.end
            reached = each.end
