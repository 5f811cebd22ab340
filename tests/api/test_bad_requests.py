"""Bad input gets a code and a sentence, never a fault of ours."""

from __future__ import annotations

import json
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tarebook.api.answers import HEADERS
from tarebook.errors import ERRORS
from tests.home import Device, Home

PUSH = "/api/v1/sync/push"


def code(answer: Any) -> str:
    error: dict[str, str] = answer.json["error"]
    assert set(error) == {"code", "sentence", "do", "data"}
    assert error["code"] in ERRORS
    return error["code"]


BODIES = {
    "empty": b"",
    "cut short": b'{"proto": 1,',
    "not UTF-8": b'{"proto": "\xff"}',
    "NaN": b'{"proto": NaN}',
    "nested deeply": b'{"proto": ' + b"[" * 5000 + b"]" * 5000 + b"}",
    "nested deeply and never closed": b"[" * 100_000,
}


@pytest.mark.parametrize("body", BODIES.values(), ids=BODIES.keys())
def test_what_is_not_json_is_refused(phone: Device, body: bytes) -> None:
    answer = phone.ask("POST", PUSH, {"Content-Type": "application/json"}, data=body)
    assert (answer.status_code, code(answer)) == (400, "malformed_json")


@pytest.mark.parametrize(
    "body",
    [
        [], "text", 7, None, {}, {"proto": "1"}, {"proto": 10**400}, {"proto": 1, "extra": 1}, {"proto": True},
        {"proto": 1, "schema": 1, "garage": "g", "epoch": "e", "entries": "x"},
        {"proto": 1, "schema": 1, "garage": "g", "epoch": "e", "entries": [1]},
        {"proto": 1, "schema": 1, "garage": "g\0", "epoch": "e", "entries": []},
        {"proto": 1, "schema": 1, "garage": "\ud800", "epoch": "e", "entries": []},
        {"proto": -1, "schema": 1, "garage": "g", "epoch": "e", "entries": []},
        {"\ud800": 1},
    ],
)  # fmt: skip
def test_the_wrong_shape_is_refused(phone: Device, body: object) -> None:
    data = json.dumps(body).encode()
    answer = phone.ask("POST", PUSH, {"Content-Type": "application/json"}, data=data)
    assert (answer.status_code, code(answer)) == (422, "bad_input")
    assert answer.json["error"]["data"]["fields"]


def test_another_content_type_is_refused(phone: Device) -> None:
    answer = phone.ask("POST", PUSH, {"Content-Type": "text/plain"}, data=b"{}")
    assert (answer.status_code, code(answer)) == (415, "unsupported_type")


def test_a_body_beyond_the_limit_is_refused(phone: Device) -> None:
    answer = phone.ask("POST", PUSH, {"Content-Type": "application/json"}, data=b'"' + b"x" * 2_100_000 + b'"')
    assert (answer.status_code, code(answer)) == (413, "too_large")


def test_a_method_that_does_not_fit_names_those_that_do(phone: Device) -> None:
    answer = phone.ask("DELETE", PUSH)
    assert (answer.status_code, code(answer)) == (405, "method_not_allowed")
    assert "POST" in answer.headers["Allow"]


@pytest.mark.parametrize("path", ["/nowhere", "/api/v1/nowhere", "/%00", "/..%2f..%2fetc/passwd", "/assets/%ff"])
def test_an_unknown_address_is_not_found(home: Home, path: str) -> None:
    answer = home.client.get(path)
    assert (answer.status_code, code(answer)) == (404, "not_found")


@pytest.mark.parametrize("query", ["since=x", "since=-1", f"since={10**30}", "limit=0", "limit=1001"])
def test_a_cursor_that_is_none_is_refused(phone: Device, query: str) -> None:
    answer = phone.get(f"/sync/pull?{query}")
    assert (answer.status_code, code(answer)) == (422, "bad_input")


def test_a_fault_of_ours_is_told_without_its_insides(home: Home, phone: Device, monkeypatch) -> None:
    monkeypatch.setattr("tarebook.devices.tokens.listing", lambda *_: 1 / 0)
    answer = phone.get("/devices")
    assert (answer.status_code, code(answer)) == (500, "broken")
    assert "ZeroDivision" not in answer.text


def test_every_answer_bears_the_protecting_headers(home: Home, phone: Device) -> None:
    for answer in (home.client.get("/"), home.client.get("/nowhere"), phone.get("/devices"), home.client.post("/")):
        assert HEADERS.items() <= dict(answer.headers).items()
    assert "unsafe" not in HEADERS["Content-Security-Policy"]


json_values = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(), inner, max_size=3),
    max_leaves=8,
)
keys = st.sampled_from(["proto", "schema", "garage", "epoch", "entries", "code", "name", "device", "sha256", "size"])


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=150)
@given(
    path=st.sampled_from(["/sync/push", "/pair", "/photos", "/devices/x/revoke"]),
    body=json_values | st.dictionaries(keys, json_values, max_size=5),
)
def test_no_body_whatever_makes_a_fault_of_ours(phone: Device, path: str, body: object) -> None:
    data = json.dumps(body).encode()
    answer = phone.ask("POST", f"/api/v1{path}", {"Content-Type": "application/json"}, data=data)
    assert 400 <= answer.status_code < 500
    code(answer)
