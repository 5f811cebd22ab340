"""What stops a form is shown where it is, and what was found wrong leads to what it was found by."""

import re

from playwright.sync_api import Page, expect

from tests.browser.doing import begin, go, join, press

NARROW = {"viewport": {"width": 320, "height": 700}, "is_mobile": True, "has_touch": True}
LONG = "Unbelievablylongnameofasinglepart" * 3


def in_sight(page: Page, name: str) -> bool:
    """Whether a field is between the top of the page and the save button, not behind it."""
    box = page.get_by_role("textbox", name=name).bounding_box()
    dock = page.locator(".dock").bounding_box()
    assert box
    assert dock
    return box["y"] > 0 and box["y"] + box["height"] <= dock["y"]


def test_a_place_no_car_reaches_stops_the_save_and_is_shown_although_it_was_folded_away(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    begin(page, "Coupe", "980 kg")
    press(page, ["6", "oz"])
    page.get_by_role("textbox", name="What is it?").fill("Bonnet prop")
    page.get_by_text(re.compile("Bolts, zone, when, note")).click()
    along = page.get_by_role("textbox", name="Or measured: from the front axle")
    along.fill("60 m")
    page.get_by_text(re.compile("Bolts, zone, when, note")).click()
    expect(along).not_to_be_visible()
    page.get_by_role("button", name="Save weighing").click()
    expect(page.get_by_role("alert")).to_contain_text("more than a car is long")
    expect(along).to_be_visible()
    assert in_sight(page, "Or measured: from the front axle")

    along.fill("600 mm")
    page.get_by_role("radio", name="Ahead of it").check()
    page.get_by_role("button", name="Save weighing").click()
    expect(page.get_by_text("Sits: 600 mm ahead of the front axle")).to_be_visible()


def test_what_it_is_comes_out_from_under_the_save_button_when_it_is_missing(garage, make_phone):
    page = join(make_phone("anna", garage, **NARROW), garage)
    begin(page, "Coupe", "980 kg")
    press(page, ["6", "oz"])
    page.get_by_role("button", name="Save weighing").click()
    expect(page.get_by_role("alert")).to_have_text("Say what it is.")
    assert in_sight(page, "What is it?")


def test_a_minimum_that_is_no_mass_stops_the_first_start(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    page.get_by_role("textbox", name="What is the car called?").fill("Coupe")
    minimum = page.get_by_role("textbox", name="The class minimum, if you know it")
    minimum.fill("12 psi")
    page.get_by_role("button", name="Next: your scale").click()
    expect(page.get_by_text(re.compile("The class minimum: .*psi"))).to_be_visible()
    minimum.fill("980 kg")
    page.get_by_role("button", name="Next: your scale").click()
    expect(page.get_by_role("heading", name="Which scale is at hand?")).to_be_visible()


def test_a_name_without_a_space_makes_no_page_wider(garage, make_phone):
    page = join(make_phone("anna", garage, **NARROW), garage)
    begin(page, LONG, "980 kg")
    press(page, ["6", "oz"])
    page.get_by_role("textbox", name="What is it?").fill(LONG)
    page.get_by_role("button", name="Save weighing").click()
    expect(page.get_by_text("Saved on this phone.")).to_be_visible()
    for address in ("#/weigh", "#/weigh-part", "#/donor/new", "#/weigh-car"):
        go(page, address)
        expect(page.get_by_role("heading", level=1)).to_be_visible()
        assert page.evaluate("document.documentElement.scrollWidth") <= 320, address


def test_a_gap_between_two_weigh_ins_leads_to_both_of_them_and_to_the_jobs_between(demo, make_phone):
    page = make_phone("anna", demo).open()
    page.get_by_role("link", name="Look at the last weigh-in").click()
    against = page.get_by_role("region", name="Against the weigh-in before")
    expect(against.get_by_text("more is in the car than written down")).to_be_visible()
    expect(against.get_by_role("link", name=re.compile("^Weigh-in of "))).to_be_visible()
    expect(against.get_by_text("done between").first).to_be_visible()
    expect(against.get_by_text("By the scales")).to_be_visible()
