"""The committed icons are what their script draws."""

import draw_icons
import pytest
from PIL import Image, ImageChops


def test_the_drawing_is_what_the_script_draws():
    assert (draw_icons.FOLDER / "tarebook.svg").read_text() == draw_icons.as_svg()


@pytest.mark.parametrize(("name", "drawn"), draw_icons.pictures().items())
def test_a_picture_is_what_the_script_draws(name, drawn):
    kept = Image.open(draw_icons.FOLDER / name).convert("RGBA")
    bands = ImageChops.difference(kept, drawn).split()
    assert all(
        band.point(lambda value: value > 8).getbbox() is None for band in bands
    )  # of 255: another version of Pillow may smooth an edge a little otherwise
