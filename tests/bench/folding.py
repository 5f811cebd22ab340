"""A journal of 10,000 weighings folded from its texts: in the phone's browser, not slowed, and by the server."""

from __future__ import annotations

from collections.abc import Iterator
from time import perf_counter

from tarebook.journal.fold import Fold
from tests.bench.figure import Figure
from tests.bench.garage import entry_texts, garage
from tests.bench.workshop import Workshop, in_page

WEIGHINGS = 10_000


def figures(shop: Workshop) -> Iterator[Figure]:
    texts = entry_texts(garage(2000, WEIGHINGS)[-WEIGHINGS:])
    first, fold, board = [], [], []
    for _run in range(shop.runs):
        with shop.server(shop.app_with_hand, "--demo") as server, shop.phone(server) as phone:
            times = in_page(phone.open(), "bench.foldAll(it, 8)", texts)
        first.append(times["fold"][0])
        fold.extend(times["fold"][1:])
        board.extend(times["board"])
    yield Figure("fold 10,000 weighings, phone, first in the page", first, "ms", 100)
    yield Figure("fold 10,000 weighings, phone, again", fold, "ms", 100)
    yield Figure("  and lay out the garage for the screens", board, "ms")
    yield Figure("fold 10,000 weighings, server", [_python(texts) for _run in range(shop.runs)], "ms")


def _python(texts: list[str]) -> float:
    fold, started = Fold(), perf_counter()
    for number, text in enumerate(texts, 1):
        fold.add(number, text)
    return 1000 * (perf_counter() - started)
