"""A few seconds of `python -m tests.load`."""

import pytest

from tests.cli import nginx
from tests.load.run import load


@pytest.mark.parametrize("proxy", nginx.FOUND)
def test_phones_save_while_strangers_hold_on_and_nothing_goes_wrong(tmp_path, proxy):
    figures = load(tmp_path / "house", seconds=5, phones=5)
    assert figures.errors == []
    assert len(figures.pushes) > 10
    assert figures.strangers >= 16
    assert max(figures.health) < 1
    assert figures.push_p95 < 1
