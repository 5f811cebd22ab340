"""A TLS context that follows its files: what lies there now is what the next connection gets.

Renewal programs write two files one after the other, or swap a link. A pair that does not fit, or is not good today,
is left alone and said once; connections go on with the one before until a good pair is there.
"""

import ssl
import threading
from collections.abc import Callable
from datetime import UTC, datetime

from tarebook.devices.certificates import Pair, check, tls_context
from tarebook.errors import TarebookError

Stamp = tuple[tuple[int, int, int], ...]


class LiveTls:
    """Raises one of the `tls_…` refusals when made over files that cannot be used; later it only complains."""

    def __init__(self, pair: Pair, name: str, complain: Callable[[str], None]) -> None:
        self._pair, self._name, self._complain = pair, name, complain
        self._turn = threading.Lock()
        self._stamp: Stamp = _stamp(pair)
        self._refused: Stamp | None = None
        self._context = self._load()

    def context(self) -> ssl.SSLContext:
        """The context for a connection that begins now."""
        with self._turn:
            stamp = _stamp(self._pair)
            if stamp not in (self._stamp, self._refused):
                self._follow(stamp)
            return self._context

    def _follow(self, stamp: Stamp) -> None:
        try:
            self._context, self._stamp, self._refused = self._load(), stamp, None
        except TarebookError as refusal:
            self._refused = stamp
            self._complain(f"{refusal.sentence} {refusal.do} Until then the certificate from before is used.")

    def _load(self) -> ssl.SSLContext:
        check(self._pair, self._name, datetime.now(UTC))
        return tls_context(self._pair)


def _stamp(pair: Pair) -> Stamp:
    """Changes with the files and with what links lead to; empty where a file is missing for a moment."""
    try:
        looks = [path.stat() for path in (pair.cert, pair.key)]
    except OSError:
        return ()
    return tuple((look.st_ino, look.st_size, look.st_mtime_ns) for look in looks)
