"""The list of devices over the API: naming one."""

from __future__ import annotations

import pytest

from tests.home import Device, Home


def test_a_device_is_renamed_by_any_other(home: Home, phone: Device) -> None:
    answer = home.pair().post(f"/devices/{phone.id}/rename", {"name": "  The phone in the shed "})
    assert {row["id"]: row["name"] for row in answer.json["devices"]}[phone.id] == "The phone in the shed"


@pytest.mark.parametrize("name", ["", "   ", "\t\n"])
def test_a_device_needs_a_name(home: Home, phone: Device, name: str) -> None:
    answer = phone.post(f"/devices/{phone.id}/rename", {"name": name})
    assert (answer.status_code, answer.json["error"]["code"]) == (422, "device_nameless")
    assert phone.get("/devices").json["devices"][0]["name"] == "phone"


@pytest.mark.parametrize("name", ["x" * 81, "a\0b", 7, None])
def test_what_is_no_short_text_is_refused(home: Home, phone: Device, name: object) -> None:
    assert phone.post(f"/devices/{phone.id}/rename", {"name": name}).json["error"]["code"] == "bad_input"


def test_a_device_that_is_not_there_is_told(phone: Device) -> None:
    assert phone.post("/devices/nobody/rename", {"name": "x"}).json["error"]["code"] == "device_unknown"
