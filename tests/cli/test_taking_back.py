"""`tarebook devices take-back` and `give-back`: what one phone flooded in goes, and comes back."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from tarebook.garage.records import all_records
from tests.home import Device, Home, entry


@pytest.fixture
def home(tmp_path: Path, tarebook: Any) -> Iterator[Home]:
    """The garage in the data folder the commands use."""
    made = Home(tmp_path / "data")
    yield made
    made.close()


def jobs(home: Home) -> list[str]:
    with home.database.read() as session:
        return [job["name"] for job in all_records(session, home.garage)["jobs"]]


def flooded(home: Home) -> Device:
    """A phone that has sent two jobs."""
    flood = home.pair("flood")
    flood.push(*(entry(name, {"name": name}, device=flood.id) for name in ("x1", "x2")))
    return flood


def test_what_a_device_sent_is_listed_then_taken_back_and_given_back(
    home: Home, tarebook: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    flood = flooded(home)
    monkeypatch.setattr("builtins.input", lambda _question: "n")
    ended = tarebook("devices", "take-back", "flood")
    assert (ended.code, ended.out) == (1, f"{flood.id}, flood:\n  deleted: 2 jobs\nNothing was changed.\n")
    assert "2 jobs" not in tarebook("devices", "give-back", "flood").out
    monkeypatch.setattr("builtins.input", lambda _question: "y")
    ended = tarebook("devices", "take-back", "flood")
    assert "Done: 2 records." in ended.out
    assert f"To undo that: tarebook devices give-back {flood.id}\n" in ended.out
    assert f"tarebook devices revoke {flood.id}\n" in ended.out
    assert jobs(home) == []
    assert "brought back: 2 jobs\nDone: 2 records." in tarebook("devices", "give-back", "flood", "--yes").out
    assert jobs(home) == ["x1", "x2"]


def test_taking_back_begins_where_it_is_told(home: Home, tarebook: Any) -> None:
    flooded(home)
    assert "nothing to change" in tarebook("devices", "take-back", "flood", "--since", "2999-01-01", "--yes").out
    assert "deleted: 2 jobs" in tarebook("devices", "take-back", "flood", "--since", "2001-01-01", "--yes").out
    assert tarebook("devices", "take-back", "flood", "--since", "yesterday").code == 2
    assert tarebook("devices", "take-back", "nobody", "--yes").code == 1
