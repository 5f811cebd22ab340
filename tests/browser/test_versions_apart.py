"""An app and a home computer of different versions: nothing is lost, and each side says what to do."""

import pytest
from playwright.sync_api import expect

from tests.browser.doing import begin, go, in_sync, join
from tests.browser.releases import ReleasedServer, build_release
from tests.browser.test_revoked import note_job


@pytest.fixture(scope="module")
def releases(tmp_path_factory):
    """The app of two protocols, by number."""
    return {number: build_release(tmp_path_factory.mktemp(f"app-{number}"), str(number), number) for number in (1, 2)}


@pytest.fixture
def home(tmp_path):
    server = ReleasedServer(tmp_path / "server")
    yield server
    server.close()


def start(home: ReleasedServer, releases, number: int) -> None:
    """Begin to serve, as this version, in the place of any other."""
    home.release(releases[number])
    home.protocol = number
    home.start()


def works_in(phone, home):
    page = join(phone, home)
    begin(page, "Coupe", "980 kg")
    in_sync(page)
    return page


def test_an_old_app_that_a_newer_home_computer_does_not_understand_keeps_everything_until_it_is_updated(
    home, releases, make_phone
):
    start(home, releases, 1)
    page = works_in(make_phone("anna", home), home)
    home.kill()
    note_job(page, "Spare wheel out")
    start(home, releases, 2)
    go(page, "#/records")
    expect(page.get_by_role("alert")).to_contain_text("This app is older than the home computer's", timeout=30_000)
    expect(page.locator(".where-first")).to_have_text("On this phone only (1)")

    go(page, "#/devices")  # the new version has been looked for by itself
    with page.expect_navigation():
        page.get_by_role("button", name="Use it now").click(timeout=30_000)
    in_sync(page)
    go(page, "#/jobs")
    expect(page.get_by_text("Spare wheel out")).to_be_visible()


def test_a_new_app_that_an_older_home_computer_does_not_understand_keeps_everything_until_that_is_updated(
    home, releases, make_phone
):
    start(home, releases, 2)
    page = works_in(make_phone("anna", home), home)
    home.kill()
    note_job(page, "Spare wheel out")
    start(home, releases, 1)
    go(page, "#/records")
    expect(page.get_by_role("alert")).to_contain_text("The home computer's Tarebook is older", timeout=30_000)
    expect(page.locator(".where-first")).to_have_text("On this phone only (1)")

    home.kill()
    start(home, releases, 2)
    page.reload()
    in_sync(page)
    go(page, "#/jobs")
    expect(page.get_by_text("Spare wheel out")).to_be_visible()
