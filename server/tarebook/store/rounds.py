"""The daily round: what is kept is looked at, so that what goes bad in silence is found while it can be healed.

On a day with something new a backup is made, which reads everything. On any other day the database's pages and every
photo are looked at, and the backup that has all there is is proven again. Either way `house.proven_at` says when.
"""

from contextlib import suppress
from datetime import datetime
from pathlib import Path

from tarebook.errors import TarebookError
from tarebook.settings import Settings
from tarebook.store import house, photo_copies
from tarebook.store.backup import State, back_up_daily, contents, is_due, passing_folder, state_of, troubles
from tarebook.store.backup_file import opened, verify
from tarebook.store.database import Database
from tarebook.store.kept import backups_in
from tarebook.store.log import note


def make_round(settings: Settings, database: Database, now: datetime) -> Path | None:
    """The backup that was made or proven; None when this day has had its round, or there is nothing to lose yet.

    Raises `database_damaged`, and what making a backup raises.
    """
    if is_due(settings, database, now):
        return back_up_daily(settings, database, now).file
    state = contents(database)
    if _had_today(database, now) or not any(number for number, _mark in state[0].values()):
        return None
    database.check_pages()
    for sha256 in sorted(state[1]):
        photo_copies.healed(settings.data, settings.backups, sha256)
    proven = _proven_again(settings, state) or back_up_daily(settings, database, now).file
    with database.write() as session:
        house.keep_proven(session, now.isoformat(timespec="milliseconds"))
    note(settings.data, "round", photos=len(state[1]))
    return proven


def _had_today(database: Database, now: datetime) -> bool:
    with database.read() as session:
        last = house.proven_at(session)
    return last is not None and datetime.fromisoformat(last).date() == now.date()


def _proven_again(settings: Settings, state: State) -> Path | None:
    """The newest of the kept backups that has all there is and proves whole."""
    for file in backups_in(settings.backups):
        if state_of(file, settings.data) == state:
            with suppress(TarebookError):
                return _proven(file)
    return None


def _proven(file: Path) -> Path:
    with troubles(file), passing_folder(file.parent) as scratch, opened(file) as backup:
        verify(backup, scratch).close()
    return file
