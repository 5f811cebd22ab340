"""SIGKILL at every step: the server over SQLite and over PostgreSQL, PostgreSQL itself, and a real Chromium.

The server's steps are those of `tests/fuzz/kills`: before a file is opened for writing, renamed, removed, made or
brought to the disk, at a transaction's begin and commit, or at any moment. The browser is killed at any moment while
its page saves and sends; what the page had called saved must be on its disk, on its screen, and in the end at home.
"""

from __future__ import annotations

from pathlib import Path
from random import Random

from playwright.sync_api import Playwright, expect

from tests.browser.doing import in_sync
from tests.browser.serving import Server
from tests.fuzz.kills import Garage, killed
from tests.sync import postgres
from tests.sync.eight import Outcome
from tests.sync.eight.saver import Saver, at_home, shown

MOST_TEXTS = 400
"""A garage that has grown so far is left for a new one: every kill is followed by a proof of all of it."""
MOST_KILLS = 40
"""Of one phone, likewise."""
ON_POSTGRES = ("push", "push", "photo", "photo", "backup")


def on_sqlite(folder: Path, seed: int, kills: int) -> Outcome:
    """The server on SQLite; it pushes, takes photos, backs up, restores. What does not hold raises."""
    found, chance = Outcome(), Random(f"{seed} sqlite")
    garages = 0
    while found.did["kills on SQLite"] < kills:
        garages += 1
        garage = Garage(folder / str(garages))
        while len(garage.texts) < MOST_TEXTS and found.did["kills on SQLite"] < kills:
            _kill(garage, chance, found, "kills on SQLite")
    return found


def on_postgres(folder: Path, seed: int, kills: int) -> Outcome:
    """The server on PostgreSQL; every third time PostgreSQL dies with it."""
    found, chance = Outcome(), Random(f"{seed} postgres")
    what = "kills on PostgreSQL"
    left = 0
    while found.did[what] < kills:
        left += 1
        with postgres.running(postgres.DURABLE) as address:
            garage = Garage(folder / str(left), ON_POSTGRES, address)
            while len(garage.texts) < MOST_TEXTS and found.did[what] < kills:
                with_it = found.did[what] % 3 == 2
                if _kill(garage, chance, found, what, address if with_it else ""):
                    found.did["of PostgreSQL too"] += with_it
    return found


def _kill(garage: Garage, chance: Random, found: Outcome, what: str, database: str = "") -> bool:
    """One child at work until it is killed, and all that is proven after that. False: it came to its end first."""
    texts, photos = len(garage.texts), len(garage.photos)
    where = killed(garage, chance)
    found.did["entries answered"] += max(0, len(garage.texts) - texts)
    found.did["photos answered"] += max(0, len(garage.photos) - photos)
    if database:
        postgres.kill_and_start(database)
    garage.check()
    found.did[what] += where != "to the end"
    return where != "to the end"


def of_chromium(playwright: Playwright, folder: Path, seed: int, kills: int) -> Outcome:
    """A browser killed while its page saves, opened again, looked at, and so on; in the end it sends all home."""
    found, chance = Outcome(), Random(f"{seed} chromium")
    while found.did["kills of Chromium"] < kills:
        name = f"phone{found.did['kills of Chromium']}"
        server = Server(folder / f"{name}-home").start()
        phone = Saver(playwright, folder / name, server)
        try:
            phone.first()
            for _ in range(min(MOST_KILLS, kills - found.did["kills of Chromium"])):
                phone.saves(phone.page)
                phone.waits_for(chance.randrange(4))
                phone.page.wait_for_timeout(chance.uniform(0, 80))
                phone.sigkill()
                found.did["kills of Chromium"] += 1
                page = phone.open("/#/jobs")
                expect(page.get_by_role("heading", name="Jobs", exact=True)).to_be_visible()
                found.lost += phone.lost()
                found.missing += shown(page, phone.told)
            in_sync(phone.page)
            found.add(at_home(server, phone.told))
            found.did["jobs saved there"] += len(phone.told)
        finally:
            phone.close()
            server.close()
        assert phone.troubles == []
    return found
