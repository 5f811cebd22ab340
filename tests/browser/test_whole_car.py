"""Weighing the whole car: results while typing, jobs confirmed, the trail afterwards; without a server too."""

import re

from playwright.sync_api import Page, expect

from tests.browser.doing import before_the_records, go
from tests.browser.phone import DESK

DRAFT_WITHIN = 500  # ms; a form is promised to be kept within 300 ms of the last change
CORNERS = {"Left front": "251", "Right front": "248.5", "Left rear": "212", "Right rear": "207.5"}


def type_corners(page: Page, corners: dict[str, str]) -> None:
    for name, shown in corners.items():
        page.get_by_role("textbox", name=name).fill(shown)


def test_a_weigh_in_shows_its_results_while_typing_and_keeps_the_jobs_confirmed_without_a_server(demo, make_phone):
    phone = make_phone("anna", demo, **DESK)
    page = phone.open()
    expect(page.get_by_role("navigation", name="Main")).to_be_visible()
    expect(page.locator(".weight-now")).to_be_visible()
    phone.is_installed()
    demo.kill()
    go(page, "#/weigh-car")
    type_corners(page, CORNERS)
    # 251 + 248.5 + 212 + 207.5 = 919 kg; front 499.5 / 919 = 54.35 %; left 463 / 919 = 50.38 %, by hand; good to 0.2 %.
    expect(page.locator(".outcome .figure")).to_contain_text("919")
    expect(page.locator(".shares")).to_contain_text("54.4")
    expect(page.locator(".shares")).to_contain_text("50.4")
    expect(page.locator(".outcome")).to_contain_text("above the minimum")

    page.get_by_role("button", name="Save weigh-in").click()
    expect(page.get_by_role("alert")).to_contain_text("tick that the list is right")
    page.get_by_role("checkbox", name="Small exhaust box").uncheck()
    page.get_by_role("checkbox", name="The list is right: I looked.").check()
    page.get_by_role("button", name="Save weigh-in").click()
    expect(page.get_by_role("group", name="Before it is kept")).to_contain_text("it cannot show 248.5 kg")
    page.get_by_role("button", name="Keep 248.5 kg as typed").click()
    expect(page.get_by_text("Saved on this phone.")).to_be_visible()
    then = page.get_by_role("region", name=re.compile("^Jobs then in the car"))
    expect(then.get_by_role("link").first).to_be_visible()
    expect(then.get_by_role("link", name="Small exhaust box")).to_have_count(0)


def test_a_missing_corner_and_more_fuel_than_the_tank_holds_are_said(demo, make_phone):
    page = make_phone("anna", demo, **DESK).open("/#/weigh-car")
    type_corners(page, {**CORNERS, "Right rear": ""})
    page.get_by_role("textbox", name="Fuel in the tank").fill("80 L")
    expect(page.get_by_text("The tank holds")).to_be_visible()
    page.get_by_role("button", name="Save weigh-in").click()
    expect(page.get_by_role("alert")).to_contain_text("Right rear is missing")
    page.wait_for_timeout(DRAFT_WITHIN)
    page.reload()
    expect(page.get_by_role("textbox", name="Left front")).to_have_value(re.compile("^251"))


def test_corners_that_come_to_nothing_like_the_last_weigh_in_are_asked_about_before_saving(demo, make_phone):
    page = make_phone("anna", demo, **DESK).open("/#/weigh-car")
    type_corners(page, {"Left front": "150", "Right front": "149", "Left rear": "120", "Right rear": "121"})
    page.get_by_role("textbox", name="Fuel in the tank").fill("10 L")
    expect(page.locator(".outcome")).to_contain_text("less is in the car than written down")
    expect(page.locator(".outcome")).to_contain_text("Read the scales again")


def test_a_driver_nobody_named_is_a_doubt_that_car_names_and_one_tap_mends(demo, make_phone):
    page = make_phone("anna", demo, **DESK).open("/#/weigh-car")
    scales = page.get_by_role("combobox", name="On which scales")
    expect(scales.locator("option:checked")).to_have_text("Corner pads")  # the records are here
    type_corners(page, CORNERS)
    page.get_by_role("textbox", name="Fuel in the tank").fill("10 L")
    page.get_by_role("checkbox", name="The list is right: I looked.").check()
    page.get_by_role("button", name="Save weigh-in").click()
    page.get_by_role("button", name="Keep 248.5 kg as typed").click()
    expect(page.get_by_text("Saved on this phone.")).to_be_visible()
    go(page, "#/car")
    unsaid = page.get_by_text("Who sat in the car is not said")
    expect(unsaid).to_be_visible()
    page.get_by_role("button", name="Main driver, as last time").click()
    expect(unsaid).to_have_count(0)
    expect(page.get_by_text("With Main driver, the lightest driver; 10 L as at the weigh-in.")).to_be_visible()
    page.get_by_role("button", name="Undo").click()
    expect(unsaid).to_be_visible()
    go(page, "#/standing")
    expect(page.get_by_text("Beside the jobs, by the weigh-ins")).to_be_visible()


def test_what_was_said_at_the_last_weigh_in_is_offered_and_not_taken_silently(demo, make_phone):
    page = make_phone("anna", demo, **DESK).open("/#/weigh-car")
    expect(page.get_by_role("radio", name="Nobody in it")).not_to_be_checked()
    expect(page.get_by_role("textbox", name="Fuel in the tank")).to_have_value("")
    page.get_by_role("button", name="As last time: 10 L, Main driver in it").click()
    expect(page.get_by_role("radio", name="Driver in it")).to_be_checked()
    expect(page.get_by_role("textbox", name="Fuel in the tank")).to_have_value("10 L")


def test_a_scale_is_offered_for_what_it_can_weigh_and_corners_do_not_keep_a_weighbridge(demo, make_phone):
    page = make_phone("anna", demo, **DESK).open("/#/weigh-car")
    scales = page.get_by_role("combobox", name="On which scales")
    page.get_by_role("radio", name="Total only").click()
    scales.select_option(label="The club's platform")
    page.get_by_role("radio", name="Corners").click()
    expect(scales).to_have_value("")
    offered = scales.locator("option").all_inner_texts()
    assert "Corner pads" in offered
    assert not {"Kitchen scale", "The club's platform"} & set(offered)
    go(page, "#/weigh-part")
    page.get_by_role("button", name=re.compile("^How it is weighed")).click()
    scale = page.get_by_role("combobox", name="Scale")
    offered = scale.locator("option").all_inner_texts()
    assert "Kitchen scale" in offered
    assert "Corner pads" not in offered


def test_a_car_above_its_minimum_is_told_that_none_is_needed_and_what_the_shares_would_cost(demo, make_phone):
    page = make_phone("anna", demo, **DESK).open("/#/ballast")
    answer = page.get_by_role("region", name="How much, and where")
    expect(answer.get_by_text("No ballast is needed for the minimum.")).to_be_visible()
    expect(answer.get_by_text("Ballast to put in")).to_have_count(0)


def test_one_tap_says_that_all_was_seen_to_before_the_scales_were_read_and_less_widens_the_doubt(demo, make_phone):
    page = make_phone("anna", demo).open()
    expect(page.locator(".weight-now")).to_be_visible()  # its scales are here
    go(page, "#/weigh-car")
    type_corners(page, CORNERS)
    page.get_by_role("textbox", name="Fuel in the tank").fill("10 L")
    page.get_by_role("radio", name="Nobody in it").check()
    doubt = page.locator(".outcome .figure").first
    expect(doubt).to_contain_text("919")
    without = doubt.inner_text()
    page.get_by_role("button", name="Zeroed, level, rolled, pressures, nobody leaning").tap()
    expect(page.get_by_text("Before you read: all seen to")).to_be_visible()
    expect(doubt).not_to_have_text(without)
    page.get_by_text("Before you read: all seen to").tap()
    page.get_by_role("checkbox", name="Floor level").uncheck()
    expect(page.get_by_text("Before you read: 4 of 5 seen to")).to_be_visible()


def test_a_form_opened_before_the_records_are_there_takes_up_the_scales_when_they_come(demo, make_phone):
    page = make_phone("anna", demo).start()
    scales = page.get_by_role("combobox", name="On which scales")
    with before_the_records(page, f"{demo.address}/#/weigh-car"):
        expect(scales).to_have_value("")
    expect(scales.locator("option:checked")).not_to_have_text("No scales named")
