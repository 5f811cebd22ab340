"""Behind the README's proxy, with nginx run for real: strangers hold nothing up, and everybody is who he is."""

import json

import pytest

from tarebook.devices.tries import EACH
from tests.cli import nginx
from tests.cli.strangers import BODY, HEAD, Stranger, health, held, trusting_anybody

HOLDING = {"head": HEAD % nginx.NAME.encode(), "body": BODY % nginx.NAME.encode()}


@pytest.fixture(scope="module", params=nginx.FOUND)
def proxied(tmp_path_factory):
    with nginx.proxied(tmp_path_factory.mktemp("proxied") / "house") as house:
        health(house.home)
        yield house


def shown(connection, code):
    """The status of an answer to a code."""
    connection.request("POST", "/api/v1/pair", json.dumps({"code": code}), {"Content-Type": "application/json"})
    answer = connection.getresponse()
    answer.read()
    return answer.status


@pytest.mark.parametrize("kind", HOLDING)
def test_home_and_phones_are_answered_while_sixteen_strangers_hold_on(proxied, kind):
    with held(lambda: Stranger(trusting_anybody(proxied.public), HOLDING[kind])):
        assert max(health(proxied.home) for _ in range(10)) < 1
        phone = proxied.through("127.0.2.9")
        assert shown(phone, "guess") == 403
        phone.close()


def test_wrong_codes_count_against_who_typed_them(proxied):
    first, second = proxied.through("127.0.2.1"), proxied.through("127.0.2.2")
    assert {shown(first, "guess") for _ in range(EACH)} == {403}
    assert [shown(first, "guess"), shown(second, "guess")] == [429, 403]
    first.close()
    second.close()
