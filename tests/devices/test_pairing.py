"""Pairing and tokens."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import text

from tarebook.devices import pairing
from tests.home import Device, Home, entry, id_of


def code_of(home: Home) -> str:
    with home.database.write() as session:
        return pairing.new_code(session, home.garage)


def pair(home: Home, code: str | None, **more: object):
    return home.client.post("/api/v1/pair", json={"code": code, "name": "Phone in the shed", **more})


def test_a_code_makes_a_device_whose_token_is_answered(home: Home) -> None:
    told = pair(home, code_of(home)).json
    assert (told["garage"], told["name"], told["demo"]) == (home.garage, "Phone in the shed", False)
    headers = {"Authorization": f"Bearer {told['token']}"}
    (device,) = home.client.get("/api/v1/devices", headers=headers).json["devices"]
    assert (device["id"], device["this"], device["revoked_at"]) == (told["device"], True, None)


def test_a_code_is_good_once(home: Home) -> None:
    code = code_of(home)
    assert pair(home, code).status_code == 200
    answer = pair(home, code)
    assert (answer.status_code, answer.json["error"]["code"]) == (403, "pair_code_wrong")


def test_a_code_is_good_for_five_minutes(home: Home) -> None:
    code = code_of(home)
    with home.database.write() as session:
        (good_until,) = session.scalars(text("SELECT good_until FROM pair_code"))
        assert re.match(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}\+00:00", good_until)
        session.execute(text("UPDATE pair_code SET good_until = '2020-01-01T00:00:00.000+00:00'"))
    assert pair(home, code).status_code == 403
    assert pairing.GOOD_FOR.total_seconds() == 300


@pytest.mark.parametrize("code", ["", "wrong", "x" * 200, None])
def test_what_is_no_code_makes_no_device(home: Home, code: str | None) -> None:
    code_of(home)
    assert pair(home, code).json["error"]["code"] == "pair_code_wrong"
    assert home.pair().get("/devices").json["devices"][1:] == []


def test_a_code_from_a_clock_that_was_ahead_is_of_no_use_once_it_is_set_right(home: Home) -> None:
    code = code_of(home)
    with home.database.write() as session:
        session.execute(text("UPDATE pair_code SET made_at = '2090-01-01T00:00:00.000+00:00'"))
        session.execute(text("UPDATE pair_code SET good_until = '2090-01-01T00:05:00.000+00:00'"))
    assert pair(home, code).status_code == 403


@pytest.mark.parametrize(
    "elsewhere",
    [
        {"environ_base": {"REMOTE_ADDR": "192.168.1.20"}},
        {"headers": {"X-Forwarded-For": "192.168.1.20"}},
    ],
)
def test_the_link_for_this_computer_is_of_use_on_this_computer_only(home: Home, elsewhere: dict[str, Any]) -> None:
    code = code_of(home)
    answer = home.client.post("/api/v1/pair", json={"code": code}, **elsewhere)
    assert answer.json["error"]["code"] == "pair_code_wrong"
    assert pair(home, code).status_code == 200


def test_neither_codes_nor_tokens_are_in_the_database(home: Home, tmp_path: Path) -> None:
    code = code_of(home)
    unused = code_of(home)
    token = pair(home, code).json["token"]
    home.database.close()
    stored = b"".join(path.read_bytes() for path in tmp_path.glob("tarebook.sqlite3*"))
    assert not [secret for secret in (code, unused, token) if secret.encode() in stored]
    assert len(code) >= 22  # 128 bits in base64


def test_a_device_that_was_not_heard_for_a_while_is_noted_again(home: Home, phone: Device) -> None:
    with home.database.write() as session:
        session.execute(text("UPDATE device SET last_seen = '2020-01-01T00:00:00.000+00:00'"))
    phone.get("/devices")
    assert phone.get("/devices").json["devices"][0]["last_seen"] > "2025"


def test_a_full_disk_keeps_no_phone_from_reading(home: Home, phone: Device, monkeypatch: pytest.MonkeyPatch) -> None:
    from tarebook.errors import TarebookError

    with home.database.write() as session:
        session.execute(text("UPDATE device SET last_seen = '2020-01-01T00:00:00.000+00:00'"))

    def full(*_: object) -> None:
        raise TarebookError("disk_full")

    monkeypatch.setattr("tarebook.devices.tokens.seen", full)
    assert phone.get("/devices").status_code == 200


def test_what_a_revoked_device_still_held_comes_in_set_aside_after_pairing_again(home: Home, phone: Device) -> None:
    home.pair().post(f"/devices/{phone.id}/revoke")
    again = pair(home, code_of(home), device=phone.id).json
    assert again["device"] != phone.id
    device = Device(home.client, pairing.Paired(again["garage"], again["device"], "", again["token"]))
    assert device.push(entry("j1", {"name": "x"}, device=phone.id)).json["results"][0]["why"] == "stranger"


def test_a_device_the_garage_forgot_gets_its_name_back_and_its_records_in(home: Home) -> None:
    """As after a restore: the copy is older than the pairing."""
    witness = home.pair()
    text_ = entry("j1", {"name": "x"}, device="phone-of-old")
    assert witness.push(text_).json["results"][0]["why"] == "stranger"
    assert pair(home, code_of(home), device="phone-of-old").json["device"] == "phone-of-old"
    pulled = witness.pull().json["entries"]
    assert [id_of(line["text"]) == id_of(text_) for line in pulled] == [True, False]
    with home.database.read() as session:
        assert session.scalar(text("SELECT reason FROM entry WHERE number = 1")) is None
    assert witness.push(entry("j2", {"name": "y"}, device="phone-of-old")).json["results"][0]["state"] == "accepted"


def test_nobody_can_become_the_home_computer_or_another_device(home: Home, phone: Device) -> None:
    for wanted in ("home", phone.id):
        assert pair(home, code_of(home), device=wanted).json["device"] != wanted


def test_in_the_demo_the_local_address_pairs_by_itself(tmp_path: Path) -> None:
    demo = Home(tmp_path / "demo", demo=True)
    assert pair(demo, None).json["demo"] is True
    elsewhere = {"REMOTE_ADDR": "10.0.0.7"}
    answer = demo.client.post("/api/v1/pair", json={"code": None}, environ_base=elsewhere)
    assert answer.status_code == 403
