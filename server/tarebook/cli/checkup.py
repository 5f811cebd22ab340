"""What `tarebook doctor` looks at. Nothing is changed and no server beside it waits: the database is looked at, and
folded again, in a copy in memory.

A check gives what it found in a few words, or raises the row of the error table that says what to do.
"""

from __future__ import annotations

import shutil
import stat
import tempfile
from collections.abc import Callable, Iterator
from contextlib import ExitStack
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from functools import cached_property
from pathlib import Path
from urllib.parse import urlsplit

from sqlalchemy import func, select, text

from tarebook.devices import authority, certificates
from tarebook.errors import TarebookError
from tarebook.settings import Settings
from tarebook.store import house, photo_copies
from tarebook.store.backup_file import opened, photo_name
from tarebook.store.database import Database, in_memory
from tarebook.store.journal_rows import check_marks
from tarebook.store.kept import backups_in
from tarebook.store.migrate import make_folder, migrate
from tarebook.store.models import EntryRow, GarageRow, PhotoRow
from tarebook.store.rebuild import rebuild, rules
from tarebook.store.snapshot import snapshot

_PROVEN_EVERY = timedelta(days=2)
_A_DAY = timedelta(days=1)
_OTHERS = stat.S_IRWXG | stat.S_IRWXO


@dataclass(frozen=True)
class Finding:
    """`said`: what was found when all is well; else `trouble`."""

    about: str
    said: str = ""
    trouble: TarebookError | None = None


class Patient:
    """One data folder, looked at once."""

    def __init__(self, settings: Settings, now: datetime) -> None:
        self.settings, self.now = settings, now
        self.open = ExitStack()

    @cached_property
    def database(self) -> Database:
        """A copy, sound in its pages and brought up to this program."""
        copy = self._copy()
        self.open.callback(copy.close)
        copy.check_pages()
        with copy.read() as session:
            dangling = len(session.execute(text("PRAGMA foreign_key_check")).all())
        if dangling:
            reason = f"{dangling} rows speak of others that are not there"
            raise TarebookError("database_damaged", file=copy.name, reason=reason)
        migrate(copy)
        return copy

    def _copy(self) -> Database:
        if not self.settings.database_url:
            return in_memory(self.settings.data / "tarebook.sqlite3")
        folder = Path(self.open.enter_context(tempfile.TemporaryDirectory()))
        return self.open.enter_context(snapshot(Database(self.settings.database), folder / "copy.sqlite3"))


def look(settings: Settings, now: datetime) -> Iterator[Finding]:
    """Every check in turn. Those that need the database say only once what is wrong with it."""
    patient = Patient(settings, now)
    with patient.open:
        known: str | None = None
        for about, check in CHECKS.items():
            try:
                yield Finding(about, check(patient))
            except TarebookError as problem:
                if str(problem) != known:
                    yield Finding(about, trouble=problem)
                known = known or str(problem)


def _database(patient: Patient) -> str:
    with patient.database.read() as session:
        entries = session.scalar(select(func.count()).select_from(EntryRow))
    return f"sound, {entries} entries"


def _journal(patient: Patient) -> str:
    with patient.database.write() as session:
        check_marks(session, patient.database.name)
        for garage in session.scalars(select(GarageRow)).all():
            by_these_rules = garage.folded_by == rules()
            changed = rebuild(session, garage.id).changed
            if changed and by_these_rules:
                raise TarebookError("tables_differ", changed=changed)
    return "unbroken, and makes the tables there are"


def _photos(patient: Patient) -> str:
    with patient.database.read() as session:
        known = sorted(set(session.scalars(select(PhotoRow.sha256))))
    data = patient.settings.data
    bad = [sha256 for sha256 in known if photo_copies.whole(data / photo_name(sha256), sha256) is None]
    if bad:
        raise TarebookError("photos_damaged", bad=len(bad), known=len(known))
    return f"all {len(known)} whole"


def _disk(patient: Patient) -> str:
    make_folder(patient.settings.data)
    free = shutil.disk_usage(patient.settings.data).free
    if free < patient.settings.reserve_bytes:
        raise TarebookError("disk_low", free=free // 1_000_000, folder=str(patient.settings.data))
    return f"{free / 1e9:.1f} GB free"


def _certificate(patient: Patient) -> str:
    folder = patient.settings.certificates
    with patient.database.read() as session:
        origin = house.origin(session)
    if origin is None or not (folder / certificates.SERVER).exists():
        return "none made here"
    name = urlsplit(origin).hostname or ""
    authority.load(folder).check(name, patient.now)
    ends = certificates.check(certificates.own_pair(folder), name, patient.now).not_valid_after_utc
    return f"good for {(ends - patient.now).days} days, and renewed by itself"


def _clock(patient: Patient) -> str:
    certificates.check_clock(patient.now)
    with patient.database.read() as session:
        last = session.scalar(select(func.max(EntryRow.received_at)))
    seen = {"an entry": datetime.fromisoformat(last)} if last else {}
    made = backups_in(patient.settings.backups)
    seen |= {"a backup": max(made.values())} if made else {}
    for what, moment in seen.items():
        if moment > patient.now + _A_DAY:
            raise TarebookError("clock_behind", now=_day(patient.now), what=what, then=_day(moment))
    return f"{_day(patient.now)}, after all that is written down"


def _backups(patient: Patient) -> str:
    with patient.database.read() as session:
        proven = house.proven_at(session)
        head = session.scalar(select(func.max(GarageRow.head)))
    if not head:
        return "nothing to back up yet"
    if proven is None:
        raise TarebookError("backup_none")
    if patient.now - datetime.fromisoformat(proven) > _PROVEN_EVERY:
        raise TarebookError("backup_old", when=proven[:10])
    kept = backups_in(patient.settings.backups)
    for file in kept:
        with opened(file):
            pass
    return f"the last one proven on {proven[:16].replace('T', ' ')} UTC, {len(kept)} kept"


def _permissions(patient: Patient) -> str:
    data = patient.settings.data
    ours = [data / "tarebook.sqlite3", patient.settings.photos, patient.settings.certificates, patient.settings.backups]
    for path in ours:
        inside = path.is_relative_to(data)
        if path.exists() and _open(path) and (_open(data) or not inside):
            raise TarebookError("open_to_others", file=str(path))
    return "nobody else can read it"


def _open(path: Path) -> bool:
    return bool(path.stat().st_mode & _OTHERS)


def _day(moment: datetime) -> str:
    return moment.astimezone(UTC).strftime("%Y-%m-%d %H:%M UTC")


CHECKS: dict[str, Callable[[Patient], str]] = {
    "database": _database, "journal": _journal, "photos": _photos, "disk": _disk, "certificate": _certificate,
    "clock": _clock, "backups": _backups, "permissions": _permissions,
}  # fmt: skip
