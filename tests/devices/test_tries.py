"""Guessing takes longer than a code lives."""

from __future__ import annotations

import pytest

from tarebook.devices.codes import ALPHABET, LENGTH, new_full, new_short, short_hash
from tarebook.devices.tokens import hashed
from tarebook.devices.tries import ALL, EACH, WITHIN_SECONDS, Tries
from tarebook.errors import TarebookError


class Clock:
    now = 1000.0

    def __call__(self) -> float:
        return self.now


@pytest.fixture
def clock() -> Clock:
    return Clock()


@pytest.fixture
def tries(clock: Clock) -> Tries:
    return Tries(clock)


def seconds(tries: Tries, address: str) -> int:
    """How long this address is to wait; 0: it is heard."""
    try:
        tries.check(address)
    except TarebookError as refusal:
        return int(refusal.data["seconds"])
    return 0


def test_after_so_many_failures_an_address_waits_and_others_do_not(tries: Tries, clock: Clock) -> None:
    for _ in range(EACH):
        assert seconds(tries, "10.0.0.1") == 0
        clock.now += 1
        tries.fail("10.0.0.1")
    assert seconds(tries, "10.0.0.1") == WITHIN_SECONDS - EACH + 1
    assert seconds(tries, "10.0.0.2") == 0
    with pytest.raises(TarebookError, match="rate_limited"):
        tries.check("10.0.0.1")


def test_after_the_wait_it_is_heard_again_once(tries: Tries, clock: Clock) -> None:
    for _ in range(EACH):
        clock.now += 1
        tries.fail("10.0.0.1")
    clock.now += seconds(tries, "10.0.0.1")
    assert seconds(tries, "10.0.0.1") == 0
    tries.fail("10.0.0.1")
    assert seconds(tries, "10.0.0.1") > 0


def test_many_addresses_together_wait_too(tries: Tries) -> None:
    for n in range(ALL):
        assert seconds(tries, f"10.0.1.{n}") == 0
        tries.fail(f"10.0.1.{n}")
    assert seconds(tries, "10.0.2.1") == WITHIN_SECONDS


def test_an_ipv6_device_gains_nothing_by_changing_its_address(tries: Tries) -> None:
    for n in range(EACH):
        tries.fail(f"fd00:1:2:3::{n:x}")
    assert seconds(tries, "fd00:1:2:3:4:5:6:7") > 0
    assert seconds(tries, "fd00:1:2:4::1") == 0


def test_within_the_life_of_a_code_a_guess_is_as_good_as_hopeless() -> None:
    assert ALL / len(ALPHABET) ** LENGTH < 1e-9
    assert not set(ALPHABET) & set("01ILOU")


def test_codes_are_new_each_time_and_a_short_one_may_be_typed_carelessly() -> None:
    assert len({new_full() for _ in range(100)}) == 100
    codes = [new_short() for _ in range(100)]
    assert len(set(codes)) == 100
    for code in codes:
        assert len(code) == LENGTH + 1
        assert set(code) <= {*ALPHABET, "-"}
        typed = (code, code.lower(), code.replace("-", ""), code.replace("-", " "), f" {code[:2]} {code[2:]}\n")
        assert {short_hash(text) for text in typed} == {hashed(code.replace("-", ""))}
