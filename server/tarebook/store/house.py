"""What the server must not forget: its permanent address, and when a backup was last proven.

A phone's records belong to the address they were made under. Another name, port or scheme is another app to a browser,
with a store of its own, so the address that phones paired with is kept here and not guessed anew at each start.
"""

from sqlalchemy.orm import Session

from tarebook.store.models import SettingRow

_ORIGIN, _PROVEN = "origin", "backup_proven"


def origin(session: Session) -> str | None:
    """The address phones open, like `https://tarebook.local:8443`; None until one is chosen."""
    row = session.get(SettingRow, _ORIGIN)
    return row.value if row else None


def keep_origin(session: Session, address: str) -> None:
    """Chooses the address. Wants a write session."""
    session.merge(SettingRow(name=_ORIGIN, value=address))


def proven_at(session: Session) -> str | None:
    """When a backup of all there was then was last proven whole; None: never."""
    row = session.get(SettingRow, _PROVEN)
    return row.value if row else None


def keep_proven(session: Session, moment: str) -> None:
    """Wants a write session."""
    session.merge(SettingRow(name=_PROVEN, value=moment))
