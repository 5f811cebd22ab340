"""Slips of a thumb at the scale: the unit is the display's, and what it could not have shown is asked about."""

import re

from playwright.sync_api import Locator, Page, expect

from tests.browser.doing import Thumb, go, join, leave, press


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
        leave(page)
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


def on_scale(page: Page, scale: str, of: str, keys: list[str]) -> None:
    """Weigh a part on a scale, up to pressing Save."""
    go(page, "#/weigh")
    go(page, "#/weigh-part")
    page.get_by_role("button", name=re.compile("^How it is weighed")).tap()
    page.get_by_role("combobox", name="On which scale").select_option(scale)
    page.get_by_role("button", name="Done").tap()
    press(page, keys)
    page.get_by_role("textbox", name="What is it?").fill(of)
    page.get_by_role("button", name="Save weighing").tap()


def test_what_the_display_cannot_have_shown_is_asked_about_and_corrected_in_one_tap(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    thumb = in_pounds(page)
    add_scale(page, "4.27 kg, steps of 0.01 kg", "Hanging scale", "50 kg")
    add_scale(page, "181.6 lb, steps of 0.2 lb", "Bathroom scale", "330 lb")

    on_scale(page, "Hanging scale", "Spare wheel", ["5", "Point", "9", "9", "lb"])  # the unit
    question = page.get_by_role("group", name="Before it is kept")
    expect(question).to_contain_text("This scale shows kilograms; this is in pounds.")
    thumb.tap("button", "It showed 5.99 kg")
    expect(page.get_by_text("The scale showed 5.99 kg")).to_be_visible()

    on_scale(page, "Bathroom scale", "Gearbox", ["8", "1", "Point", "3"])  # the step
    expect(question).to_contain_text("This scale counts in steps of 0.2 lb; it cannot show 81.3 lb.")
    expect(page.get_by_role("button", name="It showed 81.4 lb")).to_be_visible()
    thumb.tap("button", "It showed 81.2 lb")
    expect(page.get_by_text("The scale showed 81.2 lb")).to_be_visible()

    on_scale(page, "Hanging scale", "Door", ["5", "9", "9"])  # the capacity
    expect(question).to_contain_text("599 kg is more than this scale can weigh (50 kg).")
    thumb.tap("button", "Back to the reading")
    expect(display_of(page)).to_have_value("599")  # nothing typed is lost
    thumb.tap("button", "Save weighing")
    thumb.tap("button", "Keep 599 kg as typed")  # and nothing is refused
    expect(page.get_by_text("The scale showed 599 kg")).to_be_visible()


def test_a_reading_a_slip_explains_is_offered_as_it_was_meant(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    thumb = in_pounds(page)
    add_scale(page, "4.27 kg, steps of 0.01 kg", "Hanging scale")
    on_scale(page, "Hanging scale", "Spare wheel", ["5", "Point", "9", "5"])
    expect(page.get_by_text("The scale showed 5.95 kg")).to_be_visible()

    go(page, "#/weigh")
    go(page, "#/weigh-part")
    press(page, ["1", "3", "Point", "2"])
    page.get_by_role("button", name=re.compile("^Spare wheel")).tap()
    thumb.tap("button", "Save weighing")
    question = page.get_by_role("group", name="Before it is kept")
    expect(question).to_contain_text("13.2 looks like pounds read as kilograms: 13.2 lb = 5.99 kg.")
    expect(question).to_contain_text("It weighed 13.12 lb before.")
    thumb.tap("button", "It was 13.2 lb")
    expect(page.get_by_text("The scale showed 13.2 lb")).to_be_visible()


def test_a_stored_reading_that_slipped_is_listed_once_and_corrected_in_one_tap(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    thumb = in_pounds(page)
    add_scale(page, "4.27 kg, steps of 0.01 kg", "Hanging scale")
    on_scale(page, "Hanging scale", "Spare wheel", ["1", "3", "Point", "2"])  # nothing was known of it then
    expect(page.get_by_text("The scale showed 13.2 kg")).to_be_visible()
    go(page, "#/weigh")
    go(page, "#/weigh-part")
    press(page, ["5", "Point", "9", "5"])
    page.get_by_role("button", name=re.compile("^Spare wheel")).tap()
    thumb.tap("button", "Save weighing")
    expect(page.get_by_text("The scale showed 5.95 kg")).to_be_visible()

    go(page, "#/standing")
    expect(page.get_by_text("1 reading looks like pounds read as kilograms.")).to_be_visible()
    thumb.tap("button", "Correct it: 13.2 lb")
    expect(page.get_by_text("Readings to look at again")).to_have_count(0)


def note_check(page: Page, known: str, shown: str) -> None:
    """Type a scale's check and press the button that notes it."""
    page.get_by_role("textbox", name="What was put on").fill("A plate")
    page.get_by_role("textbox", name="Its true mass").fill(known)
    page.get_by_role("textbox", name="The scale showed").fill(shown)
    leave(page)
    page.get_by_role("button", name="Note this check").tap()


def test_a_check_of_a_scale_is_asked_about_as_any_reading_is(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    thumb = in_pounds(page)
    add_scale(page, "4.27 kg, steps of 0.01 kg", "Hanging scale", "50 kg")
    question = page.get_by_role("group", name="Before it is kept")

    note_check(page, "10 kg", "10.025")  # a bare number is the display's
    expect(question).to_contain_text("This scale counts in steps of 0.01 kg; it cannot show 10.025 kg.")
    thumb.tap("button", "It showed 10.03 kg")
    expect(page.get_by_text("showed 10.03 kg")).to_be_visible()

    note_check(page, "10 kg", "22.1 kg")  # pounds off the display
    expect(question).to_contain_text("22.1 looks like pounds read as kilograms: 22.1 lb = 10.02 kg.")
    expect(question).to_contain_text("What was put on weighs 22.05 lb.")
    thumb.tap("button", "It showed 22.1 lb")
    expect(page.get_by_text("showed 22.1 lb")).to_be_visible()

    note_check(page, "5", "5.02")  # the plate's mark is in kilograms, the garage thinks in pounds
    expect(page.get_by_role("button", name="It showed 5.02 lb")).to_be_visible()
    thumb.tap("button", "It weighs 5 kg")
    expect(page.get_by_text("A plate: 5 kg")).to_be_visible()

    note_check(page, "5 kg", "500 kg")
    expect(question).to_contain_text("500 kg is more than this scale can weigh (50 kg).")
    thumb.tap("button", "Back to the reading")
    page.get_by_role("button", name="Note this check").tap()
    thumb.tap("button", "Keep 500 kg as typed")  # nothing is refused
    expect(page.get_by_text("showed 500 kg")).to_be_visible()


def test_a_stored_weigh_in_that_slipped_is_listed_and_corrected_in_one_tap(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    thumb = in_pounds(page)
    for total in ("930", "930 kg"):  # nothing was known of the car at the first
        go(page, "#/weigh")
        go(page, "#/weigh-car")
        page.get_by_role("radio", name="Total only").check()
        page.get_by_role("textbox", name="Whole car").fill(total)
        page.get_by_role("textbox", name="Fuel in the tank").fill("0 L")
        page.get_by_role("radio", name="Nobody in it").check()
        page.get_by_role("button", name="Save weigh-in").tap()
        if total == "930 kg":
            thumb.tap("button", "Keep 930 kg as typed")
        expect(page.get_by_role("heading", name="Weigh-in", exact=True)).to_be_visible()

    go(page, "#/standing")
    again = page.get_by_role("region", name="Readings to look at again")
    expect(again).to_contain_text("1 reading looks like kilograms read as pounds.")
    expect(again).to_contain_text("At another weigh-in it weighed 2050.30 lb.")
    thumb.tap("button", "Correct it: 930 kg")
    expect(again).to_have_count(0)
    thumb.tap("button", "Undo")
    thumb.tap("button", "It is right")
    expect(again).to_have_count(0)
