"""A field is kept when the thumb leaves it, what cannot be read is not, and every act is taken back, now or later."""

import re

import pytest
from playwright.sync_api import Page, expect

from tests.browser.doing import begin, go, join, leave, said

WITHIN = 500  # ms; a form is promised to be on the phone's disk within 300 ms of the last change
HOURS, NAME = re.compile("^Hours"), "What is done"


@pytest.fixture
def job(garage, make_phone):
    """A phone on the page of a job it has noted, and the page."""
    phone = make_phone("anna", garage)
    page = join(phone, garage)
    begin(page, "Coupe", "980 kg")
    go(page, "#/job/new")
    page.get_by_role("textbox", name=NAME).fill("Rear wiper out")
    page.get_by_role("button", name="Go on to its parts").click()
    expect(hours(page)).to_be_visible()
    return phone, page


def hours(page: Page):
    return page.get_by_role("textbox", name=HOURS)


def type_hours(page: Page, text: str) -> None:
    hours(page).fill(text)
    leave(page)


def undo(page: Page) -> None:
    page.locator(".undo-line").get_by_role("button", name="Undo").click()


def test_what_was_just_done_is_undone_and_that_again(job):
    _, page = job
    type_hours(page, "2")
    expect(said(page)).to_have_text("Hours: 2")
    undo(page)
    expect(hours(page)).to_have_value("")
    undo(page)
    expect(hours(page)).to_have_value("2")
    page.get_by_role("radio", name="Fitted").check(force=True)
    expect(said(page)).to_contain_text("Rear wiper out")
    undo(page)
    expect(page.get_by_role("radio", name="Idea")).to_be_checked()


def test_an_act_is_undone_later_from_the_history(job):
    _, page = job
    type_hours(page, "2")
    type_hours(page, "3")
    page.get_by_text("History", exact=True).click()
    page.get_by_role("button", name="Undo Hours: 3").click()
    expect(hours(page)).to_have_value("2")
    expect(page.get_by_role("button", name="Undo Hours: 3")).to_have_count(0)  # nothing of it stands


def test_what_cannot_be_read_stays_beside_what_counts_and_survives_a_kill(job):
    phone, page = job
    type_hours(page, "2")
    type_hours(page, "two")
    expect(page.get_by_text("Not kept: 2 still counts.")).to_be_visible()
    page.wait_for_timeout(WITHIN)
    address = page.evaluate("location.hash")
    phone.sigkill()
    page = phone.open(f"/{address}")
    expect(hours(page)).to_have_value("two")
    expect(page.get_by_text("Not kept: 2 still counts.")).to_be_visible()
    page.get_by_role("button", name="Back to 2").click()
    expect(hours(page)).to_have_value("2")
    expect(page.get_by_text("Not kept")).to_have_count(0)


def test_what_can_be_read_counts_although_the_page_was_killed_under_the_thumb(job):
    phone, page = job
    hours(page).fill("2.5")
    page.wait_for_timeout(WITHIN)
    address = page.evaluate("location.hash")
    phone.sigkill()
    page = phone.open(f"/{address}")
    expect(said(page)).to_have_text("Hours: 2.5")
    expect(hours(page)).to_have_value("2.5")


def test_the_deleted_comes_back_from_the_bin_with_what_hung_on_it(job):
    _, page = job
    page.get_by_role("textbox", name="What is left behind").fill("Plug under the glass")
    page.get_by_role("button", name="Note it").click()
    expect(page.get_by_text(re.compile("^Plug under the glass ·"))).to_be_visible()
    page.get_by_role("button", name="Delete this job").click()
    expect(said(page)).to_have_text("Rear wiper out deleted")
    expect(page.get_by_role("link", name=re.compile("^Rear wiper out"))).to_have_count(0)
    go(page, "#/bin")
    expect(page.get_by_text(re.compile("with 1 record of it"))).to_be_visible()
    page.get_by_role("button", name="Bring back Rear wiper out").click()
    expect(page.get_by_text("Nothing was deleted.")).to_be_visible()
    go(page, "#/jobs")
    page.get_by_role("link", name=re.compile("^Rear wiper out")).click()
    expect(page.get_by_text(re.compile("^Plug under the glass ·"))).to_be_visible()


def test_a_size_no_car_has_is_asked_about_and_kept_at_one_tap(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    begin(page, "Coupe", "980 kg")
    go(page, "#/car-sheet")
    wheelbase = page.get_by_role("textbox", name="Wheelbase")
    wheelbase.fill("24700 mm")
    leave(page)
    expect(page.get_by_text("Not kept: nothing is set.")).to_be_visible()
    page.get_by_role("button", name="Keep it as typed").click()
    expect(said(page)).to_have_text("Wheelbase: 24700 mm")
