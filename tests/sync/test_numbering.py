"""Eight writers and a reader that follows: it must see every entry, in order, however the writers overlap.

The same reader over numbers from an identity column misses entries for ever, which is why there is none.
"""

from __future__ import annotations

import json
import random
import threading
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from sqlalchemy import create_engine, text

from tarebook.garage import feed, intake
from tarebook.garage.author import new_id
from tarebook.settings import Settings
from tarebook.store import garages
from tarebook.store.database import Database
from tarebook.store.migrate import prepare
from tests.home import entry

WRITERS, PUSHES, ENTRIES = 8, 25, 20


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


def followed(write: Callable[[int], None], read: Callable[[int], list[int]]) -> list[int]:
    """What a reader sees, page by page after the last number seen, while eight writers write and then once more."""
    done = threading.Event()
    seen: list[int] = []

    def follow() -> None:
        last_round = False
        while not last_round:
            last_round = done.is_set()
            seen.extend(read(seen[-1] if seen else 0))

    reader = threading.Thread(target=follow)
    reader.start()
    try:
        with ThreadPoolExecutor(WRITERS) as writers:
            list(writers.map(write, range(WRITERS)))
    finally:
        done.set()
        reader.join()
    return seen


def test_a_reader_that_follows_eight_writers_misses_nothing(database: Database) -> None:
    garage = new_garage(database)

    def write(_writer: int) -> None:
        for _ in range(PUSHES):
            texts = [entry(new_id(), {"name": "x"}, id=new_id(), device="home") for _ in range(ENTRIES)]
            with database.write() as session:
                intake.push(session, garage, "home", texts)

    marks = {0: ""}

    def read(since: int) -> list[int]:
        with database.read() as session:
            row = garages.get(session, garage)
            page = feed.pull(session, row, row.epoch, since, marks[since])
        numbers = [line["number"] for line in page.entries]
        marks[numbers[-1] if numbers else since] = page.mark
        return numbers

    assert followed(write, read) == list(range(1, WRITERS * PUSHES * ENTRIES + 1))


def test_the_same_reader_over_an_identity_column_misses_entries(address: str) -> None:
    engine = create_engine(address, pool_size=WRITERS + 1)
    with engine.begin() as connection:
        connection.execute(text("CREATE TABLE line (number bigint GENERATED ALWAYS AS IDENTITY, writer int)"))

    def write(writer: int) -> None:
        pause = random.Random(writer)
        for _ in range(PUSHES):
            with engine.begin() as connection:
                connection.execute(text("INSERT INTO line (writer) VALUES (:writer)"), {"writer": writer})
                connection.execute(text("SELECT pg_sleep(:pause)"), {"pause": pause.random() / 100})

    def read(since: int) -> list[int]:
        with engine.begin() as connection:
            later = text("SELECT number FROM line WHERE number > :since ORDER BY number")
            return list(connection.scalars(later, {"since": since}))

    seen = followed(write, read)
    with engine.begin() as connection:
        written = set(connection.scalars(text("SELECT number FROM line")))
    engine.dispose()
    assert len(written) == WRITERS * PUSHES
    assert written - set(seen)


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
