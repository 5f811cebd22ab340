"""What a person does with the app, in the words on its screens."""

import hashlib
import io
import re
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from PIL import Image
from playwright.sync_api import Error, Locator, Page, Route, expect

from tests.browser.phone import Phone
from tests.browser.serving import Server

ON_HOME = re.compile("On the home computer|In a backup")


def join(phone: Phone, server: Server) -> Page:
    """Open a fresh pairing link; the garage is open and the app is kept for a start without the server."""
    link = server.pairing_link()
    page = phone.open(link.removeprefix(server.address))
    expect(page.get_by_role("navigation", name="Main")).to_be_visible()
    phone.is_installed()
    return page


def begin(page: Page, car: str, minimum: str) -> None:
    """A newcomer's first start: the car and its minimum, no scale named yet."""
    page.get_by_role("textbox", name="What is the car called?").fill(car)
    page.get_by_role("textbox", name="The class minimum, if you know it").fill(minimum)
    page.get_by_role("button", name="Next: your scale").click()
    page.get_by_role("button", name="Weigh the first part").click()
    expect(page.get_by_role("heading", name="Weigh a part")).to_be_visible()


def go(page: Page, address: str) -> None:
    """To a screen by its address, as a tapped link does."""
    page.evaluate("(hash) => { location.hash = hash; }", address)


def leave(page: Page) -> None:
    """The thumb leaves the field it is in, which keeps it."""
    page.evaluate("document.activeElement.blur()")


def said(page: Page) -> Locator:
    """The line that says what was just done, beside its Undo."""
    return page.locator(".undo-line .said")


@contextmanager
def before_the_records(page: Page, address: str) -> Iterator[None]:
    """An address opened while the records are still on their way; they come afterwards."""
    held: list[Route] = []
    page.route("**/sync/pull?*", lambda route: held.append(route))  # a built-in is no handler for it
    page.goto(address)
    yield
    for each in held:
        each.continue_()
    page.unroute("**/sync/pull?*")


def photo(folder: Path, name: str = "yard.jpg", size: tuple[int, int] = (2400, 1800)) -> Path:
    """A picture as a camera gives it, with a place in its EXIF that must not leave the phone."""
    picture = Image.linear_gradient("L").resize(size).convert("RGB")
    exif = Image.Exif()
    exif[0x010F] = "A camera"
    exif.get_ifd(0x8825)[1] = "N"
    path = folder / name
    picture.save(path, quality=90, exif=exif)
    return path


def has_exif(data: bytes) -> bool:
    """True when a picture says where or with what it was taken."""
    return len(Image.open(io.BytesIO(data)).getexif()) > 0


def press(page: Page, keys: list[str]) -> None:
    """Press keys of the keypad."""
    keypad = page.get_by_role("group", name="Keypad")
    for key in keys:
        keypad.get_by_role("button", name=key, exact=True).click()


def weigh(page: Page, what: str, keys: list[str], picture: Path | None = None) -> None:
    """Weigh a part from wherever the app is, until it says that the weighing is saved."""
    page.get_by_role("navigation", name="Main").get_by_role("link", name="Weigh").click()
    page.get_by_role("link", name=re.compile("^A part")).click()
    press(page, keys)
    page.get_by_role("textbox", name="What is it?").fill(what)
    if picture:
        page.locator('input[data-photo="camera"]').set_input_files(picture)
        expect(page.get_by_alt_text("The photo just taken")).to_be_visible()
    page.get_by_role("button", name="Save weighing").click()
    expect(page.get_by_text("Saved on this phone.")).to_be_visible()


class Thumb:
    """Does it all by touch, and counts: every tap, and every key of the system's own keyboard. `scrolled`: points."""

    def __init__(self, page: Page) -> None:
        self.page, self.taps, self.keys, self.scrolled = page, 0, 0, 0

    def tap(self, role: str, name: str | re.Pattern[str]) -> None:
        self.page.get_by_role(role, name=name, exact=isinstance(name, str)).tap()  # type: ignore[arg-type]
        self.taps += 1
        with suppress(Error):  # the tap led to another page, which begins at its top
            self.scrolled = max(self.scrolled, int(self.page.evaluate("scrollY")))  # it brings into view what was not

    def press(self, keys: list[str]) -> None:
        """Keys of the app's keypad, a tap each."""
        for key in keys:
            self.page.get_by_role("group", name="Keypad").get_by_role("button", name=key, exact=True).tap()
            self.taps += 1
        self.scrolled = max(self.scrolled, int(self.page.evaluate("scrollY")))

    def type(self, field: str, text: str) -> None:
        """Into a field that is tapped first."""
        self.tap("textbox", field)
        self.page.keyboard.type(text)
        self.keys += len(text)

    def go(self, address: str) -> None:
        """To an address, typed."""
        self.page.goto(address)
        self.keys += len(address)


def arrived_once(server: Server, shown: str) -> bytes:
    """One weighing is at home, and its one photo, byte for byte; the photo."""
    token = server.join()
    entries = server.entries(token)
    assert [entry["set"]["shown"] for entry in entries if entry["kind"] == "weighing"] == [shown]
    [kept] = [entry["set"] for entry in entries if entry["kind"] == "photo"]
    at_home = server.ask(f"/api/v1/photos/{kept['sha256']}?size=full", token)
    assert hashlib.sha256(at_home).hexdigest() == kept["sha256"]
    return at_home


def in_sync(page: Page) -> None:
    """Wait until the phone says that everything, photos too, is at home."""
    expect(page.locator(".sync-words").first).to_have_text(ON_HOME, timeout=30_000)
