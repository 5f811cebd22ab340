"""A home server in a folder `data`, beside which there is room for backups, and one paired phone."""

from pathlib import Path

import pytest

from tests.home import Device, Home


@pytest.fixture
def home(tmp_path: Path) -> Home:
    return Home(tmp_path / "data")


@pytest.fixture
def phone(home: Home) -> Device:
    return home.pair()
