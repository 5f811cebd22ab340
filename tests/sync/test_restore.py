"""A server restored from an older copy, step by step, and what does not matter: clocks."""

from __future__ import annotations

import json
import shutil
from pathlib import Path
from typing import Any

import pytest

from tarebook.garage.records import all_records
from tarebook.store import garages
from tarebook.store.rebuild import rebuild
from tests.home import Home, id_of
from tests.sync.model_phone import ModelPhone


def copy(home: Home, to: Path) -> Path:
    home.close()
    shutil.copytree(home.settings.data, to)
    return to


def restore(home: Home, copied: Path, announced: bool) -> None:
    home.close()
    shutil.rmtree(home.settings.data)
    shutil.copytree(copied, home.settings.data)
    if announced:
        with home.database.write() as session:
            garages.new_epoch(session, home.garage)


def jobs(home: Home) -> list[dict[str, Any]]:
    with home.database.read() as session:
        return all_records(session, home.garage)["jobs"]


def names(home: Home) -> set[str]:
    return {job["name"] for job in jobs(home)}


def test_behind_everybodys_back_and_past_the_old_head_two_phones_heal_it(home: Home, tmp_path: Path) -> None:
    one, two = ModelPhone(home.pair()), ModelPhone(home.pair())
    one.save("job", "j1", {"name": "before"})
    one.sync(home)
    copied = copy(home, tmp_path / "copy")
    one.save("job", "j2", {"name": "after, by one"})
    one.sync(home)
    two.sync(home)
    two.save("job", "j3", {"name": "after, by two"})
    two.sync(home)
    restore(home, copied, announced=False)
    third = ModelPhone(home.pair())
    third.pull()
    for number in range(5):
        third.save("job", f"new-{number}", {"name": f"new {number}"})
    third.sync(home)
    assert names(home) == {"before", *(f"new {number}" for number in range(5))}
    assert two.pull() == 409
    two.sync(home)
    one.sync(home)
    third.sync(home)
    assert names(home) >= {"before", "after, by one", "after, by two", "new 4"}
    assert {name: r.values for name, r in one.fold().records.items()} == {
        name: r.values for name, r in third.fold().records.items()
    }


def test_a_cursor_from_before_the_copy_stays_good_and_what_was_answered_since_is_sent_again(
    home: Home, tmp_path: Path
) -> None:
    phone = ModelPhone(home.pair())
    phone.pull()
    copied = copy(home, tmp_path / "copy")
    phone.save("job", "j1", {"name": "answered"})
    assert phone.push() == 200
    restore(home, copied, announced=False)
    assert phone.pull() == 200
    phone.sync(home)
    assert names(home) == {"answered"}


def test_the_same_entry_at_the_same_number_with_others_before_it_is_another_journal(home: Home, tmp_path: Path) -> None:
    one, two = ModelPhone(home.pair()), ModelPhone(home.pair())
    copied = copy(home, tmp_path / "copy")
    for phone in (one, two, one):
        phone.pull()
        phone.save("job", f"j{len(phone.held)}", {"name": "x"}, base=[])
        phone.push()
    one.pull()
    texts = [row["text"] for row in one.rows]
    restore(home, copied, announced=False)
    other = home.pair()
    other.push(texts[1], texts[0], texts[2])
    assert one.pull() == 409


def test_sent_again_in_the_same_order_it_is_the_same_journal(home: Home, tmp_path: Path) -> None:
    phone = ModelPhone(home.pair())
    copied = copy(home, tmp_path / "copy")
    phone.save("job", "j1", {"name": "x"})
    phone.sync(home)
    restore(home, copied, announced=False)
    home.pair().push(phone.rows[0]["text"])
    assert phone.pull() == 200


def test_announced_every_phone_is_told_at_once(home: Home, tmp_path: Path) -> None:
    phone = ModelPhone(home.pair())
    phone.save("job", "j1", {"name": "kept"})
    phone.sync(home)
    restore(home, copy(home, tmp_path / "copy"), announced=True)
    assert phone.push() == 409
    phone.sync(home)
    assert names(home) == {"kept"}


def test_a_copy_from_before_the_pairing_gives_the_device_back_after_pairing_again(home: Home, tmp_path: Path) -> None:
    copied = copy(home, tmp_path / "copy")
    phone = ModelPhone(home.pair())
    phone.save("job", "j1", {"name": "held"})
    phone.sync(home)
    restore(home, copied, announced=True)
    assert phone.pull() == 401
    before = phone.device.id
    phone.sync(home)
    assert (phone.device.id, names(home)) == (before, {"held"})


def test_an_empty_new_server_empties_no_phone(home: Home, tmp_path: Path) -> None:
    phone = ModelPhone(home.pair())
    phone.save("job", "j1", {"name": "held"})
    phone.sync(home)
    fresh = Home(tmp_path / "fresh")
    phone.device = fresh.pair(wanted=phone.device.id)
    assert phone.pull() == 409
    assert len(phone.held) == 1
    phone.sync(fresh)
    assert names(fresh) == {"held"}


@pytest.mark.parametrize("verdicts", [(True,), (False, True)])
def test_an_edit_of_what_a_stranger_made_counts_as_soon_as_that_is_taken_in(
    home: Home, tmp_path: Path, verdicts: tuple[bool, ...]
) -> None:
    two = ModelPhone(home.pair())
    copied = copy(home, tmp_path / "copy")
    one = ModelPhone(home.pair())
    made = one.save("job", "j1", {"name": "Seats out"})
    one.sync(home)
    two.sync(home)
    two.save("job", "j1", {"state": "fitted"})
    two.sync(home)
    restore(home, copied, announced=True)
    two.sync(home)
    for number, take in enumerate(verdicts):
        two.save("verdict", f"v{number}", {"entry": id_of(made), "take": take})
        two.sync(home)
    assert [(record.get("name"), record.get("state")) for record in jobs(home)] == [("Seats out", "fitted")]
    with home.database.write() as session:
        assert rebuild(session, home.garage).changed == 0


def history(home: Home, clocks: tuple[int, int]) -> dict[str, Any]:
    """Two phones edit one job without having seen each other, settle it, and delete another."""
    one, two = (ModelPhone(home.pair(), clock=clock) for clock in clocks)
    one.save("job", "j1", {"name": "Seats", "hours": "1"})
    one.save("job", "j2", {"name": "Glass"})
    one.sync(home)
    two.sync(home)
    two.save("job", "j1", {"hours": "3", "note": "Torx"})
    one.save("job", "j1", {"hours": "2"})
    two.save("job", "j2", {"deleted": True})
    for phone in (two, one, two):
        phone.sync(home)
    with home.database.read() as session:
        return all_records(session, home.garage, deleted=True)


def test_clocks_ten_years_off_either_way_give_the_same_state(tmp_path: Path) -> None:
    states = [
        history(Home(tmp_path / str(index)), clocks)
        for index, clocks in enumerate([(2026, 2026), (2016, 2036), (2036, 2016)])
    ]
    assert states[0]["jobs"][0]["conflicts"] == {"hours": ["3", "2"]}
    assert json.dumps(states[0]) == json.dumps(states[1]) == json.dumps(states[2])
