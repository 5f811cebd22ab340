"""Pictures of a phone's way into the garage: door page, code, the wait for a yes, and what one taken off is told."""

from __future__ import annotations

import tempfile
from collections.abc import Callable
from pathlib import Path
from typing import Any

from playwright.sync_api import Page, Playwright

from tests.browser.doing import begin, go, join
from tests.browser.home_network import FIND_NAME, HomeServer, install
from tests.browser.phone import Phone

ANDROID = "Mozilla/5.0 (Linux; Android 14) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/156.0 Mobile Safari/537.36"
CAMERA = ("--use-fake-device-for-media-stream", "--use-fake-ui-for-media-stream")
# What tells an iPhone's browser from others, to the app.
IPHONE = "Object.defineProperty(navigator, 'standalone', { value: false })"
# A browser that has an offer of its own is pictured elsewhere; here the drawn steps are.
NO_OFFER = "addEventListener('beforeinstallprompt', (event) => event.stopImmediatePropagation(), true)"

Take = Callable[[Page, str], None]


def joining(playwright: Playwright, take: Take, look: dict[str, Any]) -> None:
    """Takes every picture of it in one look: a size and a scheme. The home computer's own browser has the same."""
    with tempfile.TemporaryDirectory() as scratch:
        server = HomeServer(Path(scratch) / "server").start()
        desk = Phone(playwright, Path(scratch) / "desk", server.address, **look)
        phone = Phone(playwright, Path(scratch) / "phone", server.origin, user_agent=ANDROID, **look)
        phone.flags = (FIND_NAME, *CAMERA)
        try:
            _before_trust(phone, server, take)
            _on_both_screens(desk, phone, server, take)
        finally:
            desk.close()
            phone.close()
            server.close()


def _before_trust(phone: Phone, server: HomeServer, take: Take) -> None:
    page = phone.start()
    page.goto(server.door)
    page.get_by_role("heading", name="Not trusted yet", exact=True).wait_for()
    take(page, "door-untrusted")
    phone.close()
    install(phone, server.certificates / "authority.pem")


def _on_both_screens(desk: Phone, phone: Phone, server: HomeServer, take: Take) -> None:
    home = join(desk, server)
    begin(home, "Coupe", "980 kg")
    go(home, "#/devices")
    page = phone.start()
    page.add_init_script(NO_OFFER)
    page.goto(server.door)
    page.get_by_role("heading", name="All is well").wait_for()
    take(page, "door-trusted")
    apple = phone.context.new_page()
    apple.add_init_script(IPHONE)
    apple.goto(server.origin)
    apple.get_by_text("Install first").wait_for()
    take(apple, "opening-iphone")
    apple.close()
    page.goto(server.origin)
    take(page, "opening")
    page.get_by_role("button", name="Scan the square code").click()
    page.get_by_text("Hold the phone").wait_for()
    take(page, "opening-camera")
    page.get_by_role("button", name="Close the camera").click()
    home.get_by_role("button", name="Add a phone").click()
    page.get_by_role("textbox", name="Or type the code").fill(home.locator(".short-code").inner_text())
    page.get_by_role("button", name="Join", exact=True).click()
    page.locator(".check-words").wait_for()
    take(page, "opening-waiting")
    home.get_by_role("button", name="Let it in").wait_for()
    take(home, "devices-at-home")
    home.get_by_role("button", name="Let it in").click()
    page.get_by_role("button", name="Later").wait_for()
    take(page, "opening-joined")
    _taken_off(home, page, take)


def _taken_off(home: Page, page: Page, take: Take) -> None:
    home.get_by_role("button", name="Take off").click()
    home.get_by_role("button", name="Take it off").click()
    home.get_by_text("Taken off the list (1)").wait_for()
    page.get_by_role("button", name="Later").click()
    for screen in ("records", "devices"):
        go(page, f"#/{screen}")
        page.get_by_text("was taken off the garage's list").first.wait_for()
        take(page, f"{screen}-taken-off")
