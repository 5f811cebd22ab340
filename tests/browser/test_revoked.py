"""A phone taken off the list with work unsent keeps everything, says so, and brings it home once it is let in again."""

import json

from playwright.sync_api import Page, expect

from tests.browser.doing import begin, go, in_sync, join

WORK = [f"Job {number}" for number in range(1, 8)]


def note_job(page: Page, name: str) -> None:
    go(page, "#/job/new")
    page.get_by_role("textbox", name="What is done").fill(name)
    page.get_by_role("button", name="Go on to its parts").click()
    expect(page.get_by_role("heading", name=name)).to_be_visible()


def take_off_the_list(page: Page) -> None:
    go(page, "#/devices")
    page.get_by_role("button", name="Take off").click()
    page.get_by_role("button", name="Take it off").click()
    expect(page.get_by_text("Taken off the list (1)")).to_be_visible()


def test_seven_records_unsent_when_a_phone_was_taken_off_the_list_are_exported_set_aside_and_taken_in(
    server, make_phone, tmp_path
):
    anna, ben = make_phone("anna", server), make_phone("ben", server)
    home = join(anna, server)
    begin(home, "Coupe", "980 kg")
    in_sync(home)
    in_sync(join(ben, server))
    server.kill()
    page = ben.page
    for name in WORK:
        note_job(page, name)
    expect(page.locator(".sync-words").first).to_have_text("On this phone only (7)")
    ben.close()
    server.start()
    take_off_the_list(home)

    page = ben.open("/#/records")
    expect(page.get_by_role("alert")).to_contain_text("This device was taken off the garage's list.")
    expect(page.get_by_text("Deleting the app or its data destroys 7 records")).to_be_visible()
    with page.expect_download() as download:
        page.get_by_role("button", name="Export everything").click()
    file = tmp_path / "export.json"
    download.value.save_as(file)
    unsent = [row for row in json.loads(file.read_text())["entries"] if row["state"] == "pending"]
    assert [json.loads(row["text"])["set"]["name"] for row in unsent] == WORK

    server.run("import", str(file))
    go(home, "#/records")
    expect(home.get_by_role("heading", name="Set aside (7)")).to_be_visible(timeout=30_000)

    go(page, "#/devices")
    again = page.get_by_role("region", name="Join again")
    expect(again).to_contain_text("Everything is still here")
    again.get_by_role("textbox", name="Pairing link or code").fill(server.pairing_link())
    again.get_by_role("button", name="Join", exact=True).click()
    in_sync(page)
    go(page, "#/jobs")
    expect(page.get_by_text("Job 1")).to_have_count(0)
    go(page, "#/records")
    expect(page.get_by_role("heading", name="Set aside (7)")).to_be_visible()
    page.get_by_role("button", name="Take in", exact=True).first.click()
    expect(page.get_by_role("heading", name="Set aside (6)")).to_be_visible()
    page.get_by_role("button", name="Take in all 6 from devices not in this garage").click()
    expect(page.get_by_text("Set aside")).to_have_count(0)
    in_sync(page)
    go(home, "#/jobs")
    for name in WORK:
        expect(home.get_by_text(name)).to_be_visible(timeout=30_000)
    assert sorted(job["name"] for job in json.loads(server.run("export", "-"))["jobs"]) == WORK
