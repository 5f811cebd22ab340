"""A new version of the app: it waits for the person's word, and takes nothing from a page that is still open."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.doing import begin, go, join, press
from tests.browser.releases import ReleasedServer, build_release

DRAFT_WITHIN = 500  # ms; a form is promised to be kept within 300 ms of the last change
LOOK_FOR_UPDATE = (
    "navigator.serviceWorker.getRegistration().then((it) => it.update()).then(() => undefined, () => undefined)"
)
CACHES = "caches.keys().then((names) => names.filter((name) => name.startsWith('tarebook-')).length)"


@pytest.fixture(scope="module")
def releases(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    return {number: build_release(tmp_path_factory.mktemp(f"release-{number}"), number) for number in ("1", "2")}


@pytest.fixture
def released(tmp_path: Path, releases: dict[str, Path]) -> Iterator[ReleasedServer]:
    server = ReleasedServer(tmp_path / "server")
    server.release(releases["1"])
    yield server.start()
    server.close()


def release_of(page: Page) -> str:
    return str(page.evaluate("document.documentElement.dataset.release"))


def offered(page: Page) -> None:
    page.evaluate(LOOK_FOR_UPDATE)
    go(page, "#/devices")
    expect(page.get_by_text("A new version is ready.")).to_be_visible()


def test_a_new_version_waits_for_the_persons_word(released, releases, make_phone):
    phone = make_phone("anna", released)
    page = join(phone, released)
    begin(page, "Coupe", "980 kg")
    released.release(releases["2"])
    offered(page)
    assert release_of(page) == "1"
    page.reload()
    assert release_of(page) == "1"

    go(page, "#/devices")
    with page.expect_navigation():
        page.get_by_role("button", name="Use it now").click()
    page.wait_for_function("document.documentElement.dataset.release === '2'")


def test_a_new_version_never_comes_in_the_middle_of_a_weighing_not_even_when_the_phone_kills_the_app(
    released, releases, make_phone
):
    phone = make_phone("anna", released)
    page = join(phone, released)
    begin(page, "Coupe", "980 kg")
    go(page, "#/weigh-part")
    page.get_by_role("textbox", name="What is it?").fill("Half a spare wheel")
    page.wait_for_timeout(DRAFT_WITHIN)
    released.release(releases["2"])
    offered(page)
    expect(page.get_by_text("It waits until what is half typed here is saved or cleared")).to_be_visible()
    expect(page.get_by_role("button", name="Use it now")).to_have_count(0)
    phone.sigkill()

    page = phone.open("/#/weigh-part")
    expect(page.get_by_role("textbox", name="What is it?")).to_have_value("Half a spare wheel")
    assert release_of(page) == "1"
    phone.close()
    page = phone.open("/#/devices")
    assert release_of(page) == "1"
    page.get_by_role("link", name="Half a spare wheel").click()
    press(page, ["9", "kg"])
    page.get_by_role("button", name="Save weighing").click()
    expect(page.get_by_text("Saved on this phone.")).to_be_visible()

    go(page, "#/devices")
    with page.expect_navigation():
        page.get_by_role("button", name="Use it now").click()
    page.wait_for_function("document.documentElement.dataset.release === '2'")
    phone.close()
    released.kill()
    page = phone.open("/#/parts")
    assert release_of(page) == "2"
    expect(page.get_by_text("Half a spare wheel")).to_be_visible()


def test_an_old_page_that_is_still_open_finds_its_files_though_server_and_other_tab_have_moved_on(
    released, releases, make_phone
):
    phone = make_phone("anna", released)
    page = join(phone, released)
    old = phone.context.new_page()
    old.goto(released.address + "/#/more")
    released.release(releases["2"])
    offered(page)
    with page.expect_navigation():
        page.get_by_role("button", name="Use it now").click()
    page.wait_for_function("document.documentElement.dataset.release === '2'")
    released.kill()

    go(old, "#/devices")  # a screen whose file the old page has not asked for yet
    expect(old.get_by_role("heading", name="Devices", exact=True)).to_be_visible()
    assert release_of(old) == "1"
    assert page.evaluate(CACHES) == 2

    phone.close()
    page = phone.open()
    page.wait_for_function(f"async () => await {CACHES} === 1")
    assert page.evaluate(CACHES) == 1
    assert release_of(page) == "2"


def test_a_version_with_a_damaged_file_is_never_offered_and_the_present_one_goes_on(released, releases, make_phone):
    phone = make_phone("anna", released)
    page = join(phone, released)
    released.release(releases["2"])
    damaged = next((released.app / "assets").glob("*.css"))
    damaged.write_bytes(damaged.read_bytes()[:-40])
    page.evaluate(LOOK_FOR_UPDATE)
    page.wait_for_function("async () => !(await navigator.serviceWorker.getRegistration()).installing")
    go(page, "#/devices")
    expect(page.get_by_text("This is the newest version")).to_be_visible()
    released.kill()
    page.reload()
    assert release_of(page) == "1"
