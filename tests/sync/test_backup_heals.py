"""Backup, go on, restore: two phones bring everything back, entries and photos, told or untold.

The sentence that is tested: a record that a phone has called saved exists somewhere for ever, and after the network has
been quiet for a while every replica equals the fold of the same journal.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tarebook.garage.records import all_records
from tarebook.store.backup import back_up_to
from tarebook.store.rebuild import rebuild
from tests.home import Home
from tests.photos import picture, sha
from tests.sync.eight.healing import WAYS, PhotoPhone, Way, told
from tests.sync.model_phone import ModelPhone

ways = pytest.mark.parametrize("bring_back", WAYS)


def everything(home: Home) -> dict[str, set[str]]:
    with home.database.write() as session:
        assert rebuild(session, home.garage).changed == 0
        records = all_records(session, home.garage)
    return {kind: {record["id"] for record in rows} for kind, rows in records.items() if rows}


def on_disk(home: Home) -> set[str]:
    return {file.name for file in home.settings.photos.glob("??/*") if file.is_file()}


@ways
def test_two_phones_heal_entries_and_photos(home: Home, tmp_path: Path, bring_back: Way) -> None:
    one, two = PhotoPhone(home.pair()), PhotoPhone(home.pair())
    one.save("job", "j1", {"name": "before"})
    one.photograph(1, "j1")
    for phone in (one, two):
        phone.sync(home)
    back_up_to(home.settings, home.database, tmp_path / "backup.zip")

    one.save("job", "j2", {"name": "after, by one"})
    one.photograph(2, "j2")
    one.sync(home)
    two.sync(home)
    two.look()
    two.save("job", "j1", {"name": "renamed by two"})
    two.photograph(3, "j1")
    two.sync(home)
    one.sync(home)

    bring_back(home, tmp_path / "backup.zip")
    third = PhotoPhone(home.pair())
    third.pull()
    for number in range(7):  # past the old head before any phone comes back
        third.save("job", f"new-{number}", {"name": f"new {number}"})
    third.sync(home)
    assert "j2" not in everything(home)["job" + "s"]

    for phone in (two, one, two, third):
        phone.sync(home)
    assert everything(home) == {
        "jobs": {"j1", "j2", *(f"new-{number}" for number in range(7))},
        "photos": {"photo-1", "photo-2", "photo-3"},
    }
    assert on_disk(home) >= {sha(picture(seed)) for seed in (1, 2, 3)}
    folds = [{name: r.values for name, r in phone.fold().records.items()} for phone in (one, two, third)]
    assert folds[0] == folds[1] == folds[2]
    assert folds[0]["j1"]["name"] == "renamed by two"


@ways
def test_the_phone_that_took_a_photo_is_lost_and_another_that_looked_at_it_brings_it_back(
    home: Home, tmp_path: Path, bring_back: Way
) -> None:
    lost, other = PhotoPhone(home.pair()), PhotoPhone(home.pair())
    lost.save("job", "j1", {"name": "x"})
    lost.sync(home)
    back_up_to(home.settings, home.database, tmp_path / "backup.zip")
    lost.photograph(4, "j1")
    lost.sync(home)
    other.sync(home)
    other.look()
    bring_back(home, tmp_path / "backup.zip")
    other.sync(home)
    other.sync(home)
    assert everything(home)["photos"] == {"photo-4"}
    assert other.device.get(f"/photos/{sha(picture(4))}").data == picture(4)


@ways
def test_a_photo_whose_entry_is_older_than_the_backup_and_whose_bytes_are_newer_comes_back(
    home: Home, tmp_path: Path, bring_back: Way
) -> None:
    """No cursor shows this one: the journal is the same."""
    phone = PhotoPhone(home.pair())
    phone.save("job", "j1", {"name": "x"})
    phone.photograph(5, "j1")
    ModelPhone.sync(phone, home)
    back_up_to(home.settings, home.database, tmp_path / "backup.zip")
    phone.sync(home)
    bring_back(home, tmp_path / "backup.zip")
    phone.sync(home)
    assert phone.device.get(f"/photos/{sha(picture(5))}").data == picture(5)


def test_in_a_backup_is_said_again_only_after_the_next_one(home: Home, tmp_path: Path) -> None:
    phone = PhotoPhone(home.pair())
    phone.save("job", "j1", {"name": "x"})
    phone.sync(home)
    back_up_to(home.settings, home.database, tmp_path / "backup.zip")
    phone.save("job", "j2", {"name": "y"})
    phone.sync(home)
    told(home, tmp_path / "backup.zip")
    phone.sync(home)
    assert (len(phone.rows), phone.device.pull().json["durable"]) == (2, 1)
    back_up_to(home.settings, home.database, tmp_path / "next.zip")
    assert phone.device.pull().json["durable"] == 2
