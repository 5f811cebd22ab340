"""How many entries each device has sent today, so that one that floods the garage is stopped within a day.

Kept in memory, as `tries` are: one process serves, and a restart is nothing a phone can bring about. What is refused
stays on the phone, which sends it again by itself.
"""

import threading
import time
from collections import Counter
from collections.abc import Callable

from tarebook.errors import TarebookError

DAY = 24 * 3600


class Allowance:
    """`most`: entries of one device in a day, by UTC. `clock`: seconds since 1970."""

    def __init__(self, most: int, clock: Callable[[], float] = time.time) -> None:
        self._most, self._clock = most, clock
        self._day, self._sent = 0, Counter[tuple[str, str]]()
        self._turn = threading.Lock()

    def check(self, garage: str, device: str) -> None:
        """Raises `device_allowance`, with the seconds until the next day."""
        with self._turn:
            gone = self._begin_day()
            if self._sent[garage, device] >= self._most:
                raise TarebookError("device_allowance", most=self._most, seconds=DAY - gone)

    def count(self, garage: str, device: str, entries: int) -> None:
        with self._turn:
            self._begin_day()
            self._sent[garage, device] += entries

    def _begin_day(self) -> int:
        """Forgets yesterday; gives the seconds that today has had."""
        day, gone = divmod(int(self._clock()), DAY)
        if day != self._day:
            self._day, self._sent = day, Counter()
        return gone
