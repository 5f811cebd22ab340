"""Jobs: what their words warn of, and what a weigh-in knows of them."""

import re

from playwright.sync_api import Locator, Page, expect

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


def open_job(page: Page, name: str) -> None:
    """A job by its row in the list of jobs."""
    go(page, "#/jobs")
    page.get_by_role("link", name=name).tap()
    expect(page.get_by_role("textbox", name="What is done")).to_have_value(name)


def jobs_at(page: Page, day: str) -> Locator:
    """The jobs that the weigh-in of a day lists."""
    go(page, "#/weigh")
    page.get_by_role("link", name=re.compile(f"{day}")).first.tap()
    return page.get_by_role("region", name=re.compile("^Jobs then in the car"))


def test_a_job_noted_late_asks_whether_it_was_in_and_yes_corrects_the_list(demo, make_phone):
    page = make_phone("anna", demo).open()
    open_job(page, "Aluminium boot lid")
    page.get_by_role("radio", name="Fitted", exact=True).check()
    page.get_by_label("Fitted on").fill("2026-04-20")
    leave(page)
    question = page.get_by_text("Was it in the car on 2 May?")
    expect(question).to_be_visible()
    expect(page.get_by_text("The answer holds for the weigh-in after it too.")).to_be_visible()
    page.get_by_role("button", name="Yes, it was in").tap()
    expect(question).to_have_count(0)
    expect(jobs_at(page, "12 Sept").get_by_role("link", name="Aluminium boot lid")).to_be_visible()


def test_no_leaves_the_list_and_is_not_asked_again(demo, make_phone):
    page = make_phone("anna", demo).open()
    open_job(page, "Aluminium boot lid")
    page.get_by_role("radio", name="Fitted", exact=True).check()
    page.get_by_label("Fitted on").fill("2026-04-20")
    leave(page)
    page.get_by_role("button", name="No, it came later").tap()
    expect(page.get_by_text("Was it in the car on")).to_have_count(0)
    expect(said(page)).to_contain_text("not in the car at")
    page.reload()
    expect(page.get_by_role("textbox", name="What is done")).to_have_value("Aluminium boot lid")
    expect(page.get_by_text("Was it in the car on")).to_have_count(0)


def test_a_part_that_came_after_a_weigh_in_goes_into_a_follow_up_job_in_one_act(demo, make_phone):
    page = make_phone("anna", demo).open()
    open_job(page, "Radio and speakers out")
    page.get_by_role("button", name="Add a part that comes off").tap()
    page.get_by_role("textbox", name="Which part").fill("Aerial")
    expect(page.get_by_text("Was it in the car on 2 May?")).to_be_visible()
    page.get_by_role("button", name="No: into a follow-up job").tap()
    expect(page.get_by_role("textbox", name="What is done")).to_have_value("Radio and speakers out, later")
    expect(page.get_by_role("button", name=re.compile("^Aerial"))).to_be_visible()
    said(page).locator("..").get_by_role("button", name="Undo").tap()
    expect(page.get_by_text("Deleted: it does not count.")).to_be_visible()


def test_editing_a_job_that_a_weigh_in_lists_says_what_the_weight_now_does(demo, make_phone):
    page = make_phone("anna", demo).open()
    open_job(page, "Carpets and mats out")
    expect(page.get_by_text("The weigh-in of 12 Sept lists this job")).to_be_visible()
    page.get_by_role("button", name=re.compile("^Cabin carpet")).tap()
    page.get_by_role("button", name="One more").tap()
    expect(page.get_by_text("Weight now stays as it is: the weigh-in of 12 Sept listed this job")).to_be_visible()
    page.get_by_role("button", name="One fewer").tap()
    page.get_by_role("radio", name="Undone").check()
    # The carpet, 12.4 lb, and four mats are in again: 5.62 + 2.615 kg, by hand.
    expect(page.get_by_text(re.compile(r"Weight now rises by 8\.2\d? .*: the weigh-in of 12 Sept"))).to_be_visible()
    expect(page.get_by_text("Was it in the car on 2 May?")).to_be_visible()
    page.get_by_role("button", name="No, it was not in").tap()
    expect(page.get_by_text("Was it in the car on")).to_have_count(0)
    expect(jobs_at(page, "12 Sept").get_by_role("link", name="Carpets and mats out")).to_have_count(0)


def test_deleting_a_job_that_weigh_ins_list_asks_first_and_is_taken_back_whole(demo, make_phone):
    page = make_phone("anna", demo).open()
    open_job(page, "Radio and speakers out")
    page.get_by_role("button", name="Delete this job").tap()
    expect(page.get_by_text("Was it in the car on 2 May?")).to_be_visible()
    page.get_by_role("button", name="No: delete it").tap()
    expect(page.get_by_role("heading", name="Jobs")).to_be_visible()
    then = jobs_at(page, "12 Sept")
    expect(then.get_by_role("link").first).to_be_visible()
    expect(then.get_by_role("link", name="Radio and speakers out")).to_have_count(0)
    said(page).locator("..").get_by_role("button", name="Undo").tap()
    expect(jobs_at(page, "12 Sept").get_by_role("link", name="Radio and speakers out")).to_be_visible()
