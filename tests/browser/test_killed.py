"""A short seeded form of what `python -m tests.sync --only kills` does with a real Chromium."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import Playwright

from tests.sync.eight import kills


def test_what_a_page_called_saved_is_there_after_its_browser_was_killed(playwright: Playwright, tmp_path: Path) -> None:
    found = kills.of_chromium(playwright, tmp_path, seed=1, kills=3)
    print(found)
    assert (found.lost, found.missing) == ([], [])
    assert found.did["jobs saved there"] > 0
