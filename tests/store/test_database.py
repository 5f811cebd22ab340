"""The database: two doors, durable, and its troubles told as refusals."""

from __future__ import annotations

import sqlite3
from pathlib import Path
from unittest.mock import Mock

import pytest
from sqlalchemy import text

from tarebook.errors import TarebookError
from tarebook.garage import intake
from tarebook.garage.author import Change, write
from tarebook.garage.records import all_records, all_texts, set_aside
from tarebook.settings import Settings
from tarebook.store import garages, migrate
from tarebook.store.database import Database, settings_database
from tarebook.store.lock import hold
from tarebook.store.models import Base
from tarebook.store.rebuild import rebuild, rules
from tests.home import Home, entry


def test_sqlite_writes_ahead_brings_everything_to_the_disk_and_keeps_foreign_keys(tmp_path: Path) -> None:
    with Home(tmp_path).database.read() as session:
        told = {
            name: session.scalar(text(f"PRAGMA {name}")) for name in ("journal_mode", "synchronous", "foreign_keys")
        }
    assert told == {"journal_mode": "wal", "synchronous": 2, "foreign_keys": 1}  # 2 is FULL


def push_and_fail(home: Home) -> None:
    with home.database.write() as session:
        intake.push(session, home.garage, "home", [entry("j1", {"name": "x"}, device="home")])
        raise RuntimeError("after the push")


def push_into_little_room(home: Home) -> None:
    """SQLite's own way to run out of room: two more pages, and no more."""
    texts = [entry(f"j{index}", {"name": "x", "note": "y" * 3000}, device="home") for index in range(20)]
    with home.database.write() as session:
        session.execute(text(f"PRAGMA max_page_count={session.scalar(text('PRAGMA page_count')) + 2}"))
        for one in texts:
            intake.push(session, home.garage, "home", [one])


def test_a_failing_block_leaves_nothing_behind(tmp_path: Path) -> None:
    home = Home(tmp_path)
    with pytest.raises(RuntimeError, match="after the push"):
        push_and_fail(home)
    with home.database.read() as session:
        assert all_texts(session, home.garage) == []
        assert garages.get(session, home.garage).head == 0


def test_a_full_disk_is_a_refusal_and_leaves_nothing_half_written(tmp_path: Path) -> None:
    home = Home(tmp_path)
    with pytest.raises(TarebookError) as refusal:
        push_into_little_room(home)
    assert (refusal.value.code, refusal.value.status) == ("disk_full", 507)
    home.database.close()
    with home.database.read() as session:
        assert (all_texts(session, home.garage), all_records(session, home.garage)["jobs"]) == ([], [])


def test_after_a_commit_that_failed_the_next_goes_in(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """sqlite.org/lang_transaction.html: after SQLITE_FULL the transaction may still be open."""
    home, problem = Home(tmp_path), sqlite3.OperationalError("database or disk is full")
    problem.sqlite_errorcode = sqlite3.SQLITE_FULL
    device, served = home.pair(), home.app.extensions["tarebook"].database
    with monkeypatch.context() as full:
        full.setattr(served.engine.dialect, "do_commit", Mock(side_effect=problem))
        assert device.push(entry("job", {"name": "x"}, device=device.id)).status_code == 507
    assert device.push(entry("job", {"name": "x"}, device=device.id)).status_code == 200


def test_a_database_locked_by_another_program_is_told_busy(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    home = Home(tmp_path)
    monkeypatch.setattr("tarebook.store.database.LOCK_WAIT_SECONDS", 0)
    database = Database(home.settings.database)
    other = sqlite3.connect(tmp_path / "tarebook.sqlite3", isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    with pytest.raises(TarebookError) as refusal, database.write():
        pass
    assert (refusal.value.code, refusal.value.status) == ("busy", 503)


def test_preparing_twice_changes_nothing(tmp_path: Path) -> None:
    home = Home(tmp_path)
    first = home.garage
    home.open()
    assert home.garage == first


def test_the_migrations_make_the_tables_the_program_uses(tmp_path: Path) -> None:
    from alembic.autogenerate import compare_metadata
    from alembic.migration import MigrationContext

    with Home(tmp_path).database.read() as session:
        context = MigrationContext.configure(session.connection(), opts={"compare_type": True})
        assert compare_metadata(context, Base.metadata) == []


def test_a_database_of_a_newer_program_is_left_alone(tmp_path: Path) -> None:
    home = Home(tmp_path)
    with home.database.write() as session:
        session.execute(text("UPDATE alembic_version SET version_num = '9999'"))
    with pytest.raises(TarebookError) as refusal:
        migrate.prepare(home.settings)
    assert refusal.value.code == "database_newer"


def test_a_file_that_is_no_database_is_named_and_left_alone(tmp_path: Path) -> None:
    (tmp_path / "tarebook.sqlite3").write_bytes(b"a spreadsheet" * 1000)
    with pytest.raises(TarebookError) as refusal:
        migrate.prepare(Settings(data=tmp_path))
    assert refusal.value.code == "database_damaged"
    assert (tmp_path / "tarebook.sqlite3").read_bytes() == b"a spreadsheet" * 1000


def test_a_folder_that_cannot_be_made_is_named(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    with pytest.raises(TarebookError) as refusal:
        migrate.prepare(Settings(data=tmp_path / "file" / "folder"))
    assert refusal.value.code == "folder_not_writable"


@pytest.mark.parametrize(
    "address", ["nonsense", "nonsense://x", "postgresql+psycopg://localhost:1/x?connect_timeout=1"]
)
def test_a_database_that_cannot_be_reached_is_told(tmp_path: Path, address: str) -> None:
    with pytest.raises(TarebookError) as refusal:
        migrate.prepare(Settings(data=tmp_path, database_url=address))
    assert refusal.value.code == "database_unreachable"


def test_without_a_database_file_there_is_no_garage_to_report_on(tmp_path: Path) -> None:
    with pytest.raises(TarebookError) as refusal:
        settings_database(Settings(data=tmp_path))
    assert refusal.value.code == "garage_missing"


def test_a_second_server_on_the_same_folder_is_refused(tmp_path: Path) -> None:
    with hold(tmp_path):
        with pytest.raises(TarebookError) as refusal, hold(tmp_path):
            pass
        assert refusal.value.code == "folder_in_use"
    with hold(tmp_path):
        pass


def test_records_come_by_plural_kind_in_order_with_their_open_conflicts(tmp_path: Path) -> None:
    home = Home(tmp_path)
    with home.database.write() as session:
        write(session, home.garage, [Change("job", "j2", {"name": "Glass"}), Change("job", "j1", {"name": "Seats"})])
        write(
            session, home.garage, [Change("job", "j1", {"hours": "1"}, base=()), Change("job", "j2", {"deleted": True})]
        )
        write(session, home.garage, [Change("job", "j1", {"hours": "2"}, base=())])
    with home.database.read() as session:
        records = all_records(session, home.garage)
        deleted = all_records(session, home.garage, deleted=True)["jobs"][1]
    assert records["jobs"] == [{"id": "j1", "name": "Seats", "hours": "1", "conflicts": {"hours": ["1", "2"]}}]
    assert records["scale_checks"] == []
    assert deleted == {"id": "j2", "name": "Glass", "deleted": True}


def test_the_server_itself_leaves_nothing_set_aside(tmp_path: Path) -> None:
    home = Home(tmp_path)
    with pytest.raises(TarebookError) as refusal, home.database.write() as session:
        write(session, home.garage, [Change("job", None, {"name": "Seats", "colour": "red"})])
    assert refusal.value.code == "invalid"
    with home.database.read() as session:
        assert set_aside(session, home.garage) == []


def test_folded_by_other_rules_a_garage_is_folded_again_when_served(tmp_path: Path) -> None:
    home = Home(tmp_path)
    with home.database.write() as session:
        write(session, home.garage, [Change("job", "j1", {"name": "Seats"})])
        session.execute(text("UPDATE garage SET folded_by = 'older'"))
        session.execute(text("UPDATE record SET standing = '{}'"))
    home.open()
    with home.database.read() as session:
        assert all_records(session, home.garage)["jobs"] == [{"id": "j1", "name": "Seats"}]
        assert garages.get(session, home.garage).folded_by == rules()


def test_rebuilding_says_what_was_wrong_and_then_finds_nothing(tmp_path: Path) -> None:
    home = Home(tmp_path)
    with home.database.write() as session:
        write(session, home.garage, [Change("job", "j1", {"name": "Seats"}), Change("job", "j2", {"name": "Glass"})])
        assert rebuild(session, home.garage).changed == 0
        session.execute(text("DELETE FROM record WHERE id = 'j1'"))
        assert rebuild(session, home.garage).changed == 1
        assert rebuild(session, home.garage).changed == 0
