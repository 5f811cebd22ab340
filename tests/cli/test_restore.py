"""`tarebook restore` asks who may still come in, and says what phones must do afterwards."""

from __future__ import annotations

import re
import shutil
import sys
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from tarebook.devices import authority
from tarebook.store import house
from tests.home import Device, Home, entry


@dataclass
class Kept:
    """A garage with three phones, of which one is taken off after the backup; and the folder of a new computer."""

    home: Home
    phones: dict[str, Device]
    file: Path
    new: Path

    def answers(self, folder: Path) -> dict[str, int]:
        """What each phone is answered by the garage in the folder."""
        home = Home(folder)
        for phone in self.phones.values():
            phone.client = home.client
        codes = {name: phone.get("/devices").status_code for name, phone in self.phones.items()}
        home.close()
        return codes


@pytest.fixture
def kept(tmp_path: Path, tarebook: Any) -> Kept:
    home = Home(tmp_path / "data")
    phones = {name: home.pair(name) for name in ("Anna", "Ben", "Lost")}
    phones["Anna"].push(entry("j1", {"name": "one"}, device=phones["Anna"].id))
    with home.database.write() as session:
        house.keep_origin(session, "https://garage.local:8443")
    home.close()
    tarebook("backup", tmp_path / "one.zip")
    phones["Anna"].post(f"/devices/{phones['Lost'].id}/revoke")
    home.close()
    return Kept(home, phones, tmp_path / "one.zip", tmp_path / "new")


def test_an_older_backup_puts_no_phone_back_unless_somebody_says_so(kept: Kept, tarebook: Any) -> None:
    ended = tarebook("restore", kept.file, "--data", kept.new)
    assert (ended.code, ended.out) == (1, "")
    assert ended.err.startswith("tarebook: The garage in this backup lets in phones, and nobody was asked which")
    assert "Anna, Ben, Lost" in ended.err
    assert not (kept.new / "tarebook.sqlite3").exists()


@pytest.mark.parametrize(
    ("said", "codes"),
    [("all", [200, 200, 200]), ("none", [403, 403, 403]), ("Anna, Ben", [200, 200, 403]), ("{Ben}", [403, 200, 403])],
)
def test_on_a_new_computer_those_come_in_that_are_named(kept: Kept, tarebook: Any, said: str, codes: list[int]) -> None:
    named = said.format(**{name: phone.id for name, phone in kept.phones.items()})
    ended = tarebook("restore", kept.file, "--data", kept.new, "--phones", named)
    assert ended.code == 0
    assert list(kept.answers(kept.new).values()) == codes


def test_what_this_computer_knows_to_be_taken_off_stays_off(kept: Kept, tarebook: Any) -> None:
    assert tarebook("restore", kept.file, "--phones", "all").code == 0
    assert kept.answers(kept.home.settings.data) == {"Anna": 200, "Ben": 200, "Lost": 403}
    ended = tarebook("restore", kept.file, "--phones", "Lost")
    assert (ended.code, ended.out) == (1, "")
    assert "has no phone called Lost that can be let in" in ended.err


def test_a_phone_that_joined_since_is_asked_about_as_well(kept: Kept, tarebook: Any) -> None:
    kept.phones["Since"] = kept.home.pair("Since")
    kept.home.close()
    assert tarebook("restore", kept.file, "--phones", "Since").code == 0
    assert list(kept.answers(kept.home.settings.data).values()) == [403, 403, 403, 200]


@pytest.mark.parametrize(
    ("typed", "codes"),
    [(["a"], [200, 200, 403]), (["n"], [403, 403, 403]), (["x", "e", "y", ""], [200, 403, 403])],
    ids=["all", "none", "each"],
)
def test_in_a_terminal_it_asks(
    kept: Kept, tarebook: Any, monkeypatch: pytest.MonkeyPatch, typed: list[str], codes: list[int]
) -> None:
    monkeypatch.setattr(sys.stdin, "isatty", lambda: True, raising=False)
    monkeypatch.setattr("builtins.input", lambda _question: typed.pop(0))
    ended = tarebook("restore", kept.file)
    assert (ended.code, typed) == (0, [])
    day = r"\d{4}-\d\d-\d\d"
    assert re.search(rf"  [0-9a-f]{{16}}  Anna  paired {day}, last seen {day} \d\d:\d\d UTC\n", ended.out)
    assert re.search(rf"  [0-9a-f]{{16}}  Lost  paired {day}, taken off {day}; it stays off\n", ended.out)
    assert list(kept.answers(kept.home.settings.data).values()) == codes


def test_who_gives_no_answer_restores_nothing(kept: Kept, tarebook: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    def gone(_question: str) -> str:
        raise EOFError

    monkeypatch.setattr(sys.stdin, "isatty", lambda: True, raising=False)
    monkeypatch.setattr("builtins.input", gone)
    assert tarebook("restore", kept.file, "--data", kept.new).code == 1
    assert not (kept.new / "tarebook.sqlite3").exists()


def test_on_a_new_computer_it_says_what_phones_must_do(kept: Kept, tarebook: Any) -> None:
    folder = kept.home.settings.certificates
    authority.make(folder, "garage.local")
    said = tarebook("restore", kept.file, "--phones", "all").out
    assert f"begins {authority.fingerprint(authority.load_certificate(folder))[:23]} need nothing" in said
    said = tarebook("restore", kept.file, "--data", kept.new, "--phones", "all").out
    assert "tarebook authority --save FILE" in said
    assert "tarebook authority --take FILE" in said
    assert "tarebook pair shows the QR" in said
    shutil.copytree(folder, kept.new / "certificates")
    assert "need nothing" in tarebook("restore", kept.file, "--data", kept.new, "--phones", "all").out
