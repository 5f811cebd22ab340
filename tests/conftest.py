"""What holds for every Python test: nothing of this machine's own Tarebook is seen, and no example is timed; and a home
server of its own with one paired phone, for a test that asks for them. No sentence is printed with a name left out.
"""

import os
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import settings

from tarebook.errors import _Shown
from tests.home import Device, Home

# A slow machine is not a failing one; a failing example is printed so that it can be pasted back as @example.
settings.register_profile("tarebook", deadline=None, print_blob=True)
settings.load_profile("tarebook")


@pytest.fixture(autouse=True)
def _no_settings_of_this_machine(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    for name in [name for name in os.environ if name.startswith("TAREBOOK_") or name == "DATABASE_URL"]:
        monkeypatch.delenv(name)
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))


@pytest.fixture(autouse=True)
def unfilled(monkeypatch: pytest.MonkeyPatch) -> Iterator[list[str]]:
    """The names that sentences about trouble were printed without; a test that prints one fails."""
    found: list[str] = []
    missing = _Shown.__missing__

    def heard(data: _Shown, key: str) -> str:
        found.append(key)
        return missing(data, key)

    monkeypatch.setattr(_Shown, "__missing__", heard)
    yield found
    assert found == []


@pytest.fixture
def home(tmp_path: Path) -> Home:
    """With an app of three files, in a folder `data`, beside which there is room for backups."""
    app = tmp_path / "data" / "app"
    (app / "assets").mkdir(parents=True)
    (app / "index.html").write_text("<!doctype html><title>Tarebook</title>")
    (app / "sw.js").write_text("// worker")
    (app / "assets" / "main-1a2b.js").write_text("// app")
    return Home(tmp_path / "data")


@pytest.fixture
def phone(home: Home) -> Device:
    return home.pair()


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--kills", metavar="N", type=int, default=8, help="how often the server is killed (default: 8)")
    parser.addoption("--share", metavar="N/OF", help="only every OF-th file with tests, beginning with the N-th")


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    if config.getoption("share"):
        number, of = map(int, config.getoption("share").split("/"))
        files = sorted({item.path for item in items})
        mine = set(files[number - 1 :: of])
        config.hook.pytest_deselected(items=[item for item in items if item.path not in mine])
        items[:] = [item for item in items if item.path in mine]
