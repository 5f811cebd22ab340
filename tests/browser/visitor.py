"""What a person does in a browser of another engine: find things by the words on them, press, type, look."""

from pathlib import Path
from typing import Any

from tests.browser.webdriver import CommandError, Wire, wait_until

# What an element is called: by its label, else by its own words. Hidden ones are nobody's.
FIND = """
const [selector, words] = arguments;
const called = (element) => {
  const label = element.getAttribute("aria-label") ?? element.labels?.[0]?.textContent ?? element.textContent;
  return label.replace(/\\s+/g, " ").trim();
};
const seen = [...document.querySelectorAll(selector)].filter((element) => element.getClientRects().length > 0);
const exact = seen.find((element) => called(element) === words);
return exact ?? seen.find((element) => called(element).startsWith(words)) ?? null;
"""
CONTROLS = "button, a[href], summary, [role=button]"
FIELDS = "input, textarea, select"
ON_HOME = ("On the home computer", "In a backup")


class Visitor:
    """Looks at the app through a wire and does things in it."""

    def __init__(self, wire: Wire) -> None:
        self.wire = wire

    def find(self, selector: str, words: str) -> Any:
        """The element called so, once it is there."""
        return wait_until(lambda: self.script(FIND, selector, words), f"“{words}” among {selector}; {self.words()!r}")

    def script(self, source: str, *arguments: Any) -> Any:
        """What a script returns; nothing while the page is on its way to another."""
        try:
            return self.wire.script(source, *arguments)
        except CommandError:
            return None

    def press(self, words: str, among: str = CONTROLS) -> None:
        """Press what is called so."""
        self.wire.click(self.find(among, words))

    def fill(self, label: str, text: str) -> None:
        """Type into the field called so."""
        self.wire.type(self.find(FIELDS, label), text)

    def choose_photo(self, path: Path) -> None:
        """Give the camera's field a picture file, and wait until the picture is shown."""
        self.wire.type(self.wire.script("return document.querySelector('input[data-photo=camera]')"), str(path))
        wait_until(lambda: self.script("return !!document.querySelector('img[alt=\"The photo just taken\"]')"), "photo")

    def words(self) -> str:
        """Every word to be seen now."""
        return str(self.script("return document.body.innerText"))

    def sees(self, words: str) -> None:
        """Wait until these words are on the screen."""
        wait_until(lambda: words in self.words(), f"{words!r} in {self.words()!r}")

    def is_in_sync(self) -> None:
        """Wait until the phone says that everything, photos too, is at home."""
        line = "return document.querySelector('.sync-words')?.textContent"
        wait_until(lambda: self.script(line) in ON_HOME, "everything at home", within=90)

    def go(self, address: str) -> None:
        """To a screen by its address, as a tapped link does."""
        self.wire.script("location.hash = arguments[0]", address)

    def reload(self) -> None:
        """As the browser's own button does, and wait until the new page is there."""
        self.wire.script("window.before = true; setTimeout(() => location.reload(), 50);")
        wait_until(
            lambda: self.script("return window.before === undefined && document.readyState === 'complete'"), "page"
        )

    def is_installed(self) -> None:
        """Wait until the service worker is active, so that the next start needs no server."""
        assert self.wire.script("await navigator.serviceWorker.ready; return true") is True

    def begin(self, car: str, minimum: str) -> None:
        """A newcomer's first start: the car and its minimum, no scale named yet."""
        self.fill("What is the car called?", car)
        self.fill("The class minimum, if you know it", minimum)
        self.press("Next: your scale")
        self.press("Weigh the first part")
        self.sees("Weigh a part")

    def weigh(self, what: str, keys: list[str], picture: Path) -> None:
        """Weigh a part, with a photo, until the app says that it is saved."""
        self.press("Weigh")
        self.press("A part")
        for key in keys:
            self.press(key, among=".keypad button")
        self.fill("What is it?", what)
        self.choose_photo(picture)
        self.press("Save weighing")
        self.sees("Saved on this phone.")
