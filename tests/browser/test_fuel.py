"""Fuel over a run in the paddock: the answer while typing, kept by itself, without a server."""

import re

from playwright.sync_api import expect

from tests.browser.doing import go
from tests.browser.phone import PHONE

DRAFT_WITHIN = 500  # ms; a form is promised to be kept within 300 ms of the last change


def test_what_to_start_with_is_answered_without_a_server_and_kept(demo, make_phone):
    phone = make_phone("anna", demo, **PHONE)
    page = phone.open()
    expect(page.locator(".weight-now")).to_be_visible()
    phone.is_installed()
    demo.kill()
    page.get_by_role("link", name=re.compile("^Fuel over a run")).click()
    answer = page.locator(".run-answer")
    expect(answer.first).to_contain_text("Lightest at the flag")
    # 12 laps of 1.6 L, each perhaps a tenth more, and half a litre for the filling: 21.62 L, by hand, rounded up.
    for _ in range(2):
        page.get_by_role("button", name="A lap more").click()
    expect(answer.nth(1)).to_have_text("Start with at least 21.7\u00a0L to reach the flag.")
    for field in ("Fuel at the start", "Fuel a lap takes"):
        before = page.get_by_role("textbox", name=field).input_value()
        page.get_by_role("textbox", name=field).fill("-5")
        expect(page.locator(".answer-side").get_by_role("note")).to_contain_text("cannot be less than nothing")
        expect(answer).to_have_count(0)
        page.get_by_role("textbox", name=field).fill(before)
    page.get_by_role("textbox", name="Fuel at the start").fill("1000 L")
    expect(page.locator(".answer-side").get_by_role("note")).to_contain_text("more fuel than the tank holds")
    page.get_by_role("textbox", name="Fuel at the start").fill("16 L")
    expect(answer.first).to_contain_text("when the tank runs dry, in lap")
    expect(page.get_by_role("note").filter(has_text="The tank runs dry")).to_be_visible()
    page.get_by_role("textbox", name="Fuel a lap takes").fill("1.2 L")
    expect(answer.first).to_contain_text("Lightest at the flag")
    page.get_by_role("button", name="Keep this for the car").click()
    expect(page.get_by_role("button", name="Keep this for the car")).to_have_count(0)
    page.wait_for_timeout(DRAFT_WITHIN)

    page.reload()
    expect(page.get_by_role("textbox", name="Laps")).to_have_value("12")
    expect(page.get_by_role("textbox", name="Fuel at the start")).to_have_value("16 L")
    expect(page.get_by_role("textbox", name="Fuel a lap takes")).to_have_value("1.2 L")
    go(page, "#/car-sheet")
    expect(page.get_by_role("textbox", name="Fuel a lap takes")).to_have_value("1.2 L")
    assert phone.troubles == []
