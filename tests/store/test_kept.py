"""Which backups stay."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.store.kept import backups_in, name_at, to_keep

moments = st.datetimes(datetime(1971, 1, 1), datetime(2099, 1, 1), timezones=st.just(UTC))


def test_after_two_years_of_days_there_are_seven_days_five_weeks_and_twelve_months() -> None:
    """Counted by hand on a calendar: 2026-11-25 is a Wednesday."""
    last = datetime(2026, 11, 25, 9, tzinfo=UTC)
    kept: set[datetime] = set()
    for day in range(730, -1, -1):
        kept = to_keep({*kept, last - timedelta(days=day)})
    days = {(11, 25), (11, 24), (11, 23), (11, 22), (11, 21), (11, 20), (11, 19)}
    weeks = {(11, 15), (11, 8), (11, 1)}  # the Sundays of the weeks before those days: five weeks with the two above
    months = {(10, 31), (9, 30), (8, 31), (7, 31), (6, 30), (5, 31), (4, 30), (3, 31), (2, 28), (1, 31), (12, 31)}
    assert {(moment.month, moment.day) for moment in kept} == days | weeks | months
    assert {moment.year for moment in kept} == {2025, 2026}


def test_of_one_day_the_newest_stays() -> None:
    morning, evening = datetime(2026, 5, 2, 6, tzinfo=UTC), datetime(2026, 5, 2, 22, tzinfo=UTC)
    assert to_keep([morning, evening]) == {evening}


def test_a_folder_of_old_backups_is_not_emptied_by_the_clock() -> None:
    old = {datetime(1990 + year, 3, 1, tzinfo=UTC) for year in range(9)}
    assert len(to_keep(old)) == 9


@given(st.sets(moments, max_size=60))
def test_what_stays_is_newest_of_its_kind_and_stays_again(made: set[datetime]) -> None:
    kept = to_keep(made)
    assert kept <= made
    assert not made or max(made) in kept
    assert to_keep(kept) == kept
    assert len(kept) <= 7 + 5 + 12


@given(moments)
def test_a_name_tells_the_moment(moment: datetime) -> None:
    assert datetime.strptime(name_at(moment), "tarebook-%Y%m%d-%H%M%S.zip").replace(tzinfo=UTC) == moment.replace(
        microsecond=0
    )


@pytest.mark.parametrize("stranger", ["notes.zip", "tarebook-20261301-000000.zip", "tarebook-20261125.zip", "a.txt"])
def test_other_files_in_the_folder_are_left_alone(tmp_path: Path, stranger: str) -> None:
    mine = name_at(datetime(2026, 5, 2, tzinfo=UTC))
    for name in (stranger, mine):
        (tmp_path / name).touch()
    assert [file.name for file in backups_in(tmp_path)] == [mine]
