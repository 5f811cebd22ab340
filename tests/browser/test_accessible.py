"""Every screen, asked by axe: nothing serious, on a phone light and dark and at a desk; nothing wider than it."""

import pytest

from tests.browser.axe import DARK, LIGHT, faults_of
from tests.browser.phone import DESK, PHONE
from tests.pictures import addresses
from tests.pictures_of_joining import joining


@pytest.mark.parametrize(
    ("look", "schemes"), [pytest.param(PHONE, (LIGHT, DARK), id="phone"), pytest.param(DESK, (LIGHT,), id="desk")]
)
def test_no_screen_has_a_serious_fault_or_is_wider_than_the_glass(demo, make_phone, look, schemes):
    phone = make_phone("phone", demo, **look)
    page = phone.open()
    page.get_by_text("Weight now").wait_for()
    faults = []
    for name, address in addresses(demo):
        page.goto(demo.address + "/" + address)
        page.get_by_role("heading", level=1).wait_for()
        faults += faults_of(page, name, *schemes)
    assert faults == []


def test_no_screen_on_a_phones_way_into_the_garage_has_one_either(playwright):
    faults = []

    def ask(page, name):
        faults.extend(faults_of(page, name, LIGHT, DARK))
        page.set_viewport_size(DESK["viewport"])
        faults.extend(faults_of(page, f"{name}, wide", LIGHT))
        page.set_viewport_size(PHONE["viewport"])

    joining(playwright, ask, PHONE)
    assert faults == []
