"""Pictures of every screen from the running demo: `python -m tests.pictures FOLDER`; `--readme` renews the README's.

Each screen is taken at a phone's and at a desk's size, light and dark, and checked by axe on the way, so that a person
can look at what changed. Nothing is asserted here; `tests/browser` does that.
"""

from __future__ import annotations

import argparse
import json
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from itertools import product
from pathlib import Path
from typing import Any

from playwright.sync_api import Page, Playwright, sync_playwright

from tests.browser.phone import DESK, PHONE, Phone
from tests.browser.serving import Server
from tests.pictures_of_joining import joining

README_PICTURE = Path(__file__).parent.parent / "fixtures" / "demo" / "picture.png"
# fmt: off
PLAIN = (
    "car", "standing", "balance", "loose-ends", "parts", "weigh", "weigh-part", "weigh-car", "swap", "jobs", "job/new",
    "yard", "donor/new", "more", "car-sheet", "class-sheet", "scales", "scale/new", "drivers", "stages", "devices",
    "units", "records", "bin", "load-transfer", "fuel", "sheet/new",
    "ballast", "ballast/new",
)
# fmt: on
# Screens of one record: the address, and which record of a kind to open (by its place in the demo).
OF_RECORDS = (
    ("part", "part", 3),
    ("job", "job", 4),
    ("weighing", "weighing", 2),
    ("weigh-in", "weigh_in", 1),
    ("lift", "weigh_in", 2),
    ("lift", "lift", 0),
    ("ballast", "ballast_place", 0),
    ("scale", "scale", 0),
    ("donor", "donor", 0),
    ("sheet", "part of a sheet", 1),
    ("part", "part of a sheet", 1),
)


def addresses(server: Server) -> Iterator[tuple[str, str]]:
    """(name, hash address) of every screen, the ones of a record with a record of the demo."""
    for path in PLAIN:
        yield path.replace("/", "-"), f"#/{path}"
    token = str(json.loads(server.ask("/api/v1/pair", body={"code": None}))["token"])
    records: dict[str, list[str]] = {}
    for entry in server.entries(token):
        values, kind = dict(entry["set"]), str(entry["kind"])
        known = records.setdefault("donor" if values.get("whereabouts") == "yard" else kind, [])
        if entry["record"] not in known:
            known.append(str(entry["record"]))
        if kind == "sheet":
            records.setdefault("part of a sheet", []).append(str(values["part"]))
    for path, kind, place in OF_RECORDS:
        yield f"{path}-of-{kind.replace(' ', '-')}", f"#/{path}/{records[kind][place]}"


def take(page: Page, file: Path, full: bool = True) -> None:
    """One picture, once the screen has stopped changing."""
    page.wait_for_timeout(350)
    page.screenshot(path=file, full_page=full)


def _taken(folder: Path, look: str, page: Page, name: str) -> None:
    take(page, folder / f"{name}.{look}.png")


@contextmanager
def open_demo(playwright: Playwright, folder: Path, **look: Any) -> Iterator[tuple[Server, Phone]]:
    """A demo server and a phone that shows it, both gone at the end, whatever happens."""
    server = Server(folder / "demo", "--demo").start()
    phone = Phone(playwright, folder / "phone", server.address, **look)
    try:
        phone.open().get_by_text("Weight now").wait_for()
        yield server, phone
    finally:
        phone.close()
        server.close()


LOOKS: tuple[tuple[str, dict[str, Any]], ...] = (("phone", PHONE), ("desk", DESK))


def all_screens(folder: Path) -> None:
    for (size, look), scheme in product(LOOKS, ("light", "dark")):
        with (
            tempfile.TemporaryDirectory() as scratch,
            sync_playwright() as playwright,
            open_demo(playwright, Path(scratch), **look, color_scheme=scheme) as (server, phone),
        ):
            for name, address in addresses(server):
                phone.page.goto(server.address + "/" + address)
                take(phone.page, folder / f"{name}.{size}.{scheme}.png")
            joining(playwright, partial(_taken, folder, f"{size}.{scheme}"), {**look, "color_scheme": scheme})
            print(size, scheme, *phone.troubles, sep="\n  ")


def readme_picture() -> None:
    with (
        tempfile.TemporaryDirectory() as scratch,
        sync_playwright() as playwright,
        open_demo(playwright, Path(scratch), **PHONE, color_scheme="light") as (_, phone),
    ):
        take(phone.page, README_PICTURE, full=False)


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", nargs="?", type=Path, help="where the pictures go")
    parser.add_argument("--readme", action="store_true", help="renew the README's picture")
    options = parser.parse_args()
    if options.readme:
        readme_picture()
    if options.folder:
        options.folder.mkdir(parents=True, exist_ok=True)
        all_screens(options.folder)
    return 0


if __name__ == "__main__":
    sys.exit(main())
