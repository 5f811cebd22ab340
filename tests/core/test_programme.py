"""What the integer programme spares itself: where a row alone shows that nothing is in a branch, nothing is solved."""

import pytest

from tarebook.core.ballast import programme
from tarebook.core.ballast.programme import Bounds, Effort, Row, least

COUNTS = Bounds([0.0, 0.0], [10.0, 10.0])


@pytest.mark.parametrize(("low", "high"), [(1000.0, 2000.0), (-20.0, -10.0)], ids=["too much", "too little"])
def test_a_row_that_no_counts_can_hold_is_seen_without_a_linear_programme(
    low: float, high: float, monkeypatch: pytest.MonkeyPatch
) -> None:
    solved: list[object] = []
    monkeypatch.setattr(programme, "solve", lambda table, bounds: solved.append(bounds))
    effort = Effort()
    assert least([1.0, 1.0], [Row([3.0, 5.0], low, high)], COUNTS, effort) is None
    assert (solved, effort.is_proven) == ([], True)
