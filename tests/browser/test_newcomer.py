"""The README's way of a phone into the garage, touch by touch: from `serve --lan` to the first weighing at home."""

import re
import time

from playwright.sync_api import expect

from tests.browser import closing
from tests.browser.doing import Thumb, arrived_once, in_sync, photo
from tests.browser.home_network import FIND_NAME, HomeServer, Inviting, install
from tests.browser.phone import Phone

DOOR = re.compile(r"open (http://\S+) on it")


def test_a_newcomer_who_does_what_the_readme_says_brings_the_first_weighing_home(playwright, tmp_path):
    started = time.monotonic()
    house = HomeServer(tmp_path / "server").start()
    phone = Phone(playwright, tmp_path / "phone", house.origin)
    phone.flags = (FIND_NAME,)
    try:
        thumb = Thumb(phone.start())
        is_trusted_after_the_door(thumb, phone, house, tmp_path)
        is_let_in(thumb, house)
        weighs(thumb, tmp_path)
        in_sync(phone.page)
        arrived_once(house, "11.3 kg")
        assert phone.troubles == []
    finally:
        phone.close()
        house.close()
    closing.lines.append(
        f"Newcomer: {thumb.taps} touches and {thumb.keys} keys from serve --lan to the first weighing at home; "
        f"the machines' part took {time.monotonic() - started:.0f} s. Trusted by certutil, not in a phone's settings; "
        "the icon on a home screen was not tried."
    )


def is_trusted_after_the_door(thumb, phone, house, folder):
    """The address that `serve` prints, typed; what it shows is done; it then leads into the app."""
    door = house.says(DOOR)
    thumb.go(door)
    expect(thumb.page.get_by_role("heading", name="Not trusted yet", exact=True)).to_be_visible()
    expect(thumb.page.get_by_text("does not trust it. Go through the steps below")).to_be_visible()
    expect(thumb.page.get_by_role("link", name="Open Tarebook")).to_be_hidden()
    with thumb.page.expect_download() as saved:
        thumb.tap("link", "Get the certificate")
    saved.value.save_as(folder / saved.value.suggested_filename)
    phone.close()
    install(phone, folder / "tarebook-authority.crt")

    thumb.page = phone.start()
    thumb.go(door)
    expect(thumb.page.get_by_role("heading", name="All is well")).to_be_visible()
    thumb.tap("link", "Open Tarebook")
    expect(thumb.page.get_by_role("heading", name="Join your garage")).to_be_visible()
    assert thumb.page.evaluate("isSecureContext") is True


def is_let_in(thumb, house):
    """By the short code that `tarebook pair` prints, and a yes there to the two words on both screens."""
    with Inviting(house) as at_home:
        thumb.type("Or type the code", at_home.code)
        thumb.tap("button", "Join")
        words = thumb.page.locator(".check-words")
        expect(words).to_have_text(re.compile(r"^\w+ · \w+$"))
        assert at_home.words() == words.inner_text().split(" · ")
        at_home.say_yes()
    expect(thumb.page.get_by_role("heading", name="Joined. One more thing")).to_be_visible()
    expect(thumb.page.get_by_text("“Add to home screen”").or_(thumb.page.get_by_text("Install to"))).to_be_visible()
    thumb.tap("button", "Later")


def weighs(thumb, folder):
    """The car, its minimum and the scale, its display first, as the app asks for them; then a part, with a photo."""
    thumb.type("What is the car called?", "Coupe")
    thumb.type("The class minimum, if you know it", "980 kg")
    thumb.tap("button", "Next: your scale")
    thumb.tap("radio", "82.4 kg, steps of 0.1 kg")
    thumb.tap("button", "Bathroom scale")
    thumb.tap("button", "Weigh the first part")
    for key in ("1", "1", "Point", "3"):
        thumb.tap("button", key)
    thumb.type("What is it?", "Spare wheel")
    with thumb.page.expect_file_chooser() as chosen:
        thumb.tap("button", "Take a photo")
    chosen.value.set_files(photo(folder))
    expect(thumb.page.get_by_alt_text("The photo just taken")).to_be_visible()
    thumb.tap("button", "Save weighing")
    expect(thumb.page.get_by_text("Saved on this phone.")).to_be_visible()
