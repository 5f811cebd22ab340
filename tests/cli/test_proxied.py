"""Behind the README's proxy, with nginx run for real: strangers hold nothing up, and everybody is who he is."""

import json
import socket
import ssl
from http.client import HTTPSConnection

import pytest

from tarebook.devices.tries import EACH
from tests.cli import nginx
from tests.cli.strangers import BODY, HEAD, Stranger, health, held, trusting_anybody

HOLDING = {"head": HEAD % nginx.NAME.encode(), "body": BODY % nginx.NAME.encode()}


class Through(HTTPSConnection):
    """A connection to the proxy by its name, from an address."""

    def __init__(self, port, authority, address):
        super().__init__(nginx.NAME, port, timeout=30)
        self._trusts, self._address = ssl.create_default_context(cafile=str(authority)), address

    def connect(self):
        plain = socket.create_connection(("127.0.0.1", self.port), timeout=30, source_address=(self._address, 0))
        self.sock = self._trusts.wrap_socket(plain, server_hostname=nginx.NAME)


@pytest.fixture(scope="module", params=nginx.FOUND)
def proxied(tmp_path_factory):
    with nginx.proxied(tmp_path_factory.mktemp("proxied") / "house") as (port, home, authority):
        health(home)
        yield port, home, lambda address: Through(port, authority, address)


def shown(connection, code):
    """The status of an answer to a code."""
    connection.request("POST", "/api/v1/pair", json.dumps({"code": code}), {"Content-Type": "application/json"})
    answer = connection.getresponse()
    answer.read()
    return answer.status


@pytest.mark.parametrize("kind", HOLDING)
def test_home_and_phones_are_answered_while_sixteen_strangers_hold_on(proxied, kind):
    port, home, through = proxied
    with held(lambda: Stranger(trusting_anybody(port), HOLDING[kind])):
        assert max(health(home) for _ in range(10)) < 1
        phone = through("127.0.2.9")
        assert shown(phone, "guess") == 403
        phone.close()


def test_wrong_codes_count_against_who_typed_them(proxied):
    _, _, through = proxied
    first, second = through("127.0.2.1"), through("127.0.2.2")
    assert {shown(first, "guess") for _ in range(EACH)} == {403}
    assert [shown(first, "guess"), shown(second, "guess")] == [429, 403]
    first.close()
    second.close()
