"""A short seeded form of what `python -m tests.sync --only kills --only tabs` does with a real Chromium."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from random import Random

import pytest
from playwright.sync_api import Playwright

from tests.sync.eight import Outcome, kills, tabs


def test_what_a_page_called_saved_is_there_after_its_browser_was_killed(playwright: Playwright, tmp_path: Path) -> None:
    found = kills.of_chromium(playwright, tmp_path, seed=1, kills=3)
    print(found)
    assert (found.lost, found.missing) == ([], [])
    assert found.did["jobs saved there"] > 0


@pytest.mark.parametrize("scene", [tabs.two_tabs, tabs.copied])
def test_what_tabs_and_copies_call_saved_at_the_same_time_is_all_there(
    playwright: Playwright, tmp_path: Path, scene: Callable[[Playwright, Path, Random], Outcome]
) -> None:
    found = scene(playwright, tmp_path, Random(1))
    print(found)
    assert (found.lost, found.missing) == ([], [])
