"""What one device has sent is taken back, by entries that every replica folds alike, and given back."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import select, update

from tarebook.garage import take_back
from tarebook.garage.take_back import Plan
from tarebook.journal.fold import Fold
from tarebook.store.models import EntryRow
from tarebook.store.rebuild import rebuild
from tests.home import Device, Home, entry, id_of


@pytest.fixture
def home(tmp_path: Path) -> Home:
    return Home(tmp_path)


def send(device: Device, record: str, fields: dict[str, Any], *base: str, inside: str = "", **more: Any) -> str:
    text = entry(record, fields, base, device=inside or device.id, **more)
    answer = device.push(text)
    assert answer.json["results"][0]["state"] == "accepted", answer.json
    return id_of(text)


def take(home: Home, device: Device, since: str = "") -> Plan:
    with home.database.write() as session:
        plan = take_back.taking_back(session, home.garage, device.id, since)
        take_back.carry_out(session, home.garage, device.id, "taken", plan)
    return plan


def give(home: Home, device: Device) -> Plan:
    with home.database.write() as session:
        plan = take_back.giving_back(session, home.garage, device.id)
        take_back.carry_out(session, home.garage, device.id, "given", plan)
    return plan


def standing(home: Home) -> dict[str, dict[str, Any]]:
    """Record -> its fields, of those not deleted: as a replica that pulled every line folds them."""
    reader, fold = home.pair("reader"), Fold()
    page: dict[str, Any] = {"more": True, "epoch": "", "mark": ""}
    while page["more"]:
        page = reader.pull(page["epoch"], len(fold.kept), page["mark"]).json
        for line in page["entries"]:
            fold.add(line["number"], line["text"], line["aside"])
    with home.database.write() as session:
        assert rebuild(session, home.garage).changed == 0
    open_ones = {name: record for name, record in fold.records.items() if not record.deleted}
    assert not any(record.conflicts for record in open_ones.values())
    return {name: record.values for name, record in open_ones.items() if record.kind != "verdict"}


def test_its_records_go_and_others_get_the_values_they_had(home: Home) -> None:
    good, bad = home.pair("good"), home.pair("bad")
    first = send(good, "j1", {"name": "Seats", "hours": "2"})
    gone = send(good, "j2", {"name": "Carpet"})
    edit = send(bad, "j1", {"name": "xxx", "note": "xxx"}, first)
    send(bad, "j2", {"deleted": True}, gone)
    for many in range(2):
        bad.push(*(entry(f"x{many}-{number}", {"name": "x"}, device=bad.id) for number in range(350)))
    send(bad, "j1", {"hours": "99"}, edit)
    plan = take(home, bad)
    assert (plan.gone, plan.back, plan.set) == ({"job": 700}, {"job": 1}, {"job": 1})
    assert standing(home) == {"j1": {"name": "Seats", "hours": "2"}, "j2": {"name": "Carpet"}}


def test_given_back_all_is_as_it_was(home: Home) -> None:
    good, bad = home.pair("good"), home.pair("bad")
    first = send(good, "j1", {"name": "Seats", "hours": "2"})
    send(bad, "j1", {"hours": "9", "note": "n"}, first)
    send(bad, "x", {"name": "x"})
    send(bad, "photo", {"of": "j1", "sha256": "0" * 64}, kind="photo")
    before = standing(home)
    take(home, bad)
    assert standing(home) == {"j1": {"name": "Seats", "hours": "2"}}
    give(home, bad)
    assert standing(home) == before
    assert not give(home, bad).changes
    take(home, bad)
    assert standing(home) == {"j1": {"name": "Seats", "hours": "2"}}
    assert not take(home, bad).changes


def test_what_others_have_worked_on_stays(home: Home) -> None:
    good, bad = home.pair("good"), home.pair("bad")
    made = send(bad, "j1", {"name": "Seats"})
    send(good, "j1", {"hours": "3"}, made)
    plan = take(home, bad)
    assert (plan.shared, plan.changes) == ({"job": 1}, [])
    assert standing(home) == {"j1": {"name": "Seats", "hours": "3"}}


def test_a_later_edit_of_another_keeps_its_value(home: Home) -> None:
    good, bad = home.pair("good"), home.pair("bad")
    first = send(good, "j1", {"name": "Seats", "hours": "2"})
    edit = send(bad, "j1", {"name": "xxx", "hours": "99"}, first)
    send(good, "j1", {"hours": "3"}, edit)
    take(home, bad)
    assert standing(home) == {"j1": {"name": "Seats", "hours": "3"}}


def test_a_conflict_it_made_is_settled_by_taking_its_side_away(home: Home) -> None:
    good, bad = home.pair("good"), home.pair("bad")
    first = send(good, "j1", {"name": "Seats"})
    send(good, "j1", {"hours": "3"}, first)
    send(bad, "j1", {"hours": "99"}, first)
    take(home, bad)
    assert standing(home) == {"j1": {"name": "Seats", "hours": "3"}}


def test_what_arrived_before_stays_and_what_was_taken_before_is_not_given_back(home: Home) -> None:
    bad = home.pair("bad")
    for record, day in (("x1", 1), ("x2", 2), ("x3", 3)):
        name = send(bad, record, {"name": record})
        with home.database.write() as session:
            session.execute(update(EntryRow).where(EntryRow.id == name).values(received_at=_day(day)))
    take(home, bad, _day(3))
    assert set(standing(home)) == {"x1", "x2"}
    take(home, bad, _day(2))
    assert set(standing(home)) == {"x1"}
    take(home, bad, _day(3))
    assert set(standing(home)) == {"x1"}
    give(home, bad)
    assert set(standing(home)) == {"x1", "x2", "x3"}
    take(home, bad, _day(3))
    assert set(standing(home)) == {"x1", "x2"}


def _day(day: int) -> str:
    return f"2026-05-{day:02}T00:00:00.000+00:00"


def test_only_the_home_computers_own_entries_count_as_taken_back(home: Home) -> None:
    """A phone that writes in its name is not believed."""
    bad = home.pair("bad")
    send(bad, "x", {"name": "x"})
    take(home, bad)
    with home.database.read() as session:
        texts = session.scalars(select(EntryRow.text)).all()
    ours = next(json.loads(text) for text in texts if json.loads(text)["device"] == "home")
    send(bad, "y", {"name": "y"}, inside="home", writer=ours["writer"])
    assert give(home, bad).back == {"job": 1}
    assert set(standing(home)) == {"x", "y"}
