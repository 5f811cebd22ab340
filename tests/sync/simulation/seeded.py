"""Clock and chance of the server: while `owned` lasts, both come from the scheduler and nowhere else."""

from __future__ import annotations

import datetime as real
import secrets
import sys
import time
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from random import Random
from types import ModuleType
from unittest.mock import patch

START = real.datetime(2026, 5, 2, 10, tzinfo=real.UTC).timestamp()


class Clock:
    """Seconds since 1970: the true ones, and how far the server's own clock is off."""

    def __init__(self) -> None:
        self.now = START
        self.off = 0.0

    def server(self) -> float:
        return self.now + self.off


@contextmanager
def owned(clock: Clock, chance: Random) -> Iterator[None]:
    """Inside, every module of the server reads this clock and draws from this chance."""

    class Moment(real.datetime):
        @classmethod
        def now(cls, tz: real.tzinfo | None = None) -> Moment:
            return cls.fromtimestamp(clock.server(), tz)

    def token_bytes(size: int = 32) -> bytes:
        return chance.randbytes(size)

    def token_hex(size: int = 32) -> str:
        return chance.randbytes(size).hex()

    with ExitStack() as patched:
        for module in _with_a_clock():
            patched.enter_context(patch.object(module, "datetime", Moment))
        for name, own in {
            "token_bytes": token_bytes, "token_hex": token_hex, "token_urlsafe": token_hex,
            "randbits": chance.getrandbits, "choice": chance.choice, "randbelow": chance.randrange,
            "SystemRandom": lambda: chance,
        }.items():  # fmt: skip
            patched.enter_context(patch.object(secrets, name, own))
        patched.enter_context(patch.object(time, "time", clock.server))
        patched.enter_context(patch.object(time, "time_ns", lambda: int(clock.server() * 1e9)))
        yield


def _with_a_clock() -> list[ModuleType]:
    ours = [module for name, module in sorted(sys.modules.items()) if name.startswith("tarebook.")]
    return [module for module in ours if vars(module).get("datetime") is real.datetime]
