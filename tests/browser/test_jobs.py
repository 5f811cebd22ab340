"""Jobs: what their words warn of, and what a weigh-in knows of them."""

from playwright.sync_api import Page, expect

from tests.browser.doing import begin, go, join, leave, said


def new_job(page: Page, name: str) -> None:
    """A job by its name, which is kept when the thumb leaves it."""
    go(page, "#/job/new")
    page.get_by_role("textbox", name="What is done").fill(name)
    leave(page)
    expect(page.get_by_role("button", name="Add a part that comes off")).to_be_visible()


def test_a_caution_is_shown_at_once_and_one_tap_says_whether_it_fits(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    begin(page, "Coupe", "980 kg")
    new_job(page, "Small battery")
    caution = page.get_by_text("Care: battery.")
    expect(caution).to_be_visible()
    page.get_by_role("button", name="Not this job: battery").tap()
    expect(caution).to_have_count(0)
    expect(said(page)).to_contain_text("do not fit")
    page.reload()
    expect(page.get_by_role("button", name="Add a part that comes off")).to_be_visible()
    expect(caution).to_have_count(0)

    page.get_by_text("What this job touches").tap()
    page.get_by_role("checkbox", name="battery").check()
    expect(caution).to_be_visible()
    expect(page.get_by_role("button", name="Not this job: battery")).to_have_count(0)  # a person said that it fits
    said(page).locator("..").get_by_role("button", name="Undo").tap()
    expect(caution).to_have_count(0)
