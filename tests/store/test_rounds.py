"""Backups are proven every day, watched, and cleared of what a killed one left; a wrong clock evicts nothing."""

from __future__ import annotations

import sqlite3
import subprocess
import sys
import time
from collections.abc import Callable
from contextlib import closing
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from tarebook.cli import daily
from tarebook.cli.daily import DailyBackups
from tarebook.errors import TarebookError
from tarebook.store import house
from tarebook.store.backup import back_up_daily
from tarebook.store.kept import backups_in
from tarebook.store.lock import hold
from tarebook.store.rounds import make_round
from tests.home import Device, Home
from tests.photos import sha
from tests.store.backups import NOON, photograph, record


def proven(home: Home) -> str | None:
    with home.database.read() as session:
        return house.proven_at(session)


def test_a_day_with_nothing_new_proves_the_backup_again_and_phones_hear_of_it(home: Home, phone: Device) -> None:
    assert make_round(home.settings, home.database, NOON) is None  # nothing to lose yet
    assert phone.pull().json["proven"] is None
    record(phone, "j1")
    made = make_round(home.settings, home.database, NOON)
    first = phone.pull().json["proven"]
    assert first is not None
    later = datetime.now(UTC) + timedelta(days=3)
    assert make_round(home.settings, home.database, later) == made
    assert phone.pull().json["proven"] == proven(home) == later.isoformat(timespec="milliseconds")
    assert make_round(home.settings, home.database, later + timedelta(minutes=10)) is None


def test_a_kept_backup_gone_bad_is_replaced_by_a_new_one(home: Home, phone: Device) -> None:
    record(phone, "j1")
    made = make_round(home.settings, home.database, NOON)
    assert made is not None
    data = bytearray(made.read_bytes())
    data[100] ^= 1
    made.write_bytes(data)
    again = make_round(home.settings, home.database, datetime.now(UTC) + timedelta(days=3))
    assert again not in (None, made)


def test_a_photo_gone_bad_in_silence_is_healed_on_a_day_with_nothing_new(home: Home, phone: Device) -> None:
    record(phone, "j1")
    data = photograph(phone, 1)
    make_round(home.settings, home.database, NOON)
    file = home.settings.photos / sha(data)[:2] / sha(data)
    file.write_bytes(b"\0" * len(data))
    make_round(home.settings, home.database, datetime.now(UTC) + timedelta(days=3))
    assert file.read_bytes() == data


def damage_table(file: Path, table: str) -> None:
    """Only where the table begins: who does not read it, nor looks at every page, sees nothing of it."""
    with closing(sqlite3.connect(file)) as database:
        (size,) = database.execute("PRAGMA page_size").fetchone()
        (root,) = database.execute("SELECT rootpage FROM sqlite_master WHERE name = ?", (table,)).fetchone()
    with file.open("r+b") as pages:
        pages.seek((root - 1) * size)
        pages.write(b"\xa5" * size)


def test_a_database_damaged_where_the_round_reads_nothing_else_ends_it(home: Home, phone: Device) -> None:
    record(phone, *(f"j{n}" for n in range(200)))
    make_round(home.settings, home.database, NOON)
    home.close()
    damage_table(home.settings.data / "tarebook.sqlite3", "record")
    with pytest.raises(TarebookError) as refusal:
        make_round(home.settings, home.database, datetime.now(UTC) + timedelta(days=3))
    assert refusal.value.code == "database_damaged"


def test_what_a_killed_backup_left_is_cleared_at_once_and_one_under_way_is_not(home: Home, phone: Device) -> None:
    record(phone, "j1")
    left, going = (home.settings.backups / f".tarebook-backup-{name}" for name in ("left", "going"))
    for folder in (left, going):
        folder.mkdir(parents=True)
        (folder / "whole.zip").write_bytes(b"half")
    with hold(going):
        back_up_daily(home.settings, home.database, NOON)
    assert (left.exists(), going.exists()) == (False, True)


def test_days_that_a_wrong_clock_has_dated_ahead_evict_nothing(home: Home, phone: Device) -> None:
    record(phone, "j1")
    real = [NOON - timedelta(days=day) for day in range(6, 0, -1)]
    made = [back_up_daily(home.settings, home.database, day).file for day in real]
    for year in range(2031, 2060):
        (home.settings.backups / f"tarebook-{year}0101-000000.zip").write_bytes(made[-1].read_bytes())
    newest = back_up_daily(home.settings, home.database, NOON).file
    assert {*made, newest} <= set(backups_in(home.settings.backups))
    assert len(backups_in(home.settings.backups)) <= 7 + 24


def until(true: Callable[[], object], seconds: float = 20) -> bool:
    ends = time.monotonic() + seconds
    while not true():
        if time.monotonic() > ends:
            return False
        time.sleep(0.05)
    return True


@pytest.fixture
def stand_ins(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Callable[[str], Path]:
    """Runs another program in the place of the backups; each start adds a line to a file."""
    started = tmp_path / "started"
    real = subprocess.Popen

    def instead(program: str) -> Path:
        program = f"open({str(started)!r}, 'a').write('x')\n{program}"

        def start(_command: list[str], **how: Any) -> subprocess.Popen[bytes]:
            return real([sys.executable, "-c", program], **how)

        monkeypatch.setattr("tarebook.cli.daily.subprocess.Popen", start)
        return started

    return instead


@pytest.mark.parametrize("program", ["raise SystemExit(3)", "import time; time.sleep(600)"])
def test_backups_that_die_or_say_nothing_are_started_again(
    home: Home, stand_ins: Callable[[str], Path], monkeypatch: pytest.MonkeyPatch, program: str
) -> None:
    monkeypatch.setattr(daily, "_AGAIN_AFTER_SECONDS", 0.05)
    monkeypatch.setattr(daily, "_SILENT_SECONDS", 1.0)
    started = stand_ins(program)
    backups = DailyBackups(home.settings)
    backups.start()
    assert until(lambda: started.exists() and len(started.read_text()) >= 3)
    backups.stop()
    count = len(started.read_text())
    assert backups._process is not None
    assert backups._process.poll() is not None
    assert len(started.read_text()) == count
