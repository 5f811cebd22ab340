"""What was once accepted stays accepted, and who sent a record stays known: on any later computer that has the key."""

from __future__ import annotations

import json
import sqlite3
from pathlib import Path
from typing import Any

import pytest

from tarebook.devices import tokens
from tarebook.store.backup import back_up_to
from tarebook.store.restore import restore
from tests.home import Device, Home, entry
from tests.sync.model_phone import ModelPhone
from tests.sync.replicas import folded, server_state


def elsewhere(home: Home, backup: Path, folder: Path) -> Home:
    """The garage on a new computer, from a backup."""
    home.close()
    new = Home(folder)
    new.close()
    (folder / "tarebook.sqlite3").unlink()
    restore(new.settings, backup)
    new.open()
    return new


def backed_up(home: Home, tmp_path: Path) -> Path:
    back_up_to(home.settings, home.database, tmp_path / "backup.zip")
    return tmp_path / "backup.zip"


def revoke(home: Home, phone: ModelPhone) -> None:
    with home.database.write() as session:
        tokens.revoke(session, home.garage, phone.device.id)


def moved(phone: ModelPhone, home: Home) -> ModelPhone:
    """The phone, talking to the garage where it is now."""
    phone.device.client = home.client
    return phone


def rows(device: Device) -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = device.pull().json["entries"]
    return found


def history(phone: ModelPhone, entries: int) -> None:
    for number in range(entries // 4):
        phone.save("job", f"job-{number}", {"name": f"Job {number}"})
        for hours in "123":
            phone.save("job", f"job-{number}", {"hours": hours})


def test_the_accepted_history_of_a_phone_revoked_later_holds_no_stranger_on_a_new_computer(
    home: Home, tmp_path: Path
) -> None:
    one, two = ModelPhone(home.pair("one")), ModelPhone(home.pair("two"))
    backup = backed_up(home, tmp_path)
    history(one, 244)
    one.sync(home)
    two.sync(home)
    before = server_state(home)
    revoke(home, one)
    new = elsewhere(home, backup, tmp_path / "new")
    revoke(new, one)
    moved(two, new).sync(new)
    assert server_state(new) == before
    assert folded(two.fold()) == before
    assert not before["aside"]
    assert all("receipt" in row and "sent_by" in row for row in rows(two.device)) is False
    assert [row.get("sent_by") for row in rows(two.device)] == [None] * 244


def test_without_its_receipts_that_history_is_a_strangers(home: Home, tmp_path: Path) -> None:
    one, two = ModelPhone(home.pair("one")), ModelPhone(home.pair("two"))
    backup = backed_up(home, tmp_path)
    history(one, 8)
    one.sync(home)
    two.sync(home)
    new = elsewhere(home, backup, tmp_path / "new")
    revoke(new, one)
    moved(two, new).proofs.clear()
    two.sync(new)
    assert set(server_state(new)["aside"].values()) == {"stranger"}


def taken_for_a_strangers(home: Home, tmp_path: Path) -> tuple[Home, Device, str, dict[str, Any]]:
    """An accepted entry that another has sent again without its receipt, to an older copy; a phone that has that."""
    one, two, three = (home.pair(name) for name in ("one", "two", "three"))
    backup = backed_up(home, tmp_path)
    text = entry("j1", {"name": "Seats"}, device=one.id)
    (told,) = one.push(text).json["results"]
    new = elsewhere(home, backup, tmp_path / "new")
    two.client = three.client = new.client
    with new.database.write() as session:
        tokens.revoke(session, new.garage, one.id)
    assert two.push(text).json["results"][0]["why"] == "stranger"
    return new, three, text, {"receipt": told["receipt"]}


def test_an_entry_taken_for_a_strangers_counts_by_the_home_computers_verdict_once_its_receipt_is_shown(
    home: Home, tmp_path: Path
) -> None:
    new, three, text, proof = taken_for_a_strangers(home, tmp_path)
    for receipt in (None, {"receipt": "x" * 22}):
        three.push(text, receipts=[receipt])
    assert (server_state(new)["aside"], len(rows(three))) == ({json.loads(text)["id"]: "stranger"}, 1)
    before = rows(three)[0]
    three.push(text, text, receipts=[proof, proof])
    three.push(text, receipts=[proof])
    first, verdict = rows(three)
    assert first == {**before, "receipt": first["receipt"]}
    judged = json.loads(verdict["text"])
    assert (judged["device"], judged["kind"], judged["set"]) == (
        "home", "verdict", {"entry": json.loads(text)["id"], "take": True},
    )  # fmt: skip
    assert not server_state(new)["aside"]
    phone = ModelPhone(three)
    phone.sync(new)
    assert folded(phone.fold()) == server_state(new)


def test_what_a_person_has_taken_in_stays_in_though_the_verdict_was_made_after_the_backup(
    home: Home, tmp_path: Path
) -> None:
    one, two = home.pair("one"), home.pair("two")
    backup = backed_up(home, tmp_path)
    text = entry("j1", {"name": "Seats"}, device="somebody")
    assert two.push(text).json["results"][0]["why"] == "stranger"
    one.push(entry("v1", {"entry": json.loads(text)["id"], "take": True}, kind="verdict", device=one.id))
    (told,) = two.push(text).json["results"]
    assert told["why"] is None
    assert rows(two)[0]["receipt"] == told["receipt"]
    new = elsewhere(home, backup, tmp_path / "new")
    two.client = new.client
    two.push(text, receipts=[{name: told[name] for name in ("receipt", "sent_by")}])
    assert not server_state(new)["aside"]


def test_a_receipt_does_not_overrule_a_person_who_has_left_the_entry_out(home: Home, tmp_path: Path) -> None:
    _new, three, text, proof = taken_for_a_strangers(home, tmp_path)
    verdict = entry("v1", {"entry": json.loads(text)["id"], "take": False}, kind="verdict", device=three.id)
    three.push(verdict)
    three.push(text, receipts=[proof])
    assert len(rows(three)) == 2


@pytest.mark.parametrize("author", ["home", "another phone"])
def test_what_one_sends_as_anothers_says_who_sent_it(home: Home, author: str) -> None:
    sender, other = home.pair("sender"), home.pair("another phone")
    device = other.id if author == "another phone" else author
    answer = sender.push(entry("j1", {"name": "Seats"}, device=device), entry("j2", {"name": "x"}, device=sender.id))
    assert [result.get("sent_by") for result in answer.json["results"]] == [sender.id, None]
    assert [row.get("sent_by") for row in rows(other)] == [sender.id, None]


def test_an_accepted_entry_is_answered_with_the_receipt_that_everyone_pulls(home: Home) -> None:
    one, two = home.pair(), home.pair()
    text = entry("j1", {"name": "Seats"}, device=one.id)
    first, again = (one.push(text).json["results"][0] for _ in range(2))
    assert first["receipt"] == again["receipt"] == rows(two)[0]["receipt"]
    assert (first["state"], again["state"], len(first["receipt"])) == ("accepted", "repeated", 22)


def test_a_strangers_entry_has_no_receipt_and_says_who_sent_it(home: Home) -> None:
    phone = home.pair()
    (result,) = phone.push(entry("j1", {"name": "Seats"}, device="nobody")).json["results"]
    (row,) = rows(phone)
    assert (result["state"], "receipt" in result, "receipt" in row, row["sent_by"]) == (
        "set_aside", False, False, phone.id,
    )  # fmt: skip


def test_no_receipt_but_the_entrys_own_is_any_use_and_none_is_an_error(home: Home, tmp_path: Path) -> None:
    backup = backed_up(home, tmp_path)
    one, two = home.pair("one"), home.pair("two")
    texts = [entry(f"j{number}", {"name": "Seats"}, device=one.id) for number in range(8)]
    own, others = ([row["receipt"] for row in one.push(*some).json["results"]] for some in (texts[:7], texts[7:]))
    new = elsewhere(home, backup, tmp_path / "new")
    sender = new.pair()
    forged: list[Any] = [
        {"receipt": own[0]}, {"receipt": own[0]}, {"receipt": own[2][:-1]}, {"receipt": own[3], "sent_by": two.id},
        {"receipt": "é" + own[4][1:]}, {"receipt": own[5], "sent_by": "a name \ud800"}, None, {"receipt": ""},
    ]  # fmt: skip
    assert others
    results = sender.push(*texts, receipts=forged).json["results"]
    assert [result["why"] for result in results] == [None, *["stranger"] * 7]


def test_a_phone_without_receipts_is_taken_in_as_ever_and_a_list_of_another_length_is_refused(home: Home) -> None:
    phone = home.pair()
    text = entry("j1", {"name": "Seats"}, device=phone.id)
    assert phone.push(text, receipts=[None, None]).json["error"]["code"] == "bad_input"
    assert phone.push(text).json["results"][0]["state"] == "accepted"


def test_the_key_is_the_garages_own_stays_with_its_backup_and_is_told_to_nobody(home: Home, tmp_path: Path) -> None:
    phone = home.pair()
    text = entry("j1", {"name": "Seats"}, device=phone.id)
    (first,) = phone.push(text).json["results"]
    new = elsewhere(home, backed_up(home, tmp_path), tmp_path / "new")
    other = Home(tmp_path / "other")
    (elsewhere_,) = other.pair(wanted=phone.id).push(text).json["results"]
    phone.client = new.client
    (again,) = phone.push(text).json["results"]
    assert again["receipt"] == first["receipt"] != elsewhere_["receipt"]
    assert "key" not in json.dumps(phone.pull().json).replace("kept", "")


def test_phones_that_had_read_the_journal_before_there_were_receipts_come_to_have_them_all(home: Home) -> None:
    phone = ModelPhone(home.pair())
    history(phone, 8)
    phone.sync(home)
    phone.proofs.clear()
    home.close()
    with sqlite3.connect(home.settings.data / "tarebook.sqlite3") as database:
        database.execute("ALTER TABLE garage DROP COLUMN receipt_key")
        database.execute("ALTER TABLE entry DROP COLUMN sent_for")
        database.execute("UPDATE alembic_version SET version_num = '0002'")
    database.close()
    home.open()
    phone.sync(home)
    assert len(phone.proofs) == 8
    assert len(rows(phone.device)) == 8
