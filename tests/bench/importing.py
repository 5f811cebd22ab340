"""`tarebook import` of 5,000 lines into an empty garage, the whole command; and the same file once more."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from time import perf_counter

from tests.bench.figure import Figure
from tests.bench.garage import garage
from tests.bench.workshop import AppServer, Workshop

LINES = 5000


def figures(shop: Workshop) -> Iterator[Figure]:
    sheet = shop.new_folder() / "lines.csv"
    sheet.write_text(_sheet())
    first, again = [], []
    for _run in range(shop.runs):
        home = AppServer(shop.new_folder(), shop.app)
        first.append(_seconds(home, sheet))
        again.append(_seconds(home, sheet))
    yield Figure("import of 5,000 lines", first, "s")
    yield Figure("import of 5,000 lines, all of them known", again, "s")


def _seconds(home: AppServer, sheet: Path) -> float:
    started = perf_counter()
    home.run("import", "--yes", str(sheet))
    return perf_counter() - started


def _sheet() -> str:
    shown = [change["set"]["shown"] for change in garage(LINES, LINES)[-LINES:]]
    lines = [f"Part {n},{mass},,,1,Stage {n % 6},,0.5,,line {n}" for n, mass in enumerate(shown, 1)]
    return "\n".join(["part,off,on,unit,quantity,stage,zone,hours,money,note", *lines, ""])
