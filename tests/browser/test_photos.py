"""Photos of records: what is no picture is said in a sentence."""

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.doing import begin, go, join

PICTURES = Path(__file__).resolve().parents[2] / "fixtures" / "pictures"


@pytest.fixture
def page(garage, make_phone):
    """A phone with a car, and no part yet."""
    page = join(make_phone("anna", garage), garage)
    begin(page, "Coupe", "980 kg")
    return page


def choose(page: Page, *files: Path) -> None:
    """From the phone's own pictures, one after the other."""
    for file in files:
        page.locator('input[data-photo="library"]').set_input_files(file)


def test_a_heic_that_this_engine_cannot_open_is_told_how_to_become_a_jpeg(page, tmp_path):
    cut, text = tmp_path / "cut.heic", tmp_path / "seat.heic"
    cut.write_bytes((PICTURES / "red.heic").read_bytes()[:300])
    text.write_text("A text that somebody named so.")
    go(page, "#/weigh-part")
    choose(page, PICTURES / "red.heic")
    expect(page.get_by_text("This is a HEIC picture, which cannot be read here.")).to_be_visible()
    expect(page.get_by_text("Settings > Camera > Formats > Most Compatible")).to_be_visible()
    choose(page, cut)
    expect(page.get_by_text("This picture is cut short.")).to_be_visible()
    choose(page, text)
    expect(page.get_by_text("This file is not a picture.")).to_be_visible()
    choose(page, PICTURES / "red.avif")  # this engine opens it
    expect(page.get_by_alt_text("The photo just taken")).to_be_visible()
