"""Garages: the unit of isolation. A home server has one; a club's database has many."""

import secrets

from sqlalchemy import delete, select, update
from sqlalchemy.orm import Session

from tarebook.errors import TarebookError
from tarebook.store.models import DeviceRow, GarageRow, PairCodeRow, PairJoinRow, PhotoRow, UploadRow, utc_now
from tarebook.store.rebuild import rules


def create(session: Session) -> GarageRow:
    """A new, empty garage."""
    garage = GarageRow(
        id=secrets.token_hex(10), epoch=secrets.token_hex(8), head=0, folded_by=rules(), made_at=utc_now(),
        receipt_key=secrets.token_bytes(32),
    )  # fmt: skip
    session.add(garage)
    session.flush()
    return garage


def open_or_create(session: Session) -> GarageRow:
    """The first garage of the database, made when there is none. Wants a write session."""
    return first(session) or create(session)


def first(session: Session) -> GarageRow | None:
    return session.scalars(select(GarageRow).order_by(GarageRow.made_at, GarageRow.id).limit(1)).one_or_none()


def renamed(session: Session, garage: str, name: str) -> str:
    """An empty garage that no phone has joined gets another name; any other keeps its own. Gives the name it has."""
    joined = session.scalar(select(DeviceRow.id).where(DeviceRow.garage == garage).limit(1))
    if get(session, garage, lock=True).head or joined or session.get(GarageRow, name):
        return garage
    for table in (PairCodeRow, PairJoinRow, UploadRow, PhotoRow):
        session.execute(delete(table).where(table.garage == garage))
    session.execute(update(GarageRow).where(GarageRow.id == garage).values(id=name))
    session.expire_all()
    return name


def get(session: Session, garage: str, lock: bool = False) -> GarageRow:
    """Raises `garage_unknown`. With `lock`, nobody else writes to the garage until this transaction ends."""
    row = session.get(GarageRow, garage, with_for_update=lock or None)
    if row is None:
        raise TarebookError("garage_unknown")
    return row


def new_epoch(session: Session, garage: str) -> str:
    """Says that the journal was restored from a copy: every phone then sends again what it holds."""
    epoch = secrets.token_hex(8)
    session.execute(update(GarageRow).where(GarageRow.id == garage).values(epoch=epoch))
    return epoch
