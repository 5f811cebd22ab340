"""Devices and their tokens. A token is 256 random bits, shown once to the device and kept here only as a hash.

A hash without salt or stretching is enough for a secret that nobody can guess; it would not be for a password.
"""

import hashlib
import secrets
from datetime import UTC, datetime, timedelta

from sqlalchemy import select, update
from sqlalchemy.orm import Session

from tarebook.errors import TarebookError
from tarebook.garage.intake import HOME
from tarebook.journal.entries import well_formed
from tarebook.store.models import DeviceRow, utc_now

SEEN_EVERY = timedelta(minutes=1)
NAME_CHARACTERS = 80


def hashed(secret: str) -> str:
    return hashlib.sha256(secret.encode("utf-8")).hexdigest()


def issue(session: Session, garage: str, name: str, wanted: str | None = None) -> tuple[DeviceRow, str]:
    """A new device and its token. It is given the name `wanted` for itself when this garage never knew that one."""
    token = secrets.token_urlsafe(32)
    taken = wanted is None or wanted == HOME or session.get(DeviceRow, (garage, wanted)) is not None
    now = utc_now()
    device = DeviceRow(
        garage=garage, id=secrets.token_hex(8) if taken else wanted, name=name, token_hash=hashed(token),
        paired_at=now, last_seen=now,
    )  # fmt: skip
    session.add(device)
    session.flush()
    return device, token


def who(session: Session, token: str) -> DeviceRow:
    """The device that holds this token. Raises `unpaired` or `revoked`."""
    device = session.scalar(select(DeviceRow).where(DeviceRow.token_hash == hashed(token)))
    if device is None:
        raise TarebookError("unpaired")
    if device.revoked_at is not None:
        raise TarebookError("revoked")
    return device


def is_due(device: DeviceRow) -> bool:
    """Whether `last_seen` is old enough to be worth a write."""
    return datetime.now(UTC) - datetime.fromisoformat(device.last_seen) > SEEN_EVERY


def seen(session: Session, garage: str, device: str) -> None:
    here = DeviceRow.garage == garage, DeviceRow.id == device
    session.execute(update(DeviceRow).where(*here).values(last_seen=utc_now()))


def listing(session: Session, garage: str) -> list[DeviceRow]:
    """Every device the garage ever had, in order of pairing."""
    query = select(DeviceRow).where(DeviceRow.garage == garage)
    return list(session.scalars(query.order_by(DeviceRow.paired_at, DeviceRow.id)))


def rename(session: Session, garage: str, device: str, name: str) -> None:
    """Names a device, for people. Raises `device_nameless`, `device_unknown`. Wants a write session."""
    plain = well_formed(name).replace("\0", "").strip()[:NAME_CHARACTERS]
    if not plain:
        raise TarebookError("device_nameless")
    _get(session, garage, device).name = plain
    session.flush()


def _get(session: Session, garage: str, device: str) -> DeviceRow:
    row = session.get(DeviceRow, (garage, device))
    if row is None:
        raise TarebookError("device_unknown")
    return row


def revoke(session: Session, garage: str, device: str) -> None:
    """Takes a device off the list for good; its records stay. Raises `device_unknown`."""
    row = _get(session, garage, device)
    row.revoked_at = row.revoked_at or utc_now()
    session.flush()
