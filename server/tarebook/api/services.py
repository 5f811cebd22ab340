"""What the views need, put together once for each application."""

from dataclasses import dataclass
from typing import cast

from flask import current_app, g

from tarebook.devices.allowance import Allowance
from tarebook.devices.tries import Tries
from tarebook.settings import Settings
from tarebook.store.database import Database
from tarebook.store.models import DeviceRow
from tarebook.store.photos import Photos

NAME = "tarebook"


@dataclass(frozen=True)
class Services:
    settings: Settings
    database: Database
    photos: Photos
    tries: Tries
    allowance: Allowance


def services() -> Services:
    return cast(Services, current_app.extensions[NAME])


def database() -> Database:
    return services().database


def device() -> DeviceRow:
    """The device that asks; there is one wherever `allowed("device")` stands."""
    return cast(DeviceRow, g.device)
