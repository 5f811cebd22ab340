"""`tarebook backup` and `tarebook restore`, and the backups that serving makes."""

from __future__ import annotations

import re
import subprocess
import time
from pathlib import Path
from typing import Any

import pytest

from tarebook.cli import main
from tarebook.cli.daily import DailyBackups
from tarebook.store import garages
from tarebook.store.lock import hold
from tests.cli.process import COMMAND, environment, serving
from tests.home import Device, Home, entry
from tests.photos import photo_entry, picture, send_photo

MADE = r"2 entries, 1 photos\. Restored elsewhere and folded again, it is the same\.\n"


@pytest.fixture
def home(tmp_path: Path, tarebook: Any) -> Home:
    """A job and its photo in the data folder the commands use; the server is stopped."""
    made = Home(tmp_path / "data")
    phone = made.pair()
    phone.push(entry("j1", {"name": "one"}, device=phone.id))
    fill(phone, 1)
    made.close()
    return made


def fill(phone: Device, seed: int) -> None:
    send_photo(phone, picture(seed))
    phone.push(photo_entry(picture(seed), "j1", phone))


def test_a_backup_goes_to_a_file_a_folder_or_those_that_are_kept(home: Home, tarebook: Any, tmp_path: Path) -> None:
    (tmp_path / "stick").mkdir()
    named = r"tarebook-\d{8}-\d{6}\.zip"
    for asked, expected in (
        ((tmp_path / "one.zip",), re.escape(str(tmp_path / "one.zip"))),
        ((tmp_path / "stick",), re.escape(str(tmp_path / "stick")) + f"/{named}"),
        ((), re.escape(str(tmp_path / "data" / "backups")) + f"/{named}"),
    ):
        ended = tarebook("backup", *asked)
        assert (ended.code, ended.err) == (0, "")
        assert re.fullmatch(f"{expected}: {MADE}", ended.out)


def test_photos_that_are_not_whole_are_said(home: Home, tarebook: Any, tmp_path: Path) -> None:
    for photo in home.settings.photos.glob("??/*"):
        photo.unlink()
    ended = tarebook("backup", tmp_path / "one.zip")
    assert ended.out.endswith("Photos that are not whole on this computer, and so not in it: 1.\n")


def test_a_relative_data_folder_does(home: Home, tarebook: Any, tmp_path: Path, monkeypatch: Any) -> None:
    monkeypatch.chdir(tmp_path)
    assert tarebook("backup", "one.zip", "--data", "data").code == 0
    assert tarebook("restore", "one.zip", "--data", "new", "--phones", "all").code == 0
    assert (tmp_path / "new" / "tarebook.sqlite3").exists()


def test_a_restore_says_what_came_back_and_where_the_old_one_is(home: Home, tarebook: Any, tmp_path: Path) -> None:
    tarebook("backup", tmp_path / "one.zip")
    ended = tarebook("restore", tmp_path / "one.zip", "--phones", "all")
    assert ended.code == 0
    assert re.match(r"Restored as of \d{4}-\d\d-\d\d \d\d:\d\d UTC: 2 entries, 1 photos\.\n", ended.out)
    aside = re.search(r"^The database that was there is in (.+)\.$", ended.out, re.MULTILINE)
    assert aside is not None
    assert Path(aside[1], "tarebook.sqlite3").exists()
    assert tarebook("rebuild").out.endswith("Nothing changed.\n")


@pytest.mark.parametrize(("file", "words"), [("nowhere.zip", "cannot be read"), ("notes.txt", "is not a backup")])
def test_what_is_no_backup_is_one_sentence(home: Home, tarebook: Any, tmp_path: Path, file: str, words: str) -> None:
    (tmp_path / "notes.txt").write_text("not a zip")
    ended = tarebook("restore", tmp_path / file)
    assert (ended.code, ended.out, ended.err.count("\n")) == (1, "", 1)
    assert words in ended.err


def test_while_serving_a_restore_waits_for_the_server_to_stop(home: Home, tarebook: Any, tmp_path: Path) -> None:
    tarebook("backup", tmp_path / "one.zip")
    with hold(home.settings.data):
        ended = tarebook("restore", tmp_path / "one.zip")
    assert ended.code == 1
    assert "already serving the folder" in ended.err


def backups(folder: Path) -> list[Path]:
    return sorted(folder.glob("backups/tarebook-*.zip"))


def until(what: Any) -> None:
    end = time.monotonic() + 60
    while not what():
        assert time.monotonic() < end
        time.sleep(0.1)


def test_the_daily_one_is_made_and_the_program_ends_with_its_input(home: Home) -> None:
    command = [*COMMAND, "backup", "--daily"]
    env = environment(TAREBOOK_DATA=str(home.settings.data))
    with subprocess.Popen(command, env=env, stdin=subprocess.PIPE, stderr=subprocess.PIPE, text=True) as daily:
        until(lambda: backups(home.settings.data))
        assert daily.poll() is None
        _out, err = daily.communicate(timeout=60)
    assert (daily.returncode, err) == (0, "")
    assert len(backups(home.settings.data)) == 1


def test_a_daily_one_that_cannot_be_made_is_said_and_tried_again(home: Home) -> None:
    (home.settings.data / "backups").write_text("a file in the way")
    env = environment(TAREBOOK_DATA=str(home.settings.data))
    with subprocess.Popen(
        [*COMMAND, "backup", "--daily"], env=env, stdin=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    ) as daily:
        assert daily.stderr is not None
        assert "backups cannot be written to" in daily.stderr.readline()
        assert daily.poll() is None
        daily.communicate(timeout=60)
    assert daily.returncode == 0


def durable_of(home: Home) -> int | None:
    with home.database.read() as session:
        return garages.get(session, home.garage).durable


def test_serving_makes_one_a_day_and_phones_hear_of_it(home: Home) -> None:
    with serving("--port", "0", "--no-browser", "--data", home.settings.data):
        until(lambda: backups(home.settings.data))
        until(lambda: durable_of(home) == 2)


@pytest.mark.parametrize(("options", "made"), [((), 1), (("--demo",), 0)], ids=["a garage", "the demo"])
def test_a_garage_has_them_made_and_the_demo_none(options, made, tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    served = []
    monkeypatch.setattr("tarebook.cli.server.serve", lambda house, _ready: served.append(house))
    where = () if options else ("--data", str(tmp_path / "data"))
    assert main(["serve", *options, *where, "--port", "0", "--no-browser"]) == 0
    assert sum(isinstance(each, DailyBackups) for each in served[0].alongside) == made


def test_a_server_that_is_killed_takes_the_making_of_backups_with_it(home: Home) -> None:
    def making() -> list[str]:
        listed = subprocess.run(["ps", "-eww", "-o", "args"], capture_output=True, text=True, check=True).stdout
        return [line for line in listed.splitlines() if "--daily" in line and str(home.settings.data) in line]

    with serving("--port", "0", "--no-browser", "--data", home.settings.data) as (server, _lines):
        until(making)
        server.kill()
        until(lambda: not making())
