"""Out of range in the middle of things: a home computer that hangs keeps nobody waiting, and nothing is sent twice."""

import hashlib
import re
from pathlib import Path

import pytest
from PIL import Image
from playwright.sync_api import expect

from tests.browser.doing import begin, in_sync, join, weigh

# Long enough for every request that was on its way to be given up. Seen to work with 120 s too.
FROZEN_FOR = 12_000  # ms
PIECE = 256 * 1024


def grainy(folder: Path) -> Path:
    """A picture that no compression makes small: it goes up in several pieces."""
    path = folder / "grainy.jpg"
    Image.effect_noise((1600, 1200), 60).convert("RGB").save(path, quality=85)
    return path


@pytest.fixture
def pieces(server):
    """Freezes the server when the second piece of a photo is on its way; gives the offsets of the pieces sent."""
    offsets: list[int] = []

    def on_the_way(route):
        offsets.append(int(route.request.headers["upload-offset"]))
        if len(offsets) == 2:
            server.freeze()
        route.continue_()

    return offsets, on_the_way


def test_a_home_computer_that_freezes_in_the_middle_of_a_photo_gets_it_once_and_whole(
    server, make_phone, tmp_path, pieces
):
    offsets, on_the_way = pieces
    phone = make_phone("anna", server)
    page = join(phone, server)
    begin(page, "Coupe", "980 kg")
    in_sync(page)
    phone.context.route("**/api/v1/uploads/*", on_the_way)
    weigh(page, "Spare wheel", ["1", "1", "Point", "3", "kg"], grainy(tmp_path))
    words = page.locator(".sync-words").first
    expect(words).to_have_text(re.compile(r"^Keep open: 1 photo still going up, \d+ % done$"))
    expect(words).to_have_text("Photos on this phone only (1)", timeout=30_000)
    page.wait_for_timeout(FROZEN_FOR)
    server.thaw()
    in_sync(page)

    photos = server.folder / "data" / "photos"
    [kept] = [path for path in photos.glob("??/*") if path.suffix != ".thumb"]
    assert hashlib.sha256(kept.read_bytes()).hexdigest() == kept.name
    assert list((photos / "uploads").iterdir()) == []
    assert kept.stat().st_size > PIECE
    assert offsets[:2] == [0, PIECE]
    assert 0 not in offsets[1:]
