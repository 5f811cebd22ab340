"""A phone joins: the code, the two words, the yes on the home computer, and the token once."""

from __future__ import annotations

import logging
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import text

from tarebook.devices import check_words, pairing
from tarebook.devices.tries import ALL, EACH
from tarebook.store import garages, house
from tests.home import Device, Home

ORIGIN = "https://tarebook.local:8443"
PHONE = {"REMOTE_ADDR": "192.168.1.20"}


@pytest.fixture
def desk(home: Home) -> Device:
    """The home computer's own browser."""
    with home.database.write() as session:
        house.keep_origin(session, ORIGIN)
    return home.pair("desk")


def invitation(desk: Device) -> dict[str, Any]:
    answer = desk.post("/pair/invitations", {})
    assert answer.status_code == 201
    told: dict[str, Any] = answer.json
    return told


def full_code(invited: dict[str, Any]) -> str:
    return str(invited["link"]).partition("#pair=")[2]


def show(home: Home, code: str, address: str = PHONE["REMOTE_ADDR"], **more: Any) -> Any:
    body = {"code": code, "name": "Phone in the shed", **more}
    return home.client.post("/api/v1/pair", json=body, environ_base={"REMOTE_ADDR": address})


def wait(home: Home, join: str) -> Any:
    return home.client.post("/api/v1/pair/wait", json={"join": join}, environ_base=PHONE)


def code_of(answer: Any) -> str:
    return str(answer.json["error"]["code"])


def joined(home: Home, desk: Device, **more: Any) -> dict[str, Any]:
    """Through the whole of it."""
    told = show(home, full_code(invitation(desk)), **more).json
    (asking,) = desk.get("/pair/joins").json["joins"]
    assert desk.post(f"/pair/joins/{asking['id']}/confirm", {}).json == {"joins": []}
    answer: dict[str, Any] = wait(home, told["join"]).json
    return answer


def test_the_invitation_is_a_link_its_qr_and_a_short_code(desk: Device) -> None:
    told = invitation(desk)
    assert told["link"].startswith(f"{ORIGIN}/#pair=")
    assert len(full_code(told)) == 22  # 128 bits in base64
    assert len(told["code"]) == 9
    assert 295 <= told["seconds"] <= 300
    assert told["svg"].startswith('<svg xmlns="http://www.w3.org/2000/svg"')


def test_before_phones_have_an_address_there_is_no_invitation(home: Home) -> None:
    assert code_of(home.pair().post("/pair/invitations", {})) == "no_phone_address"


@pytest.mark.parametrize("which", ["full", "short"])
def test_a_phone_waits_for_the_yes_and_gets_its_token_once(home: Home, desk: Device, which: str) -> None:
    invited = invitation(desk)
    code = full_code(invited) if which == "full" else invited["code"].lower().replace("-", " ")
    answer = show(home, code)
    assert answer.status_code == 202
    told = answer.json
    assert set(told) == {"join", "words", "seconds"}
    assert set(told["words"]) <= set(check_words.WORDS)
    assert wait(home, told["join"]).status_code == 202
    (asking,) = desk.get("/pair/joins").json["joins"]
    assert (asking["name"], asking["words"]) == ("Phone in the shed", told["words"])
    desk.post(f"/pair/joins/{asking['id']}/confirm", {})
    token = wait(home, told["join"])
    assert token.status_code == 200
    assert token.json["garage"] == home.garage
    headers = {"Authorization": f"Bearer {token.json['token']}"}
    assert home.client.get("/api/v1/devices", headers=headers).status_code == 200
    assert code_of(wait(home, told["join"])) == "pair_over"


def test_before_the_yes_there_is_no_device(home: Home, desk: Device) -> None:
    show(home, full_code(invitation(desk)))
    assert [device["name"] for device in desk.get("/devices").json["devices"]] == ["desk"]


def test_the_code_in_either_form_is_good_once(home: Home, desk: Device) -> None:
    for first, second in ((0, 1), (1, 0), (0, 0), (1, 1)):
        invited = invitation(desk)
        codes = (full_code(invited), invited["code"])
        assert show(home, codes[first]).status_code == 202
        assert code_of(show(home, codes[second])) == "pair_code_wrong"


def test_a_no_is_told_and_the_code_is_used_up(home: Home, desk: Device) -> None:
    invited = invitation(desk)
    told = show(home, invited["code"]).json
    (asking,) = desk.get("/pair/joins").json["joins"]
    assert desk.post(f"/pair/joins/{asking['id']}/refuse", {}).json == {"joins": []}
    assert code_of(wait(home, told["join"])) == "pair_refused"
    assert code_of(desk.post(f"/pair/joins/{asking['id']}/confirm", {})) == "join_unknown"
    assert code_of(wait(home, told["join"])) == "pair_refused"
    assert code_of(show(home, invited["code"])) == "pair_code_wrong"
    assert len(desk.get("/devices").json["devices"]) == 1


def test_two_phones_that_ask_at_once_are_told_apart_by_words_and_name(home: Home, desk: Device) -> None:
    meant = show(home, invitation(desk)["code"], name="mine").json
    other = show(home, invitation(desk)["code"], name="a stranger's").json
    rows = {row["name"]: row for row in desk.get("/pair/joins").json["joins"]}
    assert rows["mine"]["words"] == meant["words"] != other["words"]
    desk.post(f"/pair/joins/{rows['mine']['id']}/confirm", {})
    assert wait(home, meant["join"]).status_code == 200
    assert wait(home, other["join"]).status_code == 202


def past(home: Home, table: str) -> None:
    with home.database.write() as session:
        session.execute(text(f"UPDATE {table} SET good_until = '2020-01-01T00:00:00.000+00:00'"))


def test_after_five_minutes_neither_code_nor_wait_is_good(home: Home, desk: Device) -> None:
    invited = invitation(desk)
    past(home, "pair_code")
    assert code_of(show(home, full_code(invited))) == "pair_code_wrong"
    assert code_of(show(home, invited["code"])) == "pair_code_wrong"
    told = show(home, invitation(desk)["code"]).json
    (asking,) = desk.get("/pair/joins").json["joins"]
    past(home, "pair_join")
    assert code_of(wait(home, told["join"])) == "pair_over"
    assert desk.get("/pair/joins").json == {"joins": []}
    assert code_of(desk.post(f"/pair/joins/{asking['id']}/confirm", {})) == "join_unknown"


def test_a_yes_that_is_never_fetched_ends_too(home: Home, desk: Device) -> None:
    told = show(home, invitation(desk)["code"]).json
    (asking,) = desk.get("/pair/joins").json["joins"]
    desk.post(f"/pair/joins/{asking['id']}/confirm", {})
    past(home, "pair_join")
    assert code_of(wait(home, told["join"])) == "pair_over"


def test_what_is_past_is_forgotten_with_the_next_invitation(home: Home, desk: Device) -> None:
    show(home, invitation(desk)["code"])
    for table in ("pair_code", "pair_join"):
        past(home, table)
    invitation(desk)
    with home.database.read() as session:
        assert session.scalar(text("SELECT count(*) FROM pair_code")) == 1
        assert session.scalar(text("SELECT count(*) FROM pair_join")) == 0


@pytest.mark.parametrize("join", ["", "x", "é", "x" * 200])
def test_a_wait_nobody_asked_for_is_over(home: Home, desk: Device, join: str) -> None:
    assert code_of(wait(home, join)) == "pair_over"


def test_the_last_name_of_an_app_is_given_back_to_it_after_the_yes(home: Home, desk: Device) -> None:
    assert joined(home, desk, device="phone-of-old")["device"] == "phone-of-old"


def test_guessing_codes_is_slowed_down_and_says_for_how_long(home: Home, desk: Device) -> None:
    good = invitation(desk)["code"]
    for _ in range(EACH):
        assert show(home, "guess").status_code == 403
    answer = show(home, good)
    assert (answer.status_code, code_of(answer)) == (429, "rate_limited")
    wait_for = int(answer.headers["Retry-After"])
    assert 0 < wait_for <= 300
    assert answer.json["error"]["data"] == {"seconds": wait_for}
    assert f"Wait {wait_for} seconds" in answer.json["error"]["do"]
    assert show(home, good, address="192.168.1.21").status_code == 202


def guess_together(home: Home) -> None:
    """So many wrong codes, from so many addresses, that no short code is heard any more."""
    for n in range(ALL):
        assert show(home, "guess", address=f"10.1.{n}.1").status_code == 403


def test_many_that_guess_together_are_slowed_down(home: Home, desk: Device) -> None:
    guess_together(home)
    assert show(home, invitation(desk)["code"], address="10.2.0.1").status_code == 429


def test_they_keep_out_neither_home_nor_a_waiting_phone_nor_a_scanned_code(home: Home, desk: Device) -> None:
    waits = show(home, invitation(desk)["code"]).json["join"]
    guess_together(home)
    for _ in range(EACH):
        show(home, "guess", address="127.0.0.1")
    assert wait(home, waits).status_code == 202
    assert show(home, invitation(desk)["code"], address="127.0.0.1").status_code == 202
    scanned = show(home, full_code(invitation(desk))).json["join"]
    (first, _) = desk.get("/pair/joins").json["joins"][::2]
    desk.post(f"/pair/joins/{first['id']}/confirm", {})
    assert [wait(home, join).status_code for join in (waits, scanned)] == [200, 202]


def behind_proxy(home: Home, code: str, forwarded: str, peer: str = "127.0.0.1") -> int:
    answer = home.client.post(
        "/api/v1/pair", json={"code": code}, headers={"X-Forwarded-For": forwarded}, environ_base={"REMOTE_ADDR": peer}
    )
    return int(answer.status_code)


def test_wrong_codes_through_a_trusted_proxy_count_against_who_typed_them(tmp_path: Path) -> None:
    home = Home(tmp_path, trusted_proxies=("127.0.0.1", "10.0.0.2"))
    for n in range(EACH):  # he may write before the right-most address what he likes
        assert behind_proxy(home, "guess", f"10.9.9.{n}, 192.168.1.66, 10.0.0.2") == 403
    assert behind_proxy(home, "guess", "192.168.1.66") == 429
    assert behind_proxy(home, "guess", "192.168.1.67") == 403


def test_what_an_untrusted_one_forwards_is_not_believed(home: Home) -> None:
    for n in range(EACH):
        assert behind_proxy(home, "guess", f"10.9.9.{n}", peer="192.168.1.66") == 403
    assert behind_proxy(home, "guess", "10.9.9.99", peer="192.168.1.66") == 429


def test_the_demo_lets_in_whoever_sits_there_and_nobody_a_proxy_speaks_for(tmp_path: Path) -> None:
    demo = Home(tmp_path, demo=True)
    for headers in ({"X-Forwarded-For": "203.0.113.9"}, {"Via": "1.1 proxy"}, {"X-Real-IP": "203.0.113.9"}):
        answer = demo.client.post("/api/v1/pair", json={"code": None}, headers=headers)
        assert (answer.status_code, code_of(answer)) == (403, "pair_code_wrong")
    assert demo.client.post("/api/v1/pair", json={"code": None}).status_code == 200


def test_waiting_patiently_is_no_guessing(home: Home, desk: Device) -> None:
    told = show(home, invitation(desk)["code"]).json
    assert {wait(home, told["join"]).status_code for _ in range(EACH * 3)} == {202}


def test_the_log_tells_of_refusals_and_gives_nothing_away(
    home: Home, desk: Device, caplog: pytest.LogCaptureFixture
) -> None:
    caplog.set_level(logging.DEBUG)
    invited = invitation(desk)
    told = show(home, invited["code"]).json
    show(home, "N0T-THE-C0DE")
    wait(home, "not-the-join")
    (asking,) = desk.get("/pair/joins").json["joins"]
    desk.post(f"/pair/joins/{asking['id']}/confirm", {})
    token = wait(home, told["join"]).json["token"]
    assert [(r.levelname, r.getMessage()) for r in caplog.records if r.name == "tarebook.pairing"] == [
        ("WARNING", "pairing refused to 192.168.1.20: pair_code_wrong"),
        ("WARNING", "pairing refused to 192.168.1.20: pair_over"),
    ]
    for secret in (full_code(invited), invited["code"], told["join"], token, "N0T-THE-C0DE", "not-the-join"):
        assert secret not in caplog.text


def test_no_secret_of_it_is_in_the_database(home: Home, desk: Device, tmp_path: Path) -> None:
    invited = invitation(desk)
    told = show(home, invited["code"]).json
    home.close()
    stored = b"".join(path.read_bytes() for path in tmp_path.glob("tarebook.sqlite3*"))
    plain = invited["code"].replace("-", "")
    for secret in (full_code(invited), invited["code"], plain, told["join"]):
        assert secret.encode() not in stored


def test_another_garage_neither_sees_nor_lets_in_who_waits(home: Home, desk: Device) -> None:
    show(home, invitation(desk)["code"])
    with home.database.write() as session:
        other = Device(home.client, pairing.admit(session, garages.create(session).id, "x"))
    (asking,) = desk.get("/pair/joins").json["joins"]
    assert other.get("/pair/joins").json == {"joins": []}
    assert code_of(other.post(f"/pair/joins/{asking['id']}/confirm", {})) == "join_unknown"
    assert desk.get("/devices").json["home"] is True
