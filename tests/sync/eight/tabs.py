"""Real tabs of a real Chromium that save all at once: two of them, a new version, a blocked upgrade, a copied profile.

In each what a page has called saved must be on the disk, on the screen, and at home.
"""

from __future__ import annotations

import json
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from random import Random

from playwright.sync_api import Page, Playwright, expect

from tests.browser.doing import go, in_sync
from tests.browser.releases import ReleasedServer, build_release
from tests.browser.serving import Server
from tests.sync.eight import Outcome
from tests.sync.eight.saver import Saver, at_home, names, shown

LOOK_FOR_UPDATE = (
    "navigator.serviceWorker.getRegistration().then((it) => it.update()).then(() => undefined, () => undefined)"
)
# Another tab's newer app: it opens every garage with a higher version, which waits until nobody holds the older.
UPGRADE = """async () => {
  const kept = (await indexedDB.databases()).filter(({ name }) => name !== "tarebook-session");
  await Promise.all(kept.map(({ name, version }) => new Promise((done, failed) => {
    const asked = indexedDB.open(name, version + 100);
    asked.onsuccess = () => done(asked.result.close());
    asked.onerror = failed;
  })));
}"""


@contextmanager
def saving(playwright: Playwright, folder: Path, server: Server) -> Iterator[Saver]:
    """A phone that has joined, its first tab open, and whose scripts complain about nothing."""
    phone = Saver(playwright, folder / "one", server.start())
    try:
        phone.first()
        yield phone
    finally:
        phone.close()
        server.close()
    assert phone.troubles == [], phone.troubles


def another(phone: Saver) -> Page:
    page = phone.context.new_page()
    page.goto(phone.origin + "/#/jobs")
    expect(page.get_by_role("heading", name="Jobs", exact=True)).to_be_visible()
    return page


def checked(phone: Saver, *others: Saver) -> Outcome:
    """All phones have sent all they have; what each was told is at home and on the screens of all."""
    phones = (phone, *others)
    told = [name for one in phones for name in one.told]
    for one in phones:
        in_sync(one.page)
    found = at_home(phone.server, told)
    for one in phones:
        found.lost += one.lost()
        found.missing += [name for page in one.context.pages for name in shown(page, told)]
    found.did["jobs saved"] += len(told)
    return found


def two_tabs(playwright: Playwright, folder: Path, chance: Random) -> Outcome:
    """Two tabs save at the same time."""
    with saving(playwright, folder, Server(folder / "home")) as phone:
        pages = (phone.page, another(phone))
        for page in pages:
            phone.saves(page)
        phone.waits_for(chance.randrange(5, 15))
        phone.stops(*pages)
        return checked(phone)


def updated(playwright: Playwright, folder: Path, chance: Random, releases: dict[str, Path]) -> Outcome:
    """A second tab takes a new version while the first, of the old one, saves; then both save."""
    server = ReleasedServer(folder / "home")
    server.release(releases["1"])
    with saving(playwright, folder, server) as phone:
        page, other = phone.page, another(phone)
        phone.saves(page)
        phone.waits_for(chance.randrange(1, 4))
        server.release(releases["2"])
        other.evaluate(LOOK_FOR_UPDATE)
        go(other, "#/devices")
        expect(other.get_by_text("A new version is ready.")).to_be_visible()
        with other.expect_navigation():
            other.get_by_role("button", name="Use it now").click()
        other.wait_for_function("() => document.documentElement.dataset.release === '2'")
        assert page.evaluate("document.documentElement.dataset.release") == "1"
        phone.saves(other)
        phone.waits_for(chance.randrange(3, 8))
        phone.stops(page, other)
        return checked(phone)


def blocked(playwright: Playwright, folder: Path, chance: Random) -> Outcome:
    """A newer app in a second tab asks for the records while the first saves: that lets go, and says so."""
    with saving(playwright, folder, Server(folder / "home")) as phone:
        other = another(phone)
        phone.saves(phone.page)
        phone.waits_for(chance.randrange(1, 6))
        other.evaluate(UPGRADE)
        expect(phone.page.get_by_role("heading", name="The records are not open")).to_be_visible()
        found = Outcome(lost=phone.lost())
        with phone.page.expect_download() as started:
            phone.page.get_by_role("button", name="Export everything").click()
        started.value.save_as(folder / "export.json")
        exported = json.loads((folder / "export.json").read_text())["entries"]
        here = names(json.loads(row["text"]) for row in exported)
        found.lost += [name for name in phone.told if name not in here]
        found.did["jobs saved"] += len(phone.told)
        return found


def copied(playwright: Playwright, folder: Path, chance: Random) -> Outcome:
    """A profile copied into a second browser, the device and its token with it: both save."""
    with saving(playwright, folder, Server(folder / "home")) as phone:
        phone.saves(phone.page)
        phone.waits_for(chance.randrange(1, 4))
        phone.stops(phone.page)
        phone.close()
        clone = Saver(playwright, folder / "two", phone.server)
        shutil.copytree(phone.profile, clone.profile, ignore=shutil.ignore_patterns("Singleton*"))
        try:
            for one in (phone, clone):
                page = one.open("/#/jobs")
                expect(page.get_by_role("heading", name="Jobs", exact=True)).to_be_visible()
                one.saves(page)
            for one in (phone, clone):
                one.waits_for(chance.randrange(1, 5))
            for one in (phone, clone):
                one.stops(one.page)
            return checked(phone, clone)
        finally:
            clone.close()


def run(playwright: Playwright, folder: Path, seed: int, times: int) -> Outcome:
    """Each so many times."""
    releases = {number: build_release(folder / f"release-{number}", number) for number in ("1", "2")}
    found = Outcome()
    for number in range(times):
        chance = Random(f"{seed} {number}")
        for scene in (two_tabs, blocked, copied):
            found.add(scene(playwright, folder / f"{scene.__name__}-{number}", chance))
            found.did[scene.__name__.replace("_", " ")] += 1
        found.add(updated(playwright, folder / f"updated-{number}", chance, releases))
        found.did["updated"] += 1
    return found
