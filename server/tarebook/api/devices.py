"""The garage's devices: who is paired, since when, last heard; naming one, and taking one off the list."""

from typing import Any

from sqlalchemy.orm import Session

from tarebook.api.access import allowed, is_home
from tarebook.api.blueprint import Room
from tarebook.api.body import checked_id
from tarebook.api.schemas import DevicesSchema, RenameSchema
from tarebook.api.services import database, device
from tarebook.devices import tokens
from tarebook.store.models import DeviceRow

room = Room("devices", __name__, description="Paired devices.")


@room.route("/devices")
@allowed("device")
@room.response(200, DevicesSchema)
def listing() -> dict[str, Any]:
    """Every device the garage ever had."""
    with database().read() as session:
        return _listing(session)


@room.route("/devices/<name>/rename", methods=["POST"])
@allowed("device")
@room.arguments(RenameSchema)
@room.response(200, DevicesSchema)
def rename(body: dict[str, Any], name: str) -> dict[str, Any]:
    """Gives a device another name."""
    with database().write() as session:
        tokens.rename(session, device().garage, checked_id(name, "device_unknown"), body["name"])
        return _listing(session)


@room.route("/devices/<name>/revoke", methods=["POST"])
@allowed("device")
@room.response(200, DevicesSchema)
def revoke(name: str) -> dict[str, Any]:
    """Takes a device off the list for good. Its records stay; what it sends later is set aside."""
    with database().write() as session:
        tokens.revoke(session, device().garage, checked_id(name, "device_unknown"))
        return _listing(session)


def _listing(session: Session) -> dict[str, Any]:
    return {"home": is_home(), "devices": [_told(row) for row in tokens.listing(session, device().garage)]}


def _told(row: DeviceRow) -> dict[str, Any]:
    told = {name: getattr(row, name) for name in ("id", "name", "paired_at", "last_seen", "revoked_at")}
    return {**told, "this": row.id == device().id}
