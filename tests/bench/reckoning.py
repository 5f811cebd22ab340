"""From plain records to ledger and standing, for a large garage, in both languages; at first each text is read anew."""

from __future__ import annotations

from collections.abc import Iterator
from time import perf_counter

from tarebook.core.garage.garage import read_garage
from tarebook.core.ledger.ledger import ledger
from tarebook.core.standing.standing import standing
from tarebook.core.weighing.weighing import masses
from tarebook.garage.records import Records
from tests.bench.figure import Figure
from tests.bench.garage import garage, records, weighed_often
from tests.bench.workshop import Workshop, in_page

PARTS, WEIGHINGS = 2000, 10_000
FEWER, OFTEN = 5000, (2, 12, 60, 240)
AIMS = {"server": 600.0, "phone": 300.0}  # ms, of the most weigh-ins
WHAT = f"ledger and standing, {PARTS:,} parts, {WEIGHINGS:,} weighings"


def figures(shop: Workshop) -> Iterator[Figure]:
    lists = records(garage(PARTS, WEIGHINGS))
    first, again = [], []
    for _run in range(shop.runs):
        with shop.server(shop.app_with_hand, "--demo") as server, shop.phone(server) as phone:
            times = in_page(phone.open(), "bench.reckon(it, 8)", lists)
        first.append(times[0])
        again.extend(times[1:])
    yield Figure(f"{WHAT}: phone, first", first, "ms")
    yield Figure(f"{WHAT}: phone, again", again, "ms")
    yield Figure(f"{WHAT}: server", [_python(lists) for _run in range(shop.runs)], "ms")
    for count in OFTEN:
        yield from _by_weigh_ins(shop, count)


def _by_weigh_ins(shop: Workshop, count: int) -> Iterator[Figure]:
    often = weighed_often(records(garage(PARTS, FEWER)), count)
    name = f"standing, {PARTS:,} parts, {FEWER:,} weighings, {count} weigh-ins"
    aims = AIMS if count == OFTEN[-1] else {}
    yield Figure(f"{name}: server", [_standing(often) for _run in range(shop.runs)], "ms", aims.get("server"))
    with shop.server(shop.app_with_hand, "--demo") as server, shop.phone(server) as phone:
        times = in_page(phone.open(), f"bench.stand(it, {shop.runs + 1})", often)
    yield Figure(f"{name}: phone", times[1:], "ms", aims.get("phone"))


def _python(lists: Records) -> float:
    started = perf_counter()
    book = read_garage({**lists, "trim": "event"})
    known = masses(book)
    ledger(book, known)
    standing(book, known)
    return 1000 * (perf_counter() - started)


def _standing(lists: Records) -> float:
    """From the records read to the standing: masses, net of every job, and all weigh-ins together."""
    book = read_garage({**lists, "trim": "event"})
    started = perf_counter()
    standing(book)
    return 1000 * (perf_counter() - started)
