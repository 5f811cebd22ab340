"""Two people, one garage, no signal: the same field is settled by a person, and what does not collide just adds up."""

import json
import re

import pytest
from playwright.sync_api import Page, expect

from tests.browser.doing import begin, go, in_sync, join, leave, said

HOURS = "Hours"


@pytest.fixture
def two(server, make_phone):
    """Two joined phones on the page of the same job, in sync."""
    anna, ben = make_phone("anna", server), make_phone("ben", server)
    page = join(anna, server)
    begin(page, "Coupe", "980 kg")
    go(page, "#/job/new")
    page.get_by_role("textbox", name="What is done").fill("Spare wheel out")
    page.get_by_role("button", name="Go on to its parts").click()
    expect(page.get_by_role("heading", name="Spare wheel out")).to_be_visible()
    in_sync(page)
    other = join(ben, server)
    open_job(other)
    return page, other


def open_job(page: Page) -> None:
    go(page, "#/jobs")
    page.get_by_role("link", name=re.compile("Spare wheel out")).click()


def set_hours(page: Page, hours: str) -> None:
    page.get_by_role("textbox", name=HOURS).fill(hours)
    leave(page)
    expect(said(page)).to_have_text(f"Hours: {hours}")


def add_part(page: Page, name: str) -> None:
    page.get_by_role("button", name="Add a part that comes off").click()
    page.get_by_role("textbox", name="Which part").fill(name)
    page.get_by_role("button", name="Add it").click()
    expect(page.get_by_role("button", name=re.compile(name))).to_be_visible()


def settle(page: Page, hours: str) -> None:
    """Where the value stands, at one tap."""
    open_job(page)
    dispute = page.get_by_role("group", name="To settle: hours")
    dispute.get_by_role("button", name=re.compile(f"^{hours}\\b")).click()
    expect(said(page)).to_have_text(f"Hours: {hours}")
    expect(dispute).to_have_count(0)


def test_the_same_field_written_on_two_phones_offline_is_settled_once_and_equal_everywhere(server, two):
    anna, ben = two
    server.kill()
    set_hours(anna, "2")
    set_hours(ben, "3.5")
    server.start()
    for page in two:
        in_sync(page)
        go(page, "#/records")
        expect(page.get_by_text("To settle (1)")).to_be_visible(timeout=30_000)
        expect(page.get_by_role("button", name=re.compile(r"^2\b"))).to_be_visible()
        expect(page.get_by_role("button", name=re.compile(r"^3\.5\b"))).to_be_visible()
        go(page, "#/car")
        expect(page.get_by_role("link", name=re.compile("^To settle.*1$"))).to_be_visible()
        go(page, "#/jobs")
        expect(page.get_by_role("link", name=re.compile("Spare wheel out.*1 to settle"))).to_be_visible()
    settle(ben, "2")
    ben.get_by_role("button", name="Undo", exact=True).click()
    expect(ben.get_by_role("group", name="To settle: hours")).to_contain_text("this phone")
    settle(ben, "3.5")
    for page in two:
        expect(page.get_by_text("To settle")).not_to_be_visible(timeout=30_000)
        open_job(page)
        expect(page.get_by_role("textbox", name=HOURS)).to_have_value("3.5")
    [job] = json.loads(server.run("export", "-"))["jobs"]
    assert job["hours"] == "3.5"
    assert "conflicts" not in job


def test_a_deletion_on_one_phone_and_a_note_on_the_other_are_a_question_in_words(server, two):
    anna, ben = two
    go(anna, "#/devices")
    anna.get_by_role("button", name="Rename").first.click()
    anna.get_by_role("textbox", name="What is this device called?").fill("Anna's phone")
    anna.get_by_role("button", name="Call it that").click()
    expect(anna.get_by_text("Anna's phone")).to_be_visible()
    server.kill()
    open_job(anna)
    anna.get_by_role("button", name="Delete this job").click()
    expect(said(anna)).to_contain_text("deleted")
    set_hours(ben, "2")
    server.start()
    in_sync(anna)
    in_sync(ben)
    expect(ben.get_by_text("Deleted on Anna's phone, changed on this phone meanwhile.")).to_be_visible(timeout=30_000)
    ben.get_by_role("button", name=re.compile("^Delete it all the same")).click()
    expect(said(ben)).to_have_text("Spare wheel out deleted")
    ben.get_by_role("button", name="Undo", exact=True).click()
    ben.get_by_role("button", name=re.compile("^Keep it")).click()
    expect(ben.get_by_text("Deleted on")).to_have_count(0)
    in_sync(ben)
    go(anna, "#/jobs")
    expect(anna.get_by_role("link", name=re.compile("Spare wheel out"))).to_be_visible(timeout=30_000)


def test_a_phone_taken_off_the_list_says_so_on_the_first_screen(server, two):
    anna, ben = two
    go(anna, "#/devices")
    anna.get_by_role("button", name="Take off").click()
    anna.get_by_role("button", name="Take it off").click()
    expect(anna.get_by_text("Taken off the list (1)")).to_be_visible()
    set_hours(ben, "2")
    go(ben, "#/car")
    expect(ben.get_by_role("alert")).to_contain_text("This device was taken off the garage's list.")
    ben.get_by_role("link", name="Join again").click()
    expect(ben.get_by_role("region", name="Join again")).to_be_visible()


def test_a_part_added_to_the_job_on_each_phone_offline_is_no_conflict(server, two):
    anna, ben = two
    server.kill()
    add_part(anna, "Spare wheel")
    add_part(ben, "Jack and tools")
    server.start()
    for page in two:
        in_sync(page)
        expect(page.get_by_role("button", name=re.compile("Spare wheel"))).to_be_visible(timeout=30_000)
        expect(page.get_by_role("button", name=re.compile("Jack and tools"))).to_be_visible(timeout=30_000)
        go(page, "#/records")
        expect(page.get_by_role("heading", name="Records")).to_be_visible()
        expect(page.get_by_text("To settle")).not_to_be_visible()
