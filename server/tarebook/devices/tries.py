"""Counts wrong short codes, of each address and of all together, so that guessing takes longer than a code lives.

Only those: a link's code and what a waiting phone asks with cannot be guessed, so nobody keeps them from being heard.
Kept in memory: one process serves, and a restart is nothing a guesser can bring about.
"""

import threading
import time
from collections import deque
from collections.abc import Callable
from ipaddress import IPv6Address, ip_address
from math import ceil

from tarebook.errors import TarebookError

EACH, ALL, WITHIN_SECONDS = 10, 100, 300.0


class Tries:
    """`clock`: seconds that never go back."""

    def __init__(self, clock: Callable[[], float] = time.monotonic) -> None:
        self._clock = clock
        self._failed: deque[tuple[float, str]] = deque()
        self._turn = threading.Lock()

    def check(self, address: str) -> None:
        """Raises `rate_limited`, with the seconds until the next try is heard."""
        with self._turn:
            now = self._clock()
            while self._failed and self._failed[0][0] <= now - WITHIN_SECONDS:
                self._failed.popleft()
            from_all = [moment for moment, _source in self._failed]
            from_it = [moment for moment, source in self._failed if source == source_of(address)]
        in_the_way = [*from_all[-ALL : 1 - ALL], *from_it[-EACH : 1 - EACH]]
        if in_the_way:
            raise TarebookError("rate_limited", seconds=ceil(max(in_the_way) + WITHIN_SECONDS - now))

    def fail(self, address: str) -> None:
        with self._turn:
            self._failed.append((self._clock(), source_of(address)))


def source_of(address: str) -> str:
    """Who an address stands for: of IPv6 a device may use any in its network."""
    try:
        parsed = ip_address(address)
    except ValueError:
        return address
    return str(int(parsed) >> 64) if isinstance(parsed, IPv6Address) and not parsed.ipv4_mapped else address
