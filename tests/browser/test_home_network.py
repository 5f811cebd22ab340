"""A real phone's way on the home network: trust, joining by code with a yes at home, and a whole day without signal."""

import re
from datetime import UTC, datetime, timedelta

import pytest
from playwright.sync_api import Error, Page, expect

from tarebook.devices import authority
from tests.browser.doing import arrived_once, begin, go, in_sync, join, photo, weigh
from tests.browser.home_network import FIND_NAME, NAME, HomeServer, camera_before, install, someone_else
from tests.browser.phone import DESK, Phone
from tests.devices.openssl import forged


@pytest.fixture(scope="module")
def kept(tmp_path_factory):
    running = HomeServer(tmp_path_factory.mktemp("house"))
    yield running
    running.close()


@pytest.fixture
def house(kept):
    """The one home computer of this file, which a test may have left switched off."""
    return kept if kept.process else kept.start()


@pytest.fixture
def make_phone_at_home(playwright, tmp_path, house):
    """A phone on the home network; it trusts the home computer unless told otherwise."""
    made = []

    def make(name, trusts=True):
        phone = Phone(playwright, tmp_path / name, house.origin)
        phone.flags = (FIND_NAME,)
        if trusts:
            install(phone, house.certificates / "authority.pem")
        made.append(phone)
        return phone

    yield make
    for phone in made:
        phone.close()


def test_a_name_that_the_authority_may_not_vouch_for_is_refused_by_the_browser(house, make_phone_at_home, tmp_path):
    page = make_phone_at_home("anna").start()
    ours = authority.load(house.certificates)
    with someone_else(forged(ours, [NAME], tmp_path)) as port:
        page.goto(f"https://{NAME}:{port}/")
        expect(page).to_have_title("Somebody else")  # the same authority, the name it may vouch for
    for names, asked in (((NAME, "elsewhere.example"), NAME), (("elsewhere.example",), "elsewhere.example")):
        with someone_else(forged(ours, names, tmp_path)) as port, pytest.raises(Error, match="ERR_CERT_"):
            page.goto(f"https://{asked}:{port}/")


@pytest.mark.parametrize("years", [-9, 9])
def test_the_door_page_tells_a_phone_whose_clock_is_years_off(house, make_phone_at_home, years):
    """Its own clock is all that a browser without a certificate can be asked about: the page compares it."""
    page = make_phone_at_home("anna", trusts=False).start()
    page.clock.set_fixed_time(datetime.now(UTC) + timedelta(days=366 * years))
    page.goto(house.door)
    expect(page.get_by_text("clock and the home computer’s differ by 9 years.")).to_be_visible()


@pytest.fixture(scope="module")
def at_home(playwright, kept, tmp_path_factory):
    """The home computer's own browser, joined."""
    phone = Phone(playwright, tmp_path_factory.mktemp("desk"), kept.address, **DESK)
    page = join(phone, kept)
    begin(page, "Coupe", "980 kg")
    in_sync(page)
    yield page
    phone.close()
    assert phone.troubles == []


@pytest.fixture
def desk(house, at_home):
    """A browser on the home computer itself, on the screen that lets phones in."""
    at_home.reload()
    go(at_home, "#/devices")
    return at_home


def type_code(page: Page, code: str) -> None:
    page.get_by_role("textbox", name="Or type the code").fill(code)
    page.get_by_role("button", name="Join", exact=True).click()


def fresh_code(desk: Page) -> str:
    desk.get_by_role("button", name="Add a phone").click()
    return str(desk.locator(".short-code").inner_text())


def words_agree(desk: Page, page: Page) -> None:
    words = page.locator(".check-words")
    expect(words).to_have_text(re.compile(r"^\w+ · \w+$"))
    expect(desk.locator(".check-words")).to_have_text(words.inner_text())


def let_in(desk: Page, page: Page) -> None:
    """Somebody compares the words on both screens and says yes."""
    words_agree(desk, page)
    desk.get_by_role("button", name="Let it in").click()
    page.get_by_role("button", name="Later").click()
    expect(page.get_by_role("navigation", name="Main")).to_be_visible()


def test_a_phone_joins_by_a_typed_code_and_brings_home_once_what_it_weighed_without_the_home_computer(
    house, make_phone_at_home, desk, tmp_path
):
    phone = make_phone_at_home("anna")
    page = phone.start()
    page.goto(house.door)
    page.get_by_role("link", name="Open Tarebook").click()
    type_code(page, fresh_code(desk).lower())
    let_in(desk, page)
    in_sync(page)
    phone.is_installed()
    told = phone.context.new_cdp_session(page).send("Page.getInstallabilityErrors")
    assert told["installabilityErrors"] == []

    house.kill()
    weigh(page, "Spare wheel", ["1", "1", "Point", "3", "kg"], photo(tmp_path))
    phone.sigkill()
    page = phone.open("/#/parts")
    expect(page.get_by_text("Spare wheel")).to_be_visible()
    expect(page.locator(".sync-words").first).to_contain_text("On this phone only")
    page.reload()
    expect(page.get_by_text("Spare wheel")).to_be_visible()

    house.start()
    in_sync(page)
    arrived_once(house, "11.3 kg")


def test_a_phone_joins_by_looking_at_the_square_code_on_the_home_computers_screen(
    house, make_phone_at_home, desk, tmp_path
):
    before = len(house.run("devices").splitlines())
    desk.get_by_role("button", name="Add a phone").click()
    phone = make_phone_at_home("anna")
    phone.flags += camera_before(desk.get_by_alt_text("The square code for the phone"), tmp_path / "seen.y4m")
    page = phone.open()
    page.get_by_role("button", name="Scan the square code").click()
    let_in(desk, page)
    in_sync(page)
    assert len(house.run("devices").splitlines()) == before + 1


def test_a_phone_hears_a_no_and_a_wrong_code_and_may_lose_its_page_while_it_waits(make_phone_at_home, desk):
    page = make_phone_at_home("anna").open()
    type_code(page, "2222-2222")
    expect(page.get_by_role("alert")).to_contain_text("code")
    type_code(page, fresh_code(desk))
    words_agree(desk, page)
    desk.get_by_role("button", name="Refuse").click()
    expect(page.get_by_role("alert")).to_contain_text("did not let this device in")
    page.evaluate("code => { location.hash = `pair=${code}`; }", fresh_code(desk))
    words_agree(desk, page)
    page.wait_for_url(lambda url: "pair" not in url)  # a code that is used up does not stay in the address
    page.reload()
    let_in(desk, page)
    in_sync(page)


def test_a_phone_whose_camera_is_not_allowed_says_so_and_takes_a_typed_code(make_phone_at_home):
    page = make_phone_at_home("anna").open()
    page.get_by_role("button", name="Scan the square code").click()
    expect(page.get_by_role("alert")).to_contain_text("The camera cannot be used here")
    page.get_by_role("button", name="Good").click()
    expect(page.get_by_role("textbox", name="Or type the code")).to_be_visible()
