"""The permanent address of the garage: `https://NAME:PORT`, chosen once.

To a browser another name or port is another app with an empty store. Records that a phone has not sent stay behind
under the old address, so the address is kept in the database and moves only when someone insists.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from ipaddress import ip_address
from urllib.parse import urlsplit

from sqlalchemy import select
from sqlalchemy.orm import Session

from tarebook.errors import TarebookError
from tarebook.network import Address, is_home
from tarebook.store import house
from tarebook.store.models import DeviceRow

NAME, PORT = "tarebook.local", 8443
_LABEL = re.compile(r"(?!-)[a-z0-9-]{1,63}(?<!-)")


@dataclass(frozen=True)
class Origin:
    """`name` is a host name in lower case, or a private address."""

    name: str
    port: int

    @classmethod
    def of(cls, url: str) -> Origin:
        parts = urlsplit(url)
        return cls(parts.hostname or "", parts.port or 443)

    @property
    def url(self) -> str:
        return f"https://{in_url(self.name)}" + ("" if self.port == 443 else f":{self.port}")

    @property
    def address(self) -> Address | None:
        """The name as an address, when it is one."""
        return as_address(self.name)


def in_url(name: str) -> str:
    """A host as it stands in a URL: IPv6 in brackets."""
    return f"[{name}]" if ":" in name else name


def as_address(name: str) -> Address | None:
    try:
        return ip_address(name)
    except ValueError:
        return None


def settle(session: Session, name: str | None, port: int | None, move: bool = False) -> Origin:
    """The kept address, or the one asked for where that is allowed, kept from now on. Wants a write session.

    Raises `name_unusable`, and `origin_kept` when devices are paired and something else is asked without `move`.
    """
    kept = house.origin(session)
    before = Origin.of(kept) if kept else Origin(NAME, PORT)
    wanted = Origin(usable(name) if name else before.name, port or before.port)
    if kept and wanted != before and not move and _is_paired(session):
        raise TarebookError("origin_kept", kept=kept, asked=wanted.url)
    if wanted.url != kept:
        house.keep_origin(session, wanted.url)
    return wanted


def _is_paired(session: Session) -> bool:
    return session.scalar(select(DeviceRow.id).where(DeviceRow.revoked_at.is_(None)).limit(1)) is not None


def usable(name: str) -> str:
    """The name as it is kept, in lower case. Raises `name_unusable`."""
    plain = name.strip().rstrip(".").lower()
    address = as_address(plain.strip("[]"))
    reason = _against_address(address) if address else _against_name(plain)
    if reason:
        raise TarebookError("name_unusable", name=name, reason=reason)
    return str(address or plain)


def _against_address(address: Address) -> str | None:
    return None if is_home(address) else "it is not an address of a home network"


_FAULTS: tuple[tuple[Callable[[str], bool], str], ...] = (
    (lambda name: "." not in name, "it needs a dot, as in tarebook.local"),
    (lambda name: len(name) > 253, "it is too long"),
    (lambda name: not all(map(_LABEL.fullmatch, name.split("."))), "it may have letters, digits, hyphens and dots"),
    (lambda name: name.rsplit(".")[-1].isdigit(), "it ends in a number"),
    (lambda name: name.endswith((".localhost", ".invalid")), "no phone could find it"),
)


def _against_name(name: str) -> str | None:
    return next((reason for is_at_fault, reason in _FAULTS if is_at_fault(name)), None)
