"""The log says what happened and nothing of whom or what."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from tarebook.devices import pairing
from tarebook.store import log
from tarebook.store.backup import back_up_daily
from tests.home import Device, Home, entry
from tests.store.backups import NOON, photograph


def lines(home: Home) -> list[dict[str, Any]]:
    return [json.loads(line) for line in (home.settings.data / log.NAME).read_text().splitlines()]


def test_a_run_is_told_without_its_secrets_and_names(home: Home) -> None:
    phone = home.pair("Agatha's phone")
    with home.database.write() as session:
        code = pairing.new_code(session, home.garage)
    home.client.post("/api/v1/pair", json={"code": code, "name": "Agatha's phone"})
    phone.client.get(f"/api/v1/pair/{code}")
    phone.push(entry("j1", {"name": "Bonnet prop", "note": "secretly"}, device=phone.id))
    phone.get("/report?car=Agatha")
    photo = photograph(phone, 1)
    back_up_daily(home.settings, home.database, NOON)
    phone.headers = {"Authorization": "Bearer not-a-token-of-ours"}
    phone.pull()
    told = lines(home)
    whole = json.dumps(told)
    token = home.pair("another").headers["Authorization"].split()[1]
    for secret in (code, token, "not-a-token", "Agatha", "Bonnet", "secretly", photo[:20].hex(), "Bearer"):
        assert secret not in whole
    refused = [line for line in told if line.get("code")]
    assert {(line["route"], line["status"], line["code"]) for line in refused} >= {
        ("/api/v1/sync/pull", 401, "unpaired"),
    }
    assert {line["what"] for line in told} == {"request", "backup"}
    pushed = next(line for line in told if line["route"] == "/api/v1/sync/push")
    assert (pushed["method"], pushed["status"], pushed["device"]) == ("POST", 200, phone.id)
    assert (home.settings.data / log.NAME).stat().st_mode & 0o077 == 0


def test_it_takes_no_more_than_twice_its_size(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(log, "_MOST_BYTES", 1000)
    for number in range(100):
        log.note(tmp_path, "request", number=number)
    files = sorted(path.name for path in tmp_path.iterdir())
    assert files == [log.NAME, f"{log.NAME}.before"]
    assert sum(path.stat().st_size for path in tmp_path.iterdir()) < 2200


def test_a_folder_that_takes_no_line_stops_nobody(tmp_path: Path) -> None:
    log.note(tmp_path / "nowhere", "request")


def test_a_device_stands_in_a_line_by_its_id(home: Home, phone: Device) -> None:
    phone.get("/devices")
    assert lines(home)[-1]["device"] == phone.id
