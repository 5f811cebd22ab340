"""What holds for every Python test: nothing of this machine's own Tarebook is seen, and no example is timed."""

import os
from pathlib import Path

import pytest
from hypothesis import settings

# A slow machine is not a failing one; a failing example is printed so that it can be pasted back as @example.
settings.register_profile("tarebook", deadline=None, print_blob=True)
settings.load_profile("tarebook")


@pytest.fixture(autouse=True)
def _no_settings_of_this_machine(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    for name in [name for name in os.environ if name.startswith("TAREBOOK_") or name == "DATABASE_URL"]:
        monkeypatch.delenv(name)
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
