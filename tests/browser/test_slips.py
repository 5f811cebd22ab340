"""Slips of a thumb at the scale: the unit is the display's, and what it could not have shown is asked about."""

import re

from playwright.sync_api import Locator, Page, expect

from tests.browser.doing import Thumb, go, join, press


def in_pounds(page: Page) -> Thumb:
    """A garage that thinks in pounds, on a phone that has no scale yet."""
    thumb = Thumb(page)
    thumb.type("What is the car called?", "Coupe")
    page.get_by_role("radio", name="Pounds", exact=True).check()
    thumb.tap("button", "Next: your scale")
    thumb.tap("button", "Weigh the first part")
    expect(page.get_by_role("heading", name="Weigh a part")).to_be_visible()
    return thumb


def add_scale(page: Page, display: str, kind: str, capacity: str = "") -> None:
    """A scale named by its display first."""
    go(page, "#/scale/new")
    page.get_by_role("radio", name=display, exact=True).tap()
    page.get_by_role("combobox", name="Kind").select_option(kind)
    if capacity:
        page.get_by_role("textbox", name="Most it can weigh").fill(capacity)
    page.get_by_role("button", name="Save").tap()
    expect(page.get_by_text("Checks against known masses")).to_be_visible()


def display_of(page: Page) -> Locator:
    return page.get_by_role("textbox", name=re.compile("^The scale shows"))


def test_a_metric_scale_in_a_pound_garage_is_read_in_kilograms(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    thumb = in_pounds(page)
    add_scale(page, "4.27 kg, steps of 0.01 kg", "Hanging scale")
    go(page, "#/weigh-part")
    page.get_by_role("button", name=re.compile("^How it is weighed")).tap()
    page.get_by_role("combobox", name="On which scale").select_option("Hanging scale")
    page.get_by_role("button", name="Done").tap()
    expect(page.get_by_role("button", name="kg", exact=True)).to_have_attribute("aria-pressed", "true")
    assert page.get_by_role("button", name="1/8, an eighth").count() == 0  # its display knows no fractions
    press(page, ["1", "3", "Point", "2"])
    thumb.tap("button", "Clear")
    expect(display_of(page)).to_have_value("")
    press(page, ["5", "Point", "9", "9"])
    page.get_by_role("textbox", name="What is it?").fill("Spare wheel")
    page.get_by_role("button", name="Save weighing").tap()
    expect(page.get_by_text("The scale showed 5.99 kg")).to_be_visible()

    thumb.tap("button", "Weigh another")
    press(page, ["2"])
    expect(page.get_by_text("2 kg · 4.4 lb")).to_be_visible()  # and so it stays
