"""Brings folder, database and fold up to this program, before anything is served."""

import sys
from pathlib import Path

from alembic import command
from alembic.config import Config
from alembic.script import ScriptDirectory
from sqlalchemy import inspect, select, text
from sqlalchemy.orm import Session

from tarebook.errors import TarebookError
from tarebook.settings import Settings
from tarebook.store.database import Database, in_memory
from tarebook.store.files import disk_trouble, make_private, try_folder
from tarebook.store.models import GarageRow
from tarebook.store.rebuild import rebuild, rules

_UNWRITABLE = {"disk_full": "folder_full", "disk_read_only": "folder_read_only"}
MIGRATIONS = Path(__file__).parent / "migrations"


def prepare(settings: Settings) -> Database:
    """Makes the folder, checks and migrates the database, and folds again every garage folded by other rules.

    Raises `folder_not_writable`, `database_newer`, `database_unreachable`, `database_damaged`.
    """
    make_folder(settings.data)
    make_folder(settings.photos)
    _keep_private(settings)
    return _brought_up(Database(settings.database))


def prepare_to_read(settings: Settings) -> Database:
    """As `prepare`; where the folder takes nothing, a copy in memory: full and locked disks must give everything out.

    What is changed in the copy is gone with it. The reason why it is one is said on stderr.
    """
    try:
        return prepare(settings)
    except TarebookError as problem:
        if settings.database_url or problem.code not in ("folder_full", "folder_read_only", "folder_not_writable"):
            raise
        print(f"tarebook: {problem.sentence} It is read from a copy in memory.", file=sys.stderr)
        return _brought_up(in_memory(settings.data / "tarebook.sqlite3"))


def _brought_up(database: Database) -> Database:
    database.check_pages()
    migrate(database)
    with database.write() as session:
        for garage in session.scalars(select(GarageRow.id).where(GarageRow.folded_by != rules())).all():
            rebuild(session, garage)
    return database


def _keep_private(settings: Settings) -> None:
    """The folder may be one that others read; what is ours in it is not. SQLite's logs are made like its file."""
    database = settings.data / "tarebook.sqlite3"
    if not settings.database_url:
        database.touch(mode=0o600)
    logs = [database.with_name(f"{database.name}{ending}") for ending in ("-wal", "-shm")]
    for path in (database, *logs, settings.photos, settings.backups, settings.certificates):
        if path.is_relative_to(settings.data):
            make_private(path)


def make_folder(folder: Path) -> None:
    """Makes a private folder and tries it by writing a file."""
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        try_folder(folder)
    except OSError as problem:
        code = _UNWRITABLE.get(disk_trouble(problem).code, "folder_not_writable")
        raise TarebookError(code, folder=str(folder), reason=problem.strerror or str(problem)) from problem


def migrate(database: Database, upto: str = "head") -> None:
    """Runs the migrations this database has not had yet, each in a transaction."""
    config = _config()
    with database.write() as session:
        _refuse_newer(session)
        config.attributes["connection"] = session.connection()
        command.upgrade(config, upto)


def revisions() -> list[str]:
    """The names of the migrations, the first one first."""
    scripts = ScriptDirectory.from_config(_config())
    return [script.revision for script in scripts.walk_revisions()][::-1]


def _config() -> Config:
    config = Config()
    config.set_main_option("script_location", str(MIGRATIONS).replace("%", "%%"))
    return config


def _refuse_newer(session: Session) -> None:
    if not inspect(session.connection()).has_table("alembic_version"):
        return
    if set(session.scalars(text("SELECT version_num FROM alembic_version"))) - set(revisions()):
        raise TarebookError("database_newer")
