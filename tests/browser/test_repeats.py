"""Reading the same thing again: a tap and the figure, the odd one named and left out at one tap, the scale's record."""

import re

from playwright.sync_api import Locator, Page, expect

from tests.browser.axe import DARK, LIGHT, faults_of
from tests.browser.doing import Thumb, begin, go, in_sync, join, press, said, weigh


def again(page: Page) -> Locator:
    return page.get_by_role("region", name=re.compile("^Read again"))


def add_scale(page: Page, kind: str, display: str) -> None:
    go(page, "#/scale/new")
    page.get_by_role("combobox", name="Kind").select_option(kind)
    page.get_by_role("radio", name=display, exact=True).check()
    expect(page.get_by_text("Checks against known masses")).to_be_visible()


def test_a_part_read_three_times_takes_a_tap_a_reading_and_the_odd_one_is_left_out_and_taken_back(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    begin(page, "Coupe", "900 kg")
    weigh(page, "Tow hook", [*"1203", "g"])
    thumb = Thumb(page)
    thumb.tap("button", "Again: lift it off and on")
    for n, figure in enumerate(("1203", "1204", "1453"), 2):
        before = thumb.taps
        thumb.press(list(figure))
        thumb.tap("button", "And again")
        assert thumb.taps - before == len(figure) + 1
        expect(again(page)).to_contain_text(f"mean of {n}")
    expect(again(page)).to_contain_text("4th reading: 1453 g is 250 g more than the others.")
    expect(page.locator(".figure").first).to_contain_text("1.2")
    assert faults_of(page, "read again", LIGHT, DARK) == []
    thumb.tap("button", "That is all")
    again(page).get_by_role("note").get_by_role("button", name="Leave it out").tap()
    expect(again(page)).to_contain_text("4th reading, left out")
    expect(again(page)).not_to_contain_text("more than the others")
    expect(again(page)).to_contain_text("mean of 3, within 1 g")
    expect(said(page)).to_have_text("A reading left out")
    thumb.tap("button", "Take it back in")
    expect(again(page)).to_contain_text("more than the others")


def test_each_wheel_three_times_names_the_one_that_is_off_and_the_scales_record_learns(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    begin(page, "Coupe", "900 kg")
    add_scale(page, "Four corner scales", "82.4 kg, steps of 0.1 kg")
    go(page, "#/weigh-car")
    page.get_by_role("combobox", name="On which scales").select_option("Four corner scales")
    # Invented readings: four wheels, each three times; the right front's third is 250 g off.
    wheels = {"Left front": "251.3", "Right front": "243.8", "Left rear": "210.2", "Right rear": "198.6"}
    for name, shown in wheels.items():
        page.get_by_role("textbox", name=name).fill(shown)
    page.get_by_role("button", name="Save weigh-in").click()
    expect(page.get_by_text("Saved on this phone.")).to_be_visible()
    page.get_by_role("button", name="Again: roll it off and on").click()
    for change in ({"Right front": "243.9"}, {"Right front": "244.1"}):
        for name, shown in {**wheels, **change}.items():
            again(page).get_by_role("textbox", name=name).fill(shown)
        again(page).get_by_role("button", name="And again").click()
        expect(again(page).get_by_role("textbox", name="Left front")).to_have_value("")
    expect(again(page)).to_contain_text("Right front, 3rd reading: 244.1 kg is 0.25 kg more than the others.")
    expect(page.locator(".trail-head .figure")).to_contain_text("904")
    assert faults_of(page, "wheels read again", LIGHT, DARK) == []
    again(page).get_by_role("button", name="That is all").click()
    again(page).get_by_role("note").get_by_role("button", name="Leave it out").click()
    expect(again(page)).to_contain_text("Right front, 3rd reading, left out")
    in_sync(page)
    page.get_by_role("link", name=re.compile("^Four corner scales")).click()
    expect(page.get_by_text(re.compile(r"^The whole car repeats to [\d.]+ kg, from 8 readings\.$"))).to_be_visible()


def test_two_readings_far_apart_ask_for_a_third(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    begin(page, "Coupe", "900 kg")
    weigh(page, "Tow hook", [*"1203", "g"])
    page.get_by_role("button", name="Again: lift it off and on").tap()
    press(page, list("1453"))
    page.get_by_role("button", name="That is all").tap()
    expect(again(page)).to_contain_text("The two differ by 250 g, more than this scale should.")
