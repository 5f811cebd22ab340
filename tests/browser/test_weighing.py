"""Weighing by thumb: few taps, no loss when the page is killed, corrections that leave the old reading in sight."""

import re

from playwright.sync_api import expect

from tests.browser.doing import Thumb, before_the_records, begin, go, join, leave, photo, press, weigh

FEW = 9
DRAFT_WITHIN = 500  # ms; a form is promised to be kept within 300 ms of the last change


def test_a_known_part_is_weighed_with_a_photo_in_nine_taps_from_opening_the_app(garage, make_phone, tmp_path):
    phone = make_phone("anna", garage)
    page = join(phone, garage)
    begin(page, "Coupe", "980 kg")
    weigh(page, "Spare wheel", ["1", "1", "kg"])
    phone.close()
    thumb = Thumb(phone.open())
    thumb.tap("link", "Weigh")  # 1
    thumb.tap("link", "A part")  # 2
    for key in ("1", "0", "Point", "8"):  # 3, 4, 5, 6: the unit and the scale are those of last time
        thumb.tap("button", key)
    thumb.tap("button", re.compile("^Spare wheel"))  # 7: offered without a letter typed
    with phone.page.expect_file_chooser() as chosen:
        thumb.tap("button", "Take a photo")  # 8: what follows is the camera's own
    chosen.value.set_files(photo(tmp_path))
    expect(phone.page.get_by_alt_text("The photo just taken")).to_be_visible()
    thumb.tap("button", "Save weighing")  # 9
    expect(phone.page.get_by_text("Saved on this phone.")).to_be_visible()
    assert thumb.taps <= FEW


def test_a_half_filled_form_comes_back_with_its_photo_when_the_camera_killed_the_page(garage, make_phone, tmp_path):
    phone = make_phone("anna", garage)
    page = join(phone, garage)
    begin(page, "Coupe", "980 kg")
    press(page, ["6", "oz", "3/8, 3 eighths"])
    page.get_by_role("textbox", name="What is it?").fill("Bonnet prop")
    page.locator('input[data-photo="camera"]').set_input_files(photo(tmp_path))
    expect(page.get_by_alt_text("The photo just taken")).to_be_visible()
    page.wait_for_timeout(DRAFT_WITHIN)
    phone.sigkill()

    page = phone.open("/#/weigh")
    expect(page.get_by_text("Bonnet prop, 6 3/8 oz")).to_be_visible()
    page.get_by_role("link", name="Go on").click()
    expect(page.get_by_role("textbox", name=re.compile("^The scale shows"))).to_have_value("6 3/8 oz")
    expect(page.get_by_alt_text("The photo just taken")).to_be_visible()
    page.get_by_role("button", name="Save weighing").click()
    expect(page.get_by_text("Saved on this phone.")).to_be_visible()
    go(page, "#/weigh")
    expect(page.get_by_text("A half-typed")).to_have_count(0)


def test_what_cannot_be_read_is_said_and_never_lost(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    begin(page, "Coupe", "980 kg")
    page.get_by_role("textbox", name="What is it?").fill("Bonnet prop")
    display = page.get_by_role("textbox", name=re.compile("^The scale shows"))
    display.fill("1,25 kg")
    page.get_by_role("button", name="Save weighing").click()
    expect(page.get_by_role("alert")).to_contain_text("1.25")
    page.wait_for_timeout(DRAFT_WITHIN)
    page.reload()
    expect(display).to_have_value("1,25 kg")


def test_two_looks_make_one_part_and_a_correction_keeps_the_old_reading_in_sight(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    begin(page, "Coupe", "980 kg")
    page.get_by_role("button", name=re.compile("^How it is weighed")).click()
    page.get_by_role("radio", name="Holding it, minus me").check()
    page.get_by_role("button", name="Done").click()
    page.get_by_role("textbox", name=re.compile("^Me holding it")).fill("96.4 kg")
    page.get_by_role("textbox", name=re.compile("^Me alone")).fill("81.2 kg")
    expect(page.get_by_text("The part: 15.2")).to_be_visible()
    page.get_by_role("textbox", name="What is it?").fill("Front seat")
    page.get_by_role("button", name="Save weighing").click()
    page.get_by_role("link", name="Look at this weighing").click()
    expect(page.get_by_text("read as 96.4 kg")).to_be_visible()
    expect(page.get_by_text("read as 81.2 kg")).to_be_visible()

    page.get_by_role("link", name="Replace with a new reading").click()
    page.get_by_role("textbox", name=re.compile("^Me holding it")).fill("97.4 kg")
    page.get_by_role("textbox", name=re.compile("^Me alone")).fill("81.2 kg")
    page.get_by_role("button", name="Save weighing").click()
    expect(page.get_by_text("16.2")).to_be_visible()
    page.get_by_role("link", name="Look at this weighing").click()
    page.get_by_role("link", name="an earlier reading").click()
    expect(page.get_by_text("this one does not count")).to_be_visible()


def test_of_two_corrections_one_counts_and_a_tap_lets_the_other_count_instead(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    begin(page, "Coupe", "980 kg")
    weigh(page, "Tow hook", ["4", "2", "0", "g"])
    page.get_by_role("link", name="Look at this weighing").click()
    again = page.get_by_role("link", name="Replace with a new reading").get_attribute("href")
    first = page.evaluate("location.hash").partition("?")[0]
    for shown in ("430 g", "460 g"):  # the second as by someone who has not seen the first
        go(page, again)
        page.get_by_role("textbox", name=re.compile("^The scale shows")).fill(shown)
        page.get_by_role("button", name="Save weighing").click()
        page.get_by_role("link", name="Look at this weighing").click()
    expect(page.get_by_text("Corrected twice: this one counts, the other shows 0.430")).to_be_visible()
    counts = page.evaluate("location.hash").partition("?")[0].removeprefix("#/weighing/")
    go(page, first)
    expect(page.get_by_text("this one does not count")).to_be_visible()
    newest = page.get_by_role("link", name="Replace with a new reading")
    expect(newest).to_have_attribute("href", re.compile(f"replaces={counts}$"))
    page.get_by_role("link", name="Look at the newer one").click()
    page.get_by_role("button", name="Let the other count").click()
    expect(page.get_by_text("Withdrawn: it does not count.")).to_be_visible()
    expect(page.get_by_text("Corrected twice")).to_have_count(0)
    page.get_by_role("button", name="Undo").click()
    expect(page.get_by_text("Corrected twice: this one counts, the other shows 0.430")).to_be_visible()


def test_a_withdrawn_weighing_counts_no_more_until_it_is_brought_back(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    begin(page, "Coupe", "980 kg")
    weigh(page, "Tow hook", ["4", "2", "0", "g"])
    page.get_by_role("link", name="Look at this weighing").click()
    page.get_by_role("button", name="Withdraw it").click()
    page.get_by_role("button", name="Withdraw", exact=True).click()
    expect(page.get_by_text("Withdrawn: it does not count.")).to_be_visible()
    expect(page.get_by_text("this weighing does not count")).to_be_visible()
    page.get_by_role("button", name="Let it count again").click()
    expect(page.get_by_text("from this weighing alone")).to_be_visible()


def test_what_a_person_weighs_alone_is_offered_with_its_age_and_never_taken_by_itself(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    begin(page, "Coupe", "980 kg")
    alone = page.get_by_role("textbox", name=re.compile("^Me alone"))
    for part, holding in (("Front seat", "96.4 kg"), ("Rear seat", "91.4 kg")):
        go(page, "#/weigh")
        go(page, "#/weigh-part")
        page.get_by_role("button", name=re.compile("^How it is weighed")).click()
        page.get_by_role("radio", name="Holding it, minus me").check()
        page.get_by_role("button", name="Done").click()
        page.get_by_role("textbox", name=re.compile("^Me holding it")).fill(holding)
        page.get_by_role("textbox", name="What is it?").fill(part)
        if part == "Front seat":
            alone.fill("81.2 kg")
        else:
            expect(alone).to_have_value("")
            page.get_by_role("button", name="Me alone, 81.2 kg, today").click()
            expect(page.get_by_text("The part: 10.2")).to_be_visible()
        page.get_by_role("button", name="Save weighing").click()
        expect(page.get_by_text("Saved on this phone.")).to_be_visible()


def test_a_driver_just_added_is_the_one_weighed_with_gear(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    begin(page, "Coupe", "980 kg")
    go(page, "#/drivers")
    page.get_by_role("button", name="Add a driver").click()
    page.get_by_role("textbox", name="Name").fill("Anna")
    leave(page)
    page.get_by_role("link", name="Weigh with gear").click()
    expect(page.get_by_text("driver, with gear")).to_be_visible()


def test_a_weighing_opened_before_the_records_are_there_is_on_a_scale_when_they_come(demo, make_phone):
    page = make_phone("anna", demo).start()
    how = page.get_by_role("button", name=re.compile("^How it is weighed"))
    with before_the_records(page, f"{demo.address}/#/weigh-part"):
        expect(how).to_contain_text("no scale named")
    expect(how).not_to_contain_text("no scale named")
