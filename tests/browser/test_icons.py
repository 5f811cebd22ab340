"""The committed icons are what their drawing looks like."""

from io import BytesIO

from PIL import Image, ImageChops
from playwright.sync_api import Playwright

from tests import icons

EDGE = 48  # of 255: another browser may smooth an edge a little otherwise


def test_every_icon_is_the_drawing(playwright: Playwright) -> None:
    for name, png in icons.drawn(playwright).items():
        kept, drawn = (Image.open(source).convert("RGBA") for source in (icons.FOLDER / name, BytesIO(png)))
        assert kept.size == drawn.size, name
        on_white = [Image.alpha_composite(Image.new("RGBA", each.size, "white"), each) for each in (kept, drawn)]
        unlike = ImageChops.difference(*on_white).convert("L").point(lambda value: 255 * (value > EDGE))
        assert unlike.getbbox() is None, name
