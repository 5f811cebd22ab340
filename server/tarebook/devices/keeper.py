"""What has to be looked after while phones are served: the certificate's dates, and where this computer is.

A thread of the serving process looks every half minute. The new certificate is a new file, which the TLS listener
takes up by itself; nothing is restarted.
"""

import threading
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Protocol

from tarebook.devices import authority, certificates
from tarebook.devices.origin import Origin
from tarebook.errors import TarebookError
from tarebook.network import Address

EVERY_SECONDS = 30.0


class Announces(Protocol):
    """Tells the network where the name is, and says how it went; see `Announcement`."""

    def tell(self, addresses: Sequence[Address]) -> str: ...

    def close(self) -> None: ...


class Keeper:
    """`folder`: of the authority, or None when the certificate is the user's own. `announcement`: None for silence.

    `addresses`: where this computer is, each time asked. `say`: prints a line.
    """

    def __init__(
        self,
        origin: Origin,
        folder: Path | None,
        announcement: Announces | None,
        addresses: Callable[[], Sequence[Address]],
        say: Callable[[str], None],
    ) -> None:
        self._origin, self._folder, self._announcement = origin, folder, announcement
        self._addresses, self._say = addresses, say
        self._told: Sequence[Address] | None = None
        self._last = ""
        self._over = threading.Event()
        self._thread = threading.Thread(target=self._run, name="keeper", daemon=True)

    def start(self) -> None:
        self._thread.start()

    def stop(self) -> None:
        """Ends the thread and takes the name back; does nothing in a process where it was not started."""
        if self._thread.is_alive():
            self._over.set()
            self._thread.join(timeout=5)
            if self._announcement:
                self._announcement.close()

    def look(self) -> None:
        """One look. Between networks there is no address, and nothing is touched."""
        addresses = self._addresses()
        if not addresses:
            return
        self._renew(addresses)
        if self._announcement and addresses != self._told:
            self._told = addresses
            self._say_once(self._announcement.tell(addresses))

    def _run(self) -> None:
        while not self._over.is_set():
            self.look()
            self._over.wait(EVERY_SECONDS)

    def _renew(self, addresses: Sequence[Address]) -> None:
        if self._folder is None:
            return
        try:
            held = authority.load(self._folder)
            reason = certificates.renew(self._folder, held, self._origin.name, addresses)
        except TarebookError as refusal:
            self._say_once(f"{refusal.sentence} {refusal.do}")
        except OSError as problem:
            self._say_once(f"The certificate could not be renewed: {problem.strerror}.")
        else:
            if reason:
                self._say_once(f"A new certificate was made for phones: {reason}.")

    def _say_once(self, line: str) -> None:
        """A trouble that lasts is told when it begins, not every half minute."""
        if line != self._last:
            self._last = line
            self._say(line)
