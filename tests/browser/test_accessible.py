"""Every screen, asked by axe: nothing serious, on a phone light and dark and at a desk; nothing wider than it."""

import pytest
from axe_playwright_python.sync_playwright import Axe

from tests.browser.phone import DESK, PHONE
from tests.pictures import addresses
from tests.pictures_of_joining import joining

SERIOUS = ("serious", "critical")
LOOKS = [
    pytest.param({**PHONE, "color_scheme": "light"}, id="phone light"),
    pytest.param({**PHONE, "color_scheme": "dark"}, id="phone dark"),
    pytest.param({**DESK, "color_scheme": "light"}, id="desk light"),
]


def faults_of(page, name):
    """(screen, what is wrong, where) for whatever keeps somebody from using it."""
    found = Axe().run(page).response["violations"]
    faults = [(name, each["id"], each["nodes"][0]["html"]) for each in found if each["impact"] in SERIOUS]
    if page.evaluate("document.documentElement.scrollWidth > innerWidth"):
        faults.append((name, "wider than the screen", ""))
    return faults


@pytest.mark.parametrize("look", LOOKS)
def test_no_screen_has_a_serious_fault_or_is_wider_than_the_glass(demo, make_phone, look):
    phone = make_phone("phone", demo, **look)
    page = phone.open()
    page.get_by_text("Weight now").wait_for()
    faults = []
    for name, address in addresses(demo):
        page.goto(demo.address + "/" + address)
        page.get_by_role("heading", level=1).wait_for()
        faults += faults_of(page, name)
    assert faults == []


@pytest.mark.parametrize("look", LOOKS)
def test_no_screen_on_a_phones_way_into_the_garage_has_one_either(playwright, look):
    faults = []
    joining(playwright, lambda page, name: faults.extend(faults_of(page, name)), look)
    assert faults == []
