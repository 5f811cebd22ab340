"""Photos of records: deleted and given back, moved, one picture on two records; what is no picture is said."""

import json
import re
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.doing import begin, go, in_sync, join, photo, said, weigh

PICTURES = Path(__file__).resolve().parents[2] / "fixtures" / "pictures"


@pytest.fixture
def page(garage, make_phone):
    """A phone with a car, and no part yet."""
    page = join(make_phone("anna", garage), garage)
    begin(page, "Coupe", "980 kg")
    return page


def choose(page: Page, *files: Path) -> None:
    """From the phone's own pictures, one after the other."""
    for file in files:
        page.locator('input[data-photo="library"]').set_input_files(file)


def test_a_heic_that_this_engine_cannot_open_is_told_how_to_become_a_jpeg(page, tmp_path):
    cut, text = tmp_path / "cut.heic", tmp_path / "seat.heic"
    cut.write_bytes((PICTURES / "red.heic").read_bytes()[:300])
    text.write_text("A text that somebody named so.")
    go(page, "#/weigh-part")
    choose(page, PICTURES / "red.heic")
    expect(page.get_by_text("This is a HEIC picture, which cannot be read here.")).to_be_visible()
    expect(page.get_by_text("Settings > Camera > Formats > Most Compatible")).to_be_visible()
    choose(page, cut)
    expect(page.get_by_text("This picture is cut short.")).to_be_visible()
    choose(page, text)
    expect(page.get_by_text("This file is not a picture.")).to_be_visible()
    choose(page, PICTURES / "red.avif")  # this engine opens it
    expect(page.get_by_alt_text("The photo just taken")).to_be_visible()


def photos_at(page: Page) -> Locator:
    return page.get_by_role("button", name=re.compile("^Look at photo"))


def add_job(page: Page, name: str) -> str:
    """The address of a new job."""
    go(page, "#/job/new")
    page.get_by_role("textbox", name="What is done").fill(name)
    page.get_by_role("button", name="Go on to its parts").click()
    expect(page.get_by_role("region", name=re.compile("^Photos"))).to_be_visible()
    return str(page.evaluate("location.hash"))


def undo(page: Page) -> None:
    page.locator(".undo-line").get_by_role("button", name="Undo").click()


def test_a_photo_is_deleted_undone_and_given_back_from_the_bin(page, tmp_path):
    job = add_job(page, "Rear seat out")
    choose(page, photo(tmp_path))
    expect(said(page)).to_have_text("Photo of Rear seat out added")
    photos_at(page).tap()
    page.get_by_role("button", name="Delete photo").tap()
    expect(said(page)).to_have_text("Photo of Rear seat out deleted")
    expect(photos_at(page)).to_have_count(0)
    undo(page)
    expect(photos_at(page)).to_have_count(1)
    photos_at(page).tap()
    page.get_by_role("button", name="Delete photo").tap()
    expect(photos_at(page)).to_have_count(0)
    go(page, "#/bin")
    page.get_by_role("button", name="Bring back photo of Rear seat out").tap()
    expect(page.get_by_text("Nothing was deleted.")).to_be_visible()
    go(page, job)
    expect(photos_at(page)).to_have_count(1)


def test_a_photo_is_moved_to_another_record_and_back(page, tmp_path):
    weigh(page, "Rear seat", ["1", "2", "kg"], photo(tmp_path))
    job = add_job(page, "Rear seat out")
    go(page, "#/parts")
    page.get_by_role("link", name=re.compile("^Rear seat")).tap()
    photos_at(page).tap()
    part = page.evaluate("location.hash")
    dialog = page.get_by_role("dialog", name="Photo")
    expect(dialog.get_by_text(re.compile("^Weighing, today"))).to_be_visible()
    dialog.get_by_role("button", name="Move to…").tap()
    dialog.get_by_role("textbox", name="Move to").fill("seat out")
    dialog.get_by_role("button", name=re.compile("^Rear seat out")).tap()
    dialog.get_by_role("button", name="Move it there").tap()
    expect(said(page)).to_have_text("Photo moved to Rear seat out")
    expect(photos_at(page)).to_have_count(0)
    go(page, job)
    photos_at(page).tap()
    expect(dialog.get_by_role("region", name="Rear seat out")).to_be_visible()
    dialog.get_by_text("History", exact=True).tap()
    dialog.get_by_role("button", name="Undo Photo moved to Rear seat out").tap()
    expect(dialog).to_have_count(0)  # the job has no photo any more
    go(page, part)
    expect(photos_at(page)).to_have_count(1)


def test_the_same_photo_on_two_records_is_one_file_and_leaves_one_without_the_other(page, garage, tmp_path):
    picture = photo(tmp_path)
    first, second = add_job(page, "Rear seat out"), add_job(page, "Carpet out")
    for job in (first, second):
        go(page, job)
        expect(photos_at(page)).to_have_count(0)
        choose(page, picture)
        expect(photos_at(page)).to_have_count(1)
    choose(page, picture)
    expect(page.get_by_text("This photo is here already.")).to_be_visible()
    in_sync(page)
    token = garage.join()
    told = [entry["set"] for entry in garage.entries(token) if entry["kind"] == "photo"]
    assert len(told) == 2  # of two records, and not of one twice
    assert len({fields["sha256"] for fields in told}) == 1
    photos_at(page).tap()
    dialog = page.get_by_role("dialog", name="Photo")
    expect(dialog.get_by_role("region", name="Rear seat out")).to_be_visible()
    dialog.get_by_role("region", name="Carpet out").get_by_role("button", name="Delete it here").tap()
    expect(photos_at(page)).to_have_count(0)
    go(page, first)
    expect(photos_at(page)).to_have_count(1)


def test_every_job_and_part_shows_as_many_photos_as_the_report_tells(demo, make_phone):
    page = make_phone("anna", demo).open()
    token = str(json.loads(demo.ask("/api/v1/pair", body={"code": None}))["token"])
    sheet = json.loads(demo.ask("/api/v1/report?format=json", token))
    ids = {(entry["kind"], entry["set"].get("name")): entry["record"] for entry in demo.entries(token)}
    told = {("job", each["job"]): len(each["photos"]) for each in sheet["jobs"]}
    told |= {("part", each["part"]): len(each["photos"]) for job in sheet["jobs"] for each in job["parts"]}
    shown = {}
    for kind, name in [each for each, count in told.items() if count]:
        go(page, f"#/{kind}/{ids[kind, name]}")
        expect(page.get_by_role("heading", level=1, name=name)).to_be_visible()
        expect(photos_at(page)).not_to_have_count(0)
        shown[kind, name] = photos_at(page).count()
    assert shown == {each: count for each, count in told.items() if count}
    assert len(shown) > 10
