"""Settings: one table, strictly read."""

from __future__ import annotations

from dataclasses import fields
from pathlib import Path

import pytest

from tarebook.errors import TarebookError
from tarebook.settings import Settings, environment_name


def test_without_an_environment_the_defaults_hold() -> None:
    settings = Settings.read({})
    assert (settings.host, settings.port, settings.demo, settings.hosts) == ("127.0.0.1", 8017, False, ())
    assert settings.database == f"sqlite:///{settings.data / 'tarebook.sqlite3'}"


def test_the_environment_sets_and_the_command_line_wins() -> None:
    environment = {"TAREBOOK_PORT": "9000", "TAREBOOK_HOSTS": "Garage.test, shed.test", "TAREBOOK_DATA": "/srv/garage"}
    settings = Settings.read(environment, port=9001)
    assert (settings.port, settings.hosts, settings.data) == (9001, ("garage.test", "shed.test"), Path("/srv/garage"))


def test_the_database_has_the_name_hosting_services_give_it() -> None:
    assert Settings.read({"DATABASE_URL": "postgresql+psycopg://x"}).database == "postgresql+psycopg://x"


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("PORT", "eighty"), ("PORT", "-1"), ("PORT", "70000"), ("PORT", ""), ("DATA", " "),
        ("THREADS", "0"), ("PHOTO_BYTES", "1e6"), ("PHOTO_PIXELS", "0"),
    ],
)  # fmt: skip
def test_a_value_that_cannot_be_read_stops_with_a_sentence(name: str, value: str) -> None:
    with pytest.raises(TarebookError) as refusal:
        Settings.read({f"TAREBOOK_{name}": value})
    assert refusal.value.code == "bad_setting"
    assert f"TAREBOOK_{name}" in refusal.value.sentence


def test_a_folder_is_the_same_one_wherever_the_program_goes_later(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    settings = Settings.read({"TAREBOOK_DATA": "cars", "TAREBOOK_BACKUP_FOLDER": "kept", "TAREBOOK_STATIC_APP": "app"})
    monkeypatch.chdir("/")
    assert (settings.data, settings.photos) == (tmp_path / "cars", tmp_path / "cars" / "photos")
    assert (settings.backups, settings.static_app) == (tmp_path / "kept", tmp_path / "app")
    assert settings.database == f"sqlite:///{tmp_path / 'cars' / 'tarebook.sqlite3'}"


def test_only_the_command_makes_a_demo_and_no_variable() -> None:
    assert Settings.read({"TAREBOOK_DEMO": "yes"}).demo is False
    assert Settings.read({}, demo=True).demo is True


def test_every_setting_says_what_it_is_for() -> None:
    for row in fields(Settings):
        assert row.metadata["help"].endswith(".")
        assert environment_name(row.name).isupper()
