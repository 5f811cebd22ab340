"""The garage a command works on: the first of the database in the data folder."""

from argparse import Namespace
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from tarebook.garage.records import Records, all_records, unproven
from tarebook.settings import Settings
from tarebook.store import garages
from tarebook.store.database import Database, settings_database
from tarebook.store.migrate import prepare, prepare_to_read


@dataclass(frozen=True)
class OpenGarage:
    """One garage with the database and settings it was found by."""

    id: str
    database: Database
    settings: Settings

    def records(self, deleted: bool = False) -> Records:
        with self.database.read() as session:
            return all_records(session, self.id, deleted)

    def unproven(self) -> list[dict[str, str]]:
        with self.database.read() as session:
            return unproven(session, self.id)


def settings_of(options: Namespace, **given: Any) -> Settings:
    """The settings of the environment, `--data` and what the command itself says."""
    folder = {"data": Path(options.data).expanduser()} if options.data else {}
    return Settings.read(**{**folder, **given})


@contextmanager
def prepared_garage(options: Namespace) -> Iterator[OpenGarage]:
    """The garage, made when there is none, its database brought up to this program."""
    with garage_in(settings_of(options)) as garage:
        yield garage


@contextmanager
def existing_garage(options: Namespace) -> Iterator[OpenGarage]:
    """The garage that is there, its database brought up to this program. Raises `garage_missing`."""
    settings = settings_of(options)
    settings_database(settings).close()
    with garage_in(settings) as garage:
        yield garage


@contextmanager
def readable_garage(options: Namespace) -> Iterator[OpenGarage]:
    """The garage that is there, to read from: also from a disk that is full or read-only. Raises `garage_missing`."""
    settings = settings_of(options)
    settings_database(settings).close()
    with _garage_of(prepare_to_read(settings), settings) as garage:
        yield garage


@contextmanager
def garage_in(settings: Settings) -> Iterator[OpenGarage]:
    """The garage of the database the settings name; both are made when they are not there."""
    with _garage_of(prepare(settings), settings) as garage:
        yield garage


@contextmanager
def _garage_of(database: Database, settings: Settings) -> Iterator[OpenGarage]:
    try:
        with database.write() as session:
            garage = garages.open_or_create(session).id
        yield OpenGarage(garage, database, settings)
    finally:
        database.close()
