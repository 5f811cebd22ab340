"""What the server has chosen once for all phones: its permanent address.

A phone's records belong to the address they were made under. Another name, port or scheme is another app to a browser,
with a store of its own, so the address that phones paired with is kept here and not guessed anew at each start.
"""

from sqlalchemy.orm import Session

from tarebook.store.models import SettingRow

_ORIGIN = "origin"


def origin(session: Session) -> str | None:
    """The address phones open, like `https://tarebook.local:8443`; None until one is chosen."""
    row = session.get(SettingRow, _ORIGIN)
    return row.value if row else None


def keep_origin(session: Session, address: str) -> None:
    """Chooses the address. Wants a write session."""
    session.merge(SettingRow(name=_ORIGIN, value=address))
