"""What the first screen weighs, gzipped: every file a start of the app asks for until the weight stands there."""

from __future__ import annotations

import gzip
from collections.abc import Iterator
from pathlib import Path
from urllib.parse import urlsplit

from playwright.sync_api import Page

from tests.bench.figure import Figure
from tests.bench.workshop import Workshop

KILOBYTE = 1000
KINDS = {".js": "scripts", ".css": "styles"}


def figures(shop: Workshop) -> Iterator[Figure]:
    asked: list[str] = []
    with shop.server(shop.app, "--demo") as server, shop.phone(server) as phone:
        _wait(phone.open())  # has joined, and holds the garage
        phone.close()
        page = phone.start()
        page.on("request", lambda request: asked.append(urlsplit(request.url).path))
        page.goto(server.address)
        _wait(page)
    files = sorted({path for path in asked if not path.startswith("/api/")})
    sizes = {path: _gzipped(shop.app / (path.lstrip("/") or "index.html")) for path in files}
    yield Figure(f"first screen, {len(files)} files gzipped", [sum(sizes.values()) / KILOBYTE], "kB", 100)
    for ending, name in KINDS.items():
        of_kind = [size for path, size in sizes.items() if path.endswith(ending)]
        yield Figure(f"  of which {len(of_kind)} {name}", [sum(of_kind) / KILOBYTE], "kB")


def _wait(page: Page) -> None:
    page.locator(".weight-now .figure").wait_for()


def _gzipped(file: Path) -> int:
    return len(gzip.compress(file.read_bytes(), 9))
