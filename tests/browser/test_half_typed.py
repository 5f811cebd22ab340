"""What is typed and not saved says so, joins nothing later, and can be thrown away; buttons do all they say."""

import re

from playwright.sync_api import expect

from tests.browser.doing import begin, go, join, press, said, weigh

DRAFT_WITHIN = 500  # ms; a form is promised to be kept within 300 ms of the last change
DISPLAY = re.compile("^The scale shows")


def test_a_half_typed_weighing_never_joins_the_next_one_and_is_thrown_away_at_one_tap(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    begin(page, "Coupe", "980 kg")
    main = page.get_by_role("navigation", name="Main")
    main.get_by_role("link", name="Weigh").click()
    page.get_by_role("link", name=re.compile("^A part")).click()
    press(page, ["1", "1", "kg"])
    page.get_by_role("textbox", name="What is it?").fill("Spare wheel")
    page.wait_for_timeout(DRAFT_WITHIN)
    page.reload()
    expect(page.get_by_role("textbox", name=DISPLAY)).to_have_value("11 kg")
    expect(page.get_by_text(re.compile("^A half-typed weighing of today .*, not saved yet"))).to_be_visible()

    main.get_by_role("link", name="Weigh").click()
    page.get_by_role("link", name=re.compile("^A part")).click()
    expect(page.get_by_role("textbox", name=DISPLAY)).to_have_value("")
    main.get_by_role("link", name="Car").click()
    half = page.get_by_text(re.compile("^A half-typed weighing of today .*: Spare wheel, 11 kg"))
    expect(half).to_be_visible()
    page.get_by_role("link", name="Go on").click()
    expect(page.get_by_role("textbox", name=DISPLAY)).to_have_value("11 kg")
    page.get_by_role("button", name="Throw it away").click()
    expect(page.get_by_role("textbox", name=DISPLAY)).to_have_value("")
    main.get_by_role("link", name="Weigh").click()
    expect(page.get_by_role("heading", name="Weigh", exact=True)).to_be_visible()
    page.wait_for_timeout(DRAFT_WITHIN)
    expect(half).to_have_count(0)


def test_making_a_job_of_a_donor_part_buys_it_in_the_same_save_and_one_undo_takes_all_back(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    begin(page, "Coupe", "980 kg")
    weigh(page, "Seat", ["1", "8", "kg"])
    go(page, "#/donor/new")
    page.get_by_role("button", name=re.compile("^Seat")).click()
    page.get_by_role("textbox", name="What it is").fill("Light seat")
    page.get_by_role("textbox", name=DISPLAY).fill("11 kg")
    page.wait_for_timeout(DRAFT_WITHIN)
    page.reload()
    page.get_by_role("button", name="Throw it away").click()
    expect(page.get_by_role("textbox", name=DISPLAY)).to_have_value("")
    page.get_by_role("button", name=re.compile("^Seat")).click()
    page.get_by_role("textbox", name="What it is").fill("Light seat")
    page.get_by_role("textbox", name=DISPLAY).fill("11 kg")
    page.get_by_role("textbox", name="Which yard").fill("Upper yard")
    page.get_by_role("button", name="Save on this phone").click()
    page.get_by_role("button", name="Bought, and make it a job: yours off, this on").click()
    expect(page.get_by_role("region", name="Goes on").get_by_text("Light seat")).to_be_visible()
    expect(said(page)).to_contain_text("with 3 more")
    go(page, "#/yard")
    expect(page.get_by_role("region", name="Bought").get_by_text("Light seat")).to_be_visible()
    page.get_by_role("button", name="Undo").click()
    expect(page.get_by_role("region", name="Seen").get_by_text("Light seat")).to_be_visible()


def test_two_donor_parts_half_typed_stay_two_and_both_are_found_again(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    begin(page, "Coupe", "980 kg")
    name = page.get_by_role("textbox", name="What it is")
    for what, shown in (("Light seat", "11 kg"), ("Thin bonnet", "9 kg")):
        go(page, "#/yard")
        page.get_by_role("link", name="Note a donor part").click()
        expect(name).to_have_value("")
        name.fill(what)
        page.get_by_role("textbox", name=DISPLAY).fill(shown)
        page.wait_for_timeout(DRAFT_WITHIN)
    go(page, "#/yard")
    halves = page.get_by_text(re.compile("^A half-typed donor part of today"))
    expect(halves).to_have_count(2)
    page.locator(".notice").filter(has_text="Light seat, 11 kg").get_by_role("link", name="Go on").click()
    expect(name).to_have_value("Light seat")
    page.get_by_role("button", name="Save on this phone").click()
    expect(page.get_by_role("heading", name="Light seat")).to_be_visible()
    go(page, "#/yard")
    expect(halves).to_have_count(1)
    expect(halves).to_contain_text("Thin bonnet, 9 kg")
