"""Push and pull on the wire."""

from __future__ import annotations

import json
import sqlite3

from sqlalchemy import event

from tarebook.devices import tokens
from tests.home import Device, Home, entry, id_of


def test_a_pushed_entry_is_numbered_and_pulled_by_another_phone(home: Home, phone: Device) -> None:
    text = entry("j1", {"name": "Seats out"}, device=phone.id)
    pushed = phone.push(text).json
    (result,) = pushed["results"]
    receipt = result["receipt"]
    assert result == {"id": id_of(text), "state": "accepted", "number": 1, "why": None, "receipt": receipt}
    page = home.pair().pull().json
    assert page["entries"] == [{"number": 1, "text": text, "aside": None, "receipt": receipt}]
    assert (page["head"], page["more"], page["durable"]) == (1, False, None)


def test_a_pull_tells_what_people_call_the_devices_those_taken_off_the_list_too(home: Home, phone: Device) -> None:
    other = home.pair("Ben's phone")
    with home.database.write() as session:
        tokens.rename(session, home.garage, phone.id, "Anna's phone")
        tokens.revoke(session, home.garage, other.id)
    assert phone.pull().json["devices"] == {phone.id: "Anna's phone", other.id: "Ben's phone"}


def test_the_same_push_twice_is_harmless(phone: Device) -> None:
    text = entry("j1", {"name": "Seats out"}, device=phone.id)
    phone.push(text)
    again = phone.push(text, text).json
    assert [result["state"] for result in again["results"]] == ["repeated", "repeated"]
    assert again["head"] == 1


def test_one_bad_entry_keeps_no_other_out(phone: Device) -> None:
    good, worse = entry("j1", {"name": "Seats out"}, device=phone.id), entry("j2", {"colour": 1}, device=phone.id)
    results = phone.push("{", worse, good).json["results"]
    assert [(result["state"], result["why"]) for result in results] == [
        ("set_aside", "unreadable"), ("set_aside", "invalid"), ("accepted", None),
    ]  # fmt: skip


def test_other_bytes_under_a_name_are_kept_beside_the_first(phone: Device) -> None:
    first = entry("j1", {"name": "Seats out"}, device=phone.id)
    second = first.replace("Seats out", "Seats in")
    phone.push(first)
    (result,) = phone.push(second).json["results"]
    assert result["state"] == "id_reuse"
    assert phone.push(second).json["results"][0] == {**result, "state": "repeated"}
    named = {name: result[name] for name in ("id", "number", "receipt")}
    assert phone.pull().json["entries"][1] == {"text": second, "aside": None, **named}


def test_lone_surrogates_in_a_text_are_kept_as_a_browser_would_send_them(phone: Device) -> None:
    body = b'{"proto":1,"schema":1,"garage":"%s","epoch":"%s","entries":["a\\ud800b"]}'
    epoch = phone.pull().json["epoch"]
    data = body % (phone.garage.encode(), epoch.encode())
    answer = phone.ask("POST", "/api/v1/sync/push", {"Content-Type": "application/json"}, data=data)
    assert answer.json["results"][0]["why"] == "unreadable"
    assert phone.pull().json["entries"][0]["text"] == "a\ufffdb"


def test_open_conflicts_are_told(phone: Device) -> None:
    first = entry("j1", {"name": "Seats out"}, device=phone.id)
    one = entry("j1", {"hours": "1"}, (id_of(first),), device=phone.id)
    two = entry("j1", {"hours": "2"}, (id_of(first),), device=phone.id)
    assert phone.push(first, one, two).json["conflicts"] == [{"record": "j1", "fields": ["hours"]}]


def test_pages_follow_each_other_to_the_end(phone: Device) -> None:
    texts = [entry(f"j{index}", {"name": "x"}, device=phone.id) for index in range(5)]
    phone.push(*texts)
    first = phone.pull(limit=3).json
    second = phone.pull(first["epoch"], 3, first["mark"], limit=3).json
    assert (first["more"], second["more"]) == (True, False)
    assert [line["text"] for line in first["entries"] + second["entries"]] == texts


def test_a_page_holds_no_more_than_two_megabytes(phone: Device) -> None:
    for index in range(12):
        texts = [entry(f"j{index}-{n}", {"name": "x", "note": "y" * 60_000}, device=phone.id) for n in range(4)]
        phone.push(*texts)
    page = phone.pull().json
    assert page["more"]
    assert 1_900_000 < sum(len(line["text"]) for line in page["entries"]) <= 2 * 1024 * 1024


def test_a_cursor_of_another_journal_is_told_rewound(phone: Device) -> None:
    phone.push(entry("j1", {"name": "x"}, device=phone.id))
    page = phone.pull().json
    epoch, mark = page["epoch"], page["mark"]
    assert phone.pull(epoch, 1, mark).json["mark"] == mark
    for cursor in ((epoch, 1, "another"), (epoch, 2, mark), ("older", 1, mark), ("older", 0, ""), ("", 1, mark)):
        answer = phone.pull(*cursor)
        assert answer.status_code == 409, cursor
        assert answer.json["error"]["code"] == "rewound"
        assert answer.json["error"]["data"] == {"epoch": epoch, "head": 1}


def test_a_push_of_another_epoch_is_told_rewound_and_writes_nothing(phone: Device) -> None:
    answer = phone.push(entry("j1", {"name": "x"}, device=phone.id), epoch="older")
    assert (answer.status_code, answer.json["error"]["code"]) == (409, "rewound")
    assert phone.pull().json["head"] == 0


def test_a_phone_that_never_heard_an_epoch_may_push(phone: Device) -> None:
    assert phone.push(entry("j1", {"name": "x"}, device=phone.id), epoch="").status_code == 200


def test_records_of_another_garage_are_refused(phone: Device) -> None:
    answer = phone.push(entry("j1", {"name": "x"}), garage="other")
    assert (answer.status_code, answer.json["error"]["code"]) == (409, "other_garage")


def test_another_protocol_is_told_to_update(phone: Device) -> None:
    answer = phone.push(proto=2)
    assert (answer.status_code, answer.json["error"]["code"]) == (426, "protocol")


def test_size_caps_refuse_before_anything_is_written(phone: Device) -> None:
    long = entry("j1", {"name": "x", "note": "y" * 66_000}, device=phone.id)
    answer = phone.push(entry("j2", {"name": "x"}, device=phone.id), long)
    assert (answer.status_code, answer.json["error"]["code"]) == (413, "entry_too_large")
    assert answer.json["error"]["data"]["index"] == 1
    many = [entry("j1", {"name": "x" * 100, "note": "y" * 3000}, device=phone.id) for _ in range(90)]
    assert phone.push(*many).json["error"]["code"] == "too_large"
    assert phone.pull().json["head"] == 0


def test_a_strangers_entry_is_set_aside_and_others_are_told(home: Home, phone: Device) -> None:
    text = entry("j1", {"name": "x"}, device="nobody")
    assert phone.push(text).json["results"][0]["why"] == "stranger"
    assert home.pair().pull().json["entries"][0]["aside"] == "stranger"


def test_a_phone_may_send_again_what_it_pulled_from_another(home: Home, phone: Device) -> None:
    other = home.pair()
    assert phone.push(entry("j1", {"name": "x"}, device=other.id)).json["results"][0]["state"] == "accepted"


def test_an_entry_of_a_newer_app_is_kept_whole(phone: Device) -> None:
    text = entry("j1", {"name": "x", "sparkle": {"new": 1}}, device=phone.id, schema=2)
    assert phone.push(text, schema=2).json["results"][0]["why"] == "newer_schema"
    assert json.loads(phone.pull().json["entries"][0]["text"])["set"]["sparkle"] == {"new": 1}


def test_two_garages_on_one_server_see_nothing_of_each_other(home: Home, phone: Device) -> None:
    from tarebook.devices import pairing
    from tarebook.store import garages

    with home.database.write() as session:
        other = Device(home.client, pairing.admit(session, garages.create(session).id, "x", None))
    text = entry("j1", {"name": "x"}, device=phone.id)
    phone.push(text)
    assert other.pull().json["entries"] == []
    assert other.push(text.replace(phone.id, other.id)).json["results"][0]["number"] == 1
    assert other.get("/devices").json["devices"][0]["id"] == other.id
    assert other.post(f"/devices/{phone.id}/revoke").status_code == 404


def test_a_full_disk_refuses_a_push_whole_and_the_next_try_goes_through(home: Home, phone: Device) -> None:
    engine = home.app.extensions["tarebook"].database.engine
    engine.dispose()

    def little_room(connection: sqlite3.Connection, _record: object) -> None:
        (pages,) = connection.execute("PRAGMA page_count").fetchone()
        connection.execute(f"PRAGMA max_page_count={pages + 2}")

    texts = [entry(f"j{n}", {"name": "x", "note": "y" * 3000}, device=phone.id) for n in range(20)]
    event.listen(engine, "connect", little_room)
    answer = phone.push(*texts)
    event.remove(engine, "connect", little_room)
    engine.dispose()
    assert (answer.status_code, answer.json["error"]["code"]) == (507, "disk_full")
    assert phone.pull().json["head"] == 0
    assert phone.push(*texts).json["head"] == 20
