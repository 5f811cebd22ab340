"""Which of the daily backups are kept: the newest of each of the last 7 days, 5 weeks and 12 months that have one.

Days are counted by the backups themselves, not by the clock, so that a clock years off never empties the folder.
"""

import re
from collections.abc import Callable, Iterable
from datetime import UTC, datetime, timedelta
from pathlib import Path

DAYS, WEEKS, MONTHS = 7, 5, 12

_NAME = re.compile(r"tarebook-(\d{8}-\d{6})\.zip")
_STAMP = "%Y%m%d-%H%M%S"
_PERIODS: tuple[tuple[int, Callable[[datetime], object]], ...] = (
    (DAYS, lambda moment: moment.date()),
    (WEEKS, lambda moment: moment.isocalendar()[:2]),
    (MONTHS, lambda moment: (moment.year, moment.month)),
)


def name_at(moment: datetime) -> str:
    """The name of a backup's file."""
    return f"tarebook-{moment.astimezone(UTC).strftime(_STAMP)}.zip"


def backups_in(folder: Path) -> dict[Path, datetime]:
    """The backups kept in a folder, with the moment each was made, newest first."""
    named = ((path, _moment(path)) for path in folder.glob("tarebook-*.zip"))
    found = {path: moment for path, moment in named if moment is not None}
    return dict(sorted(found.items(), key=lambda item: item[1], reverse=True))


def _moment(path: Path) -> datetime | None:
    match = _NAME.fullmatch(path.name)
    try:
        return datetime.strptime(match[1], _STAMP).replace(tzinfo=UTC) if match else None
    except ValueError:
        return None


def staying(moments: Iterable[datetime], now: datetime) -> set[datetime]:
    """Those of the backups that stay. What a clock gone wrong has dated ahead takes no place of the others."""
    here = set(moments)
    ahead = {moment for moment in here if moment > now + timedelta(days=1)}
    return to_keep(here - ahead) | to_keep(ahead)


def to_keep(moments: Iterable[datetime]) -> set[datetime]:
    """Those that stay, of backups that one clock has dated."""
    newest_first = sorted(set(moments), reverse=True)
    kept: set[datetime] = set()
    for most, period in _PERIODS:
        newest: dict[object, datetime] = {}
        for moment in newest_first:
            newest.setdefault(period(moment), moment)
        kept.update(list(newest.values())[:most])
    return kept
