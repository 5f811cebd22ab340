"""Taps and keys of the daily jobs, counted by a thumb on a phone of 390x844; each count is printed at the end."""

import re

from playwright.sync_api import Page, expect

from tests.browser import closing
from tests.browser.doing import Thumb, begin, go, join, said, weigh

SWAP, PART, DONOR, CORNERS, MARGIN = 14, 3, 6, 12, 1


def said_of(what: str, thumb: Thumb, most: int, reading: int = 0) -> None:
    """The count stands in the closing lines; more than the most fails. `reading`: taps that typed it, beside those."""
    also = f", and {reading} for the reading" if reading else ""
    closing.lines.append(f"{what}: {thumb.taps - reading} taps and {thumb.keys} keys{also} (at most {most})")
    assert thumb.taps - reading + thumb.keys <= most


def home_again(page: Page) -> Thumb:
    """A thumb that begins at the car, with the last act out of sight."""
    go(page, "#/car")
    expect(page.get_by_role("region", name="Weight now")).to_be_visible()
    return Thumb(page)


def test_a_swap_takes_at_most_fourteen_taps_without_a_scroll_and_is_undone_as_one(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    begin(page, "Coupe", "980 kg")
    weigh(page, "Battery", ["1", "8", "kg"])
    thumb = home_again(page)
    thumb.tap("link", "Weigh")
    thumb.tap("link", re.compile("^A swap"))
    thumb.tap("button", re.compile("^Battery"))
    thumb.press(["1", "8", "Point", "2"])
    thumb.tap("button", "Next: what goes on")
    expect(page.get_by_role("textbox", name=re.compile("^The scale shows"))).to_be_focused()
    thumb.press(["4", "Point", "1"])
    thumb.tap("button", "Fitted")
    expect(page.get_by_role("heading", name="Battery swap")).to_be_visible()
    assert thumb.scrolled == 0
    said_of("A swap", thumb, SWAP)
    page.get_by_role("link", name="Open the job").click()
    expect(page.get_by_text(re.compile(r"^off 18.+ on 4\.1"))).to_be_visible()
    expect(said(page)).to_contain_text("Battery swap added, with 5 more")
    page.get_by_role("button", name="Undo").click()
    go(page, "#/parts")
    expect(page.get_by_text("Battery, new")).to_have_count(0)
    expect(page.get_by_text("Battery", exact=True)).to_be_visible()
    go(page, "#/jobs")
    expect(page.get_by_text("Battery swap", exact=True)).to_have_count(0)


def test_a_known_part_is_weighed_on_the_same_scale_in_three_taps_beside_the_reading(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    begin(page, "Coupe", "980 kg")
    weigh(page, "Battery", ["1", "8", "kg"])
    thumb = home_again(page)
    thumb.tap("link", "Weigh")
    thumb.tap("link", re.compile("^Battery.*Weigh it"))
    reading = ["1", "8", "Point", "1"]
    thumb.press(reading)
    thumb.tap("button", "Save weighing")
    expect(page.get_by_text("Saved on this phone.")).to_be_visible()
    said_of("A part on the same scale", thumb, PART, len(reading))


def test_a_donor_part_is_compared_in_six_taps_beside_the_reading(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    begin(page, "Coupe", "980 kg")
    weigh(page, "Seat", ["1", "8", "kg"])
    thumb = home_again(page)
    thumb.tap("link", "Yard")
    thumb.tap("link", "Note a donor part")
    thumb.tap("button", re.compile("^Seat"))
    thumb.tap("textbox", re.compile("^The scale shows"))
    thumb.press(["1", "1"])
    expect(page.get_by_text(re.compile("^saves 7"))).to_be_visible()
    said_of("A donor part compared", thumb, DONOR, 2)


def test_corners_are_weighed_in_twelve_taps_beside_the_readings_and_the_margin_is_one_tap_away(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    begin(page, "Coupe", "980 kg")
    thumb = home_again(page)
    thumb.tap("link", "Weigh")
    thumb.tap("link", "The whole car")
    thumb.tap("radio", "Corners")
    readings = 0
    for corner, shown in {"Left front": "251", "Right front": "248", "Left rear": "262", "Right rear": "257"}.items():
        thumb.tap("textbox", re.compile(f"^{corner}"))
        thumb.press(list(shown))
        readings += len(shown)
    thumb.tap("button", "Save weigh-in")
    expect(page.get_by_text("Saved on this phone.")).to_be_visible()
    said_of("A corner weigh-in", thumb, CORNERS, readings)
    thumb = Thumb(page)
    thumb.tap("link", "Car")
    expect(page.locator(".margin")).to_contain_text("the minimum")
    said_of("The margin", thumb, MARGIN)
