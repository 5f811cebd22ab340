"""Photos: one of 12 megapixels made small on the phone, and forty small ones on their way to the home computer."""

from __future__ import annotations

import base64
import io
from collections.abc import Iterator

from PIL import Image

from tests.bench.figure import Figure
from tests.bench.garage import garage
from tests.bench.workshop import Workshop, in_page

CAMERA = (4032, 3024)
QUALITY = 88
SENT, SENT_SIZE = 40, (1600, 1200)
MEGABYTE = 1_000_000


def figures(shop: Workshop) -> Iterator[Figure]:
    camera = _as_text(_picture(CAMERA, 0))
    pictures = [_picture(SENT_SIZE, number) for number in range(SENT)]
    shrunk: list[float] = []
    rates: list[float] = []
    part = garage(1, 0)
    of = next(change["record"] for change in part if change["kind"] == "part")
    for _run in range(shop.runs):
        with shop.server() as server, shop.joined(server) as (_phone, page):
            shrunk.extend(in_page(page, "bench.shrinkPhoto(it, 3)", camera))
            in_page(page, "bench.holdSync(bench.garageId())")
            in_page(page, "bench.saveAll(it)", part)
            for picture in pictures:
                in_page(page, "bench.savePhoto(it)", {"of": of, "base64": _as_text(picture)})
            seconds = in_page(page, "bench.sendAll()") / 1000
            rates.append(sum(map(len, pictures)) / MEGABYTE / seconds)
    yield Figure(f"a photo of 12 megapixels ({len(camera) * 3 / 4 / MEGABYTE:.1f} MB) made small", shrunk, "ms")
    yield Figure(f"{SENT} photos of {len(pictures[0]) // 1000} kB to the home computer", rates, "MB/s", 6.8, "more")


def _picture(size: tuple[int, int], number: int) -> bytes:
    """A JPEG with about as much in it as a camera's: a coarse grain over a gradient, another one for each number."""
    grain = Image.effect_noise((size[0] // 3, size[1] // 3), 60 + number).resize(size)
    picture = Image.merge("RGB", (grain, Image.linear_gradient("L").resize(size), grain.rotate(180)))
    written = io.BytesIO()
    picture.save(written, "JPEG", quality=QUALITY)
    return written.getvalue()


def _as_text(data: bytes) -> str:
    return base64.b64encode(data).decode()
