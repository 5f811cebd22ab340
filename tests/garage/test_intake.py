"""The intake writes what the fold says, whatever the batches in which entries come."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import insert, select

from tarebook.errors import TarebookError
from tarebook.garage import intake
from tarebook.garage.author import Change, new_id, write
from tarebook.store.models import DeviceRow, EntryRow
from tarebook.store.rebuild import rebuild
from tests.home import Home, entry, id_of
from tests.sync.replicas import server_state

JOURNALS = sorted((Path(__file__).parents[2] / "fixtures" / "journals").glob("*.json"))


@pytest.fixture
def home(tmp_path: Path) -> Home:
    made = Home(tmp_path)
    known = [
        {"garage": made.garage, "id": name, "name": name, "token_hash": name, "paired_at": "", "last_seen": ""}
        for name in ("phone-a", "phone-b", "phone-c", "d")
    ]
    with made.database.write() as session:
        session.execute(insert(DeviceRow), known)
    return made


def push(home: Home, *texts: str) -> intake.Pushed:
    with home.database.write() as session:
        return intake.push(session, home.garage, "phone-a", texts)


@pytest.mark.parametrize("size", [1, 3, 100])
@pytest.mark.parametrize("path", JOURNALS, ids=lambda path: path.stem)
def test_batches_of_any_size_give_what_the_file_says(home: Home, path: Path, size: int) -> None:
    case: dict[str, Any] = json.loads(path.read_text(encoding="utf-8"))
    texts = [row["text"] for row in case["entries"]]
    for start in range(0, len(texts), size):
        push(home, *texts[start : start + size])
    state = server_state(home)
    standing = {name: json.loads(standing) for name, standing in standings(home).items()}
    assert standing == {name: record["values"] for name, record in case["expect"]["records"].items()}
    assert state["aside"] == case["expect"]["aside"]
    with home.database.write() as session:
        assert rebuild(session, home.garage).changed == 0
    assert server_state(home) == state


def standings(home: Home) -> dict[str, str]:
    from tarebook.store.models import RecordRow

    with home.database.read() as session:
        return {row.id: row.standing for row in session.execute(select(RecordRow.id, RecordRow.standing))}


def test_an_entry_that_waited_is_no_longer_aside_once_its_base_comes(home: Home) -> None:
    first = entry("j1", {"name": "Seats"})
    second = entry("j1", {"hours": "2"}, (id_of(first),))
    (late,) = push(home, second).results
    assert (late.state, late.why) == ("set_aside", "waiting")
    push(home, first)
    (again,) = push(home, second).results
    assert (again.state, again.why, again.number) == ("repeated", None, 1)


def test_a_push_tells_what_became_of_an_entry_that_a_later_one_of_the_batch_woke(home: Home) -> None:
    first = entry("j1", {"name": "Seats"})
    second = entry("j1", {"hours": "2"}, (id_of(first),))
    push(home, second, first)
    with home.database.read() as session:
        assert session.scalars(select(EntryRow.reason).order_by(EntryRow.number)).all() == [None, None]


def test_numbers_follow_each_other_without_gaps(home: Home) -> None:
    for size in (1, 4, 2):
        push(home, *[entry(new_id(), {"name": "x"}) for _ in range(size)])
    with home.database.read() as session:
        assert session.scalars(select(EntryRow.number).order_by(EntryRow.number)).all() == [1, 2, 3, 4, 5, 6, 7]


def test_the_exact_text_is_kept(home: Home) -> None:
    start = '{ "id":"e\\u0031x", "device" :"phone-a","writer":"w","n":1e0,'
    text = start + '"kind":"job","record":"j", "set":{"name":"ü🔩"},"base":[]}'
    push(home, text)
    with home.database.read() as session:
        assert session.scalar(select(EntryRow.text)) == text.encode()


def test_too_many_entries_are_refused(home: Home) -> None:
    with pytest.raises(TarebookError) as refusal:
        push(home, *["x"] * 501)
    assert refusal.value.code == "too_many_entries"


def test_a_garage_that_is_not_there_takes_nothing(home: Home) -> None:
    with pytest.raises(TarebookError) as refusal, home.database.write() as session:
        intake.push(session, "elsewhere", "phone-a", [])
    assert refusal.value.code == "garage_unknown"


def test_the_servers_own_entries_follow_the_heads_there_are(home: Home) -> None:
    push(home, entry("j1", {"name": "Seats", "hours": "1"}))
    with home.database.write() as session:
        changes = [
            Change("job", "j1", {"hours": "2"}),
            Change("job", "j1", {"hours": "3"}),
            Change("job", None, {"name": "x"}),
        ]
        names = write(session, home.garage, changes)
    assert names[:2] == ["j1", "j1"]
    assert json.loads(standings(home)["j1"]) == {"name": "Seats", "hours": "3"}


def test_thousands_of_entries_of_the_servers_own_go_in_by_batches(home: Home) -> None:
    with home.database.write() as session:
        assert len(write(session, home.garage, [Change("job", None, {"name": "x"}) for _ in range(1100)])) == 1100
    assert len(standings(home)) == 1100


def test_ids_are_uuids_of_version_seven_in_order_of_time() -> None:
    import uuid

    first, second = uuid.UUID(new_id()), uuid.UUID(new_id())
    assert (first.version, first.variant) == (7, uuid.RFC_4122)
    assert first.int >> 80 <= second.int >> 80
    assert first != second
