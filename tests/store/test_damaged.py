"""A damaged database is refused with its own name and what to do, when it is opened and when it is backed up."""

from __future__ import annotations

import sqlite3
from pathlib import Path

import pytest

from tarebook.errors import TarebookError
from tarebook.store.backup import back_up_to
from tarebook.store.migrate import prepare
from tests.home import Device, Home
from tests.store.backups import damage_pages, record, spoil_text


@pytest.fixture
def written(home: Home, phone: Device) -> Path:
    """The file of a database with some pages of entries, nothing of it in memory."""
    record(phone, *(f"j{n}" for n in range(200)))
    home.close()
    file = home.settings.data / "tarebook.sqlite3"
    with sqlite3.connect(file) as plain:
        plain.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    return file


def refusal_of(raised: pytest.ExceptionInfo[TarebookError]) -> tuple[str, str]:
    told = raised.value
    assert "{" not in told.sentence + told.do
    return told.code, told.sentence


def test_pages_overwritten_are_found_before_anything_is_served(home: Home, written: Path) -> None:
    damage_pages(written)
    with pytest.raises(TarebookError) as raised:
        prepare(home.settings)
    code, sentence = refusal_of(raised)
    assert code == "database_damaged"
    assert str(written) in sentence


def test_a_file_that_is_no_database_is_named(home: Home, written: Path) -> None:
    written.write_bytes(b"a spreadsheet" * 1000)
    with pytest.raises(TarebookError) as raised:
        prepare(home.settings)
    assert refusal_of(raised)[0] == "database_damaged"
    assert str(written) in raised.value.sentence


@pytest.mark.parametrize("damage", [damage_pages, spoil_text])
def test_a_backup_of_it_names_the_database_and_not_the_backup(
    home: Home, written: Path, tmp_path: Path, damage: object
) -> None:
    assert callable(damage)
    damage(written)
    with pytest.raises(TarebookError) as raised:
        back_up_to(home.settings, home.database, tmp_path / "one.zip")
    assert refusal_of(raised)[0] == "database_damaged"
    assert str(written) in raised.value.sentence
    assert "one.zip" not in raised.value.sentence


def test_a_pull_over_a_damaged_entry_says_so(home: Home, written: Path, phone: Device) -> None:
    spoil_text(written)
    answer = phone.pull()
    assert (answer.status_code, answer.json["error"]["code"]) == (500, "database_damaged")
    assert str(written) in answer.json["error"]["sentence"]
