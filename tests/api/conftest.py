"""A home server with an app of three files, and one paired phone."""

from pathlib import Path

import pytest

from tests.home import Device, Home


@pytest.fixture
def home(tmp_path: Path) -> Home:
    app = tmp_path / "app"
    (app / "assets").mkdir(parents=True)
    (app / "index.html").write_text("<!doctype html><title>Tarebook</title>")
    (app / "sw.js").write_text("// worker")
    (app / "assets" / "main-1a2b.js").write_text("// app")
    return Home(tmp_path)


@pytest.fixture
def phone(home: Home) -> Device:
    return home.pair()


@pytest.fixture(scope="module")
def lasting_home(tmp_path_factory: pytest.TempPathFactory) -> Home:
    """One for all tests of a module, whatever was asked of it before."""
    return Home(tmp_path_factory.mktemp("home"))


@pytest.fixture(scope="module")
def headers(lasting_home: Home) -> dict[str, str]:
    """Of a device that is paired there."""
    return lasting_home.pair().headers
