"""A part drawn on sheet without a server: saved, opened again, weighed, and held against what it should be."""

import re

from playwright.sync_api import Page, expect

from tests.browser.doing import go, press
from tests.browser.phone import DESK, PHONE

FIELD, SPAN, SIDE, EDGE = 500.0, 308.0, 340.0, 22.0  # mm; the drawing's units across the field, the pad, its margin
L = [(0, 0), (300, 0), (300, 100), (100, 100), (100, 250), (0, 250)]


def at(page: Page, across: float, up: float) -> tuple[float, float]:
    """Where a place on the pad (mm from its lower left) is on the glass."""
    pad = page.locator(".pad").first
    pad.evaluate("pad => pad.scrollIntoView({ block: 'start' })")
    frame = pad.bounding_box()
    assert frame is not None
    one = frame["width"] / SIDE
    x, y = EDGE + across / FIELD * SPAN, SIDE - EDGE - up / FIELD * SPAN
    return frame["x"] + x * one, frame["y"] + y * one


def drag(page: Page, start: tuple[float, float], end: tuple[float, float]) -> None:
    page.mouse.move(*at(page, *start))
    page.mouse.down()
    page.mouse.move(*at(page, *end), steps=4)
    page.mouse.up()


def done(page: Page) -> None:
    """Put the keypad away."""
    page.get_by_role("button", name="Done").click()


def weigh(page: Page, keys: list[str]) -> None:
    page.get_by_role("link", name="Weigh it").click()
    press(page, keys)
    page.get_by_role("button", name="Save weighing").click()
    # The kitchen scale of the demo shows ounces: grams are asked about, and kept when they are meant.
    page.get_by_role("button", name=re.compile("^Keep .* as typed$")).click()
    page.get_by_role("link", name="Back to where I was").click()


def test_an_l_with_a_hole_is_drawn_saved_opened_again_weighed_and_compared_without_a_server(demo, make_phone):
    phone = make_phone("anna", demo, **PHONE)
    page = phone.open()
    expect(page.locator(".weight-now")).to_be_visible()
    phone.is_installed()
    demo.kill()
    go(page, "#/more")
    page.get_by_role("link", name=re.compile("^Sheet")).click()
    page.get_by_role("radio", name="Drawn").check(force=True)
    for across, up in [*L[:2], (300, 130), *L[3:]]:
        page.touchscreen.tap(*at(page, across, up))
    drag(page, (300, 130), (300, 100))
    drag(page, (0, 250), (200, 50))  # across other sides: said at once, and taken back
    expect(page.get_by_text("crosses or touches side")).to_be_visible()
    page.get_by_role("button", name="Undo").click()
    expect(page.get_by_text("crosses or touches side")).to_have_count(0)
    page.get_by_role("textbox", name="Thickness").fill("2 mm")
    done(page)
    page.get_by_role("button", name="Add a hole").click()
    page.get_by_role("textbox", name="Diameter").fill("50 mm")
    done(page)
    # (300 · 100 + 100 · 150 − π/4 · 50²) mm² · 2 mm · 2.735 g/cm³ = 0.2354 kg, by hand.
    expect(page.locator(".sheet-result .figure")).to_contain_text("0.235")
    page.get_by_role("textbox", name="Which part is it?").fill("Bulkhead plate")
    page.get_by_role("button", name="Save as a part").click()
    expect(page.get_by_text("Saved on this phone.")).to_be_visible()
    page.reload()
    expect(page.get_by_role("heading", name="Bulkhead plate")).to_be_visible()
    expect(page.locator(".figure")).to_contain_text("0.235")
    expect(page.get_by_role("img", name="The sheet, drawn to scale")).to_contain_text("300 mm")

    weigh(page, ["3", "0", "0", "g"])
    worked_out = page.get_by_role("region", name="Worked out from sheet")
    expect(worked_out).to_contain_text("heavier than worked out")
    worked_out.get_by_role("link", name="Change the sheet").click()
    page.get_by_role("textbox", name="Thickness").fill("3 mm")
    done(page)
    page.get_by_role("button", name="Save the change").click()
    expect(worked_out).to_contain_text("3 mm aluminium")
    expect(worked_out).to_contain_text("lighter than worked out")


def test_sides_that_cross_are_said_and_shown_and_a_killed_page_keeps_the_drawing(demo, make_phone):
    phone = make_phone("anna", demo, **DESK)
    page = phone.open("/#/sheet/new")
    page.get_by_role("textbox", name="Thickness").fill("1.5")
    expect(page.get_by_text("1.5 mm or")).to_be_visible()
    page.get_by_role("textbox", name="Thickness").fill("1.5 mm")
    page.get_by_role("radio", name="Drawn").check(force=True)
    for corner in [L[0], L[2], L[1], L[4]]:
        page.mouse.click(*at(page, *corner))
    expect(page.get_by_text("crosses or touches side").first).to_be_visible()
    expect(page.locator(".pad .crossing")).to_have_count(1)
    expect(page.locator(".sheet-drawing .crossing")).to_have_count(1)
    page.get_by_role("button", name="Save as a part").click()
    expect(page.get_by_role("alert")).to_contain_text("crosses or touches side")
    page.wait_for_timeout(500)  # ms; a form is promised to be kept within 300 ms of the last change
    page.reload()
    expect(page.locator(".pad .corner")).to_have_count(4)
    page.get_by_text("Corners as a table (4)").click()
    page.get_by_role("button", name="Take out corner 3").click()
    expect(page.locator(".sheet-result .figure")).to_be_visible()
