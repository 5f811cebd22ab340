"""Tells the home network where the permanent name is (multicast DNS, RFC 6762), as far as it listens.

Only names under `.local` are found that way; any other is the business of the router or of a DNS service. A network,
or a firewall, that drops multicast makes this fail without harm: the door page tells a phone that cannot find the name.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from tarebook.devices.origin import Origin
from tarebook.network import Address, own_addresses

if TYPE_CHECKING:
    from zeroconf import ServiceInfo, Zeroconf

_TYPE = "_https._tcp.local."
_ASK_MS = 1500  # how long another computer has to say that the name is its own

ANNOUNCED = "{name} is announced on this network."
TAKEN = "{name} is not announced: {address} on this network already calls itself that. Stop the other one."
FAILED = "{name} cannot be announced here: {reason}. A phone that does not find it needs the name from your router."


def can_announce(name: str) -> bool:
    """Whether phones look such a name up by multicast."""
    return name.endswith(".local")


class Announcement:
    """Says where the name is until it is closed. `interfaces`: addresses to speak from; all of them when not given."""

    def __init__(self, origin: Origin, interfaces: Sequence[str] | None = None) -> None:
        self._origin, self._interfaces = origin, interfaces
        self._speaker: Zeroconf | None = None
        self._said: ServiceInfo | None = None

    def tell(self, addresses: Sequence[Address]) -> str:
        """Announces these addresses in place of those before, and says how it went, in a sentence. Never raises."""
        name = self._origin.name
        try:
            self.close()  # the interfaces may be others now
            other = self._speak(addresses)
        except Exception as problem:  # a socket, a thread, a clash: whatever it is, serving goes on
            self.close()
            return FAILED.format(name=name, reason=str(problem) or type(problem).__name__)
        return TAKEN.format(name=name, address=other) if other else ANNOUNCED.format(name=name)

    def close(self) -> None:
        """Takes the name back; phones forget it at once."""
        speaker, self._speaker, self._said = self._speaker, None, None
        if speaker:
            speaker.close()

    def _speak(self, addresses: Sequence[Address]) -> str | None:
        """Announces, or gives the address of another computer that has the name already."""
        from zeroconf import InterfaceChoice, Zeroconf

        self._speaker = Zeroconf(interfaces=list(self._interfaces or ()) or InterfaceChoice.All)
        other = _holder(self._speaker, self._origin.name, {*addresses, *own_addresses()})
        if other:
            self.close()
            return other
        self._said = _service(self._origin, addresses)
        self._speaker.register_service(self._said, allow_name_change=True)
        return None


def _holder(speaker: Zeroconf, name: str, own: set[Address]) -> str | None:
    from zeroconf import AddressResolver  # type: ignore[attr-defined]

    asked = AddressResolver(f"{name}.")
    asked.request(speaker, _ASK_MS)
    others = set(asked.parsed_addresses()) - set(map(str, own))
    return min(others) if others else None


def _service(origin: Origin, addresses: Sequence[Address]) -> ServiceInfo:
    from zeroconf import ServiceInfo

    label = origin.name.removesuffix(".local")
    packed = [address.packed for address in addresses]
    return ServiceInfo(_TYPE, f"{label}.{_TYPE}", origin.port, addresses=packed, server=f"{origin.name}.")
