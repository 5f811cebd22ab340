"""A club's database in a backup, and back again: the file is the same as of a home computer."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import delete

from tarebook.errors import TarebookError
from tarebook.garage.records import all_records, all_texts
from tarebook.settings import Settings
from tarebook.store.backup import back_up_to
from tarebook.store.database import Database
from tarebook.store.migrate import prepare
from tarebook.store.models import GarageRow
from tarebook.store.restore import restore
from tests.home import Home, entry
from tests.photos import photo_entry, picture, send_photo, sha


@pytest.fixture
def club(address: str, tmp_path: Path) -> Iterator[Home]:
    """A server over an otherwise empty PostgreSQL database, with a job and its photo."""
    settings = Settings(data=tmp_path / "club", database_url=address)
    _emptied(prepare(settings))
    home = Home(tmp_path / "club", database_url=address)
    phone = home.pair()
    phone.push(entry("j1", {"name": "a\u0000b"}, device=phone.id), entry("j2", {"name": "two"}, device=phone.id))
    send_photo(phone, picture(1))
    phone.push(photo_entry(picture(1), "j1", phone))
    yield home
    _emptied(home.database)
    home.close()


def _emptied(database: Database) -> None:
    with database.write() as session:
        session.execute(delete(GarageRow))
    database.close()


def contents(database: Database, garage: str) -> tuple[Any, ...]:
    with database.read() as session:
        return all_records(session, garage), all_texts(session, garage)


def test_from_postgresql_to_a_home_computer(club: Home, tmp_path: Path) -> None:
    back_up_to(club.settings, club.database, tmp_path / "one.zip")
    restore(Settings(data=tmp_path / "home"), tmp_path / "one.zip")
    home = Home(tmp_path / "home")
    assert contents(home.database, club.garage) == contents(club.database, club.garage)
    assert (home.settings.photos / sha(picture(1))[:2] / sha(picture(1))).read_bytes() == picture(1)


def test_from_postgresql_to_an_empty_postgresql_and_never_over_a_full_one(club: Home, tmp_path: Path) -> None:
    wanted = contents(club.database, club.garage)
    back_up_to(club.settings, club.database, tmp_path / "one.zip")
    club.close()
    with pytest.raises(TarebookError) as refusal:
        restore(club.settings, tmp_path / "one.zip")
    assert refusal.value.code == "restore_not_empty"
    _emptied(club.database)
    assert restore(club.settings, tmp_path / "one.zip").entries == 3
    assert contents(club.database, club.garage) == wanted
