"""Eight writers and a reader that follows: it must see every entry, in order, however the writers overlap.

The same readers over numbers from an identity column miss entries for ever, which is why there is none.
`python -m tests.sync --only numbering` has 100,000 entries.
"""

from __future__ import annotations

import json
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest

from tarebook.garage import feed, intake
from tarebook.settings import Settings
from tarebook.store import garages
from tarebook.store.database import Database
from tarebook.store.migrate import prepare
from tests.home import entry
from tests.sync.eight.numbering import READERS, by_identity, by_lock, follow_all

ENTRIES = 3200


@pytest.fixture(params=["sqlite", "postgresql"])
def database(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Database]:
    """A fresh garage's database on either."""
    url = request.getfixturevalue("address") if request.param == "postgresql" else ""
    made = prepare(Settings(data=tmp_path, database_url=url))
    yield made
    made.close()


def new_garage(database: Database) -> str:
    with database.write() as session:
        return garages.create(session).id


def test_readers_that_follow_eight_writers_miss_nothing(database: Database) -> None:
    missed, outcome = follow_all(database, ENTRIES, by_lock, seed=1)
    assert (missed, outcome.lost, outcome.missing) == ([0] * READERS, [], [])


def test_the_same_readers_over_an_identity_column_miss_entries(address: str, tmp_path: Path) -> None:
    database = prepare(Settings(data=tmp_path, database_url=address))
    missed, _outcome = follow_all(database, ENTRIES, by_identity, seed=1)
    database.close()
    assert min(missed) > 0


def test_one_slow_writer_holds_the_others_back_instead_of_being_passed(database: Database) -> None:
    """The race itself, step by step: the slow one has its number and has not committed."""
    garage = new_garage(database)
    numbered, go_on = threading.Event(), threading.Event()

    def slow() -> None:
        with database.write() as session:
            intake.push(session, garage, "home", [entry("slow", {"name": "x"}, id="slow", device="home")])
            numbered.set()
            go_on.wait(10)

    def quick() -> None:
        numbered.wait(10)
        with database.write() as session:
            intake.push(session, garage, "home", [entry("quick", {"name": "x"}, id="quick", device="home")])

    threads = [threading.Thread(target=work) for work in (slow, quick)]
    for thread in threads:
        thread.start()
    numbered.wait(10)
    threads[1].join(0.3)
    assert threads[1].is_alive()
    with database.read() as session:
        assert feed.pull(session, garages.get(session, garage), "", 0, "").entries == []
    go_on.set()
    for thread in threads:
        thread.join()
    with database.read() as session:
        page = feed.pull(session, garages.get(session, garage), "", 0, "")
    assert [json.loads(line["text"])["id"] for line in page.entries] == ["slow", "quick"]
