"""Who may call what: every route says so, and without a token only the app's files, pairing and health answer."""

from __future__ import annotations

import pytest

from tarebook.api.access import allowed_of
from tarebook.api.app import openapi_document
from tests.home import Device, Home

OPEN = {"app_files.index", "app_files.file", "pairing.pair", "pairing.wait", "system.health"}
HOME = {"pairing.invite", "pairing.joins", "pairing.confirm", "pairing.refuse"}


def test_every_route_says_who_may_call_it(home: Home) -> None:
    said = {name: allowed_of(view) for name, view in home.app.view_functions.items()}
    assert {name for name, who in said.items() if who == "anyone"} == OPEN
    assert {name for name, who in said.items() if who == "home"} == HOME
    assert {name for name, who in said.items() if who == "device"} == said.keys() - OPEN - HOME


@pytest.mark.parametrize("header", ["", "Bearer", "Bearer ", "Bearer wrong", "Basic eDp5", "Bearer \xe9", "bearer a b"])
def test_a_token_that_is_none_answers_401(home: Home, header: str) -> None:
    answer = home.client.get("/api/v1/devices", headers={"Authorization": header})
    assert answer.status_code == 401
    assert answer.json["error"]["code"] == "unpaired"


def test_a_view_that_says_nothing_answers_nobody(home: Home) -> None:
    home.app.add_url_rule("/api/v1/forgotten", view_func=lambda: "secret")
    assert home.client.get("/api/v1/forgotten").status_code == 401


def test_a_revoked_device_gets_403_and_is_told_that_nothing_is_lost(home: Home, phone: Device) -> None:
    other = home.pair()
    assert other.post(f"/devices/{phone.id}/revoke").status_code == 200
    answer = phone.get("/devices")
    assert (answer.status_code, answer.json["error"]["code"]) == (403, "revoked")
    assert "export" in answer.json["error"]["do"]


@pytest.mark.parametrize("name", ["localhost", "localhost:8017", "127.0.0.1:8017", "[::1]:8017", "[::1]"])
def test_the_local_names_are_answered(home: Home, name: str) -> None:
    assert home.client.get("/api/v1/health", headers={"Host": name}).status_code == 200


@pytest.mark.parametrize("name", ["example.test", "localhost.example.test", "127.0.0.1.example.test:8017", "10.0.0.1"])
def test_another_host_name_is_refused(home: Home, name: str) -> None:
    answer = home.client.get("/", headers={"Host": name})
    assert (answer.status_code, answer.json["error"]["code"]) == (421, "wrong_host")


def test_the_document_says_of_each_route_whether_it_wants_a_token() -> None:
    wants = {
        (path, method): bool(operation.get("security"))
        for path, item in openapi_document()["paths"].items()
        for method, operation in item.items()
        if method != "parameters"
    }
    assert {route for route, token in wants.items() if not token} == {
        ("/api/v1/pair", "post"),
        ("/api/v1/pair/wait", "post"),
        ("/api/v1/health", "get"),
    }
