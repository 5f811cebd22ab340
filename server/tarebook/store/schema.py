"""The shape of our database, as each of its migrations leaves it: a file from elsewhere is held against it, unread.

A trigger, a view in a table's place or a column that computes would act while its rows are looked at, so the list of
what is in the file comes first. The text that made each thing is compared, as only it tells of every condition.
"""

import re
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from functools import cache
from pathlib import Path
from urllib.parse import quote

from tarebook.errors import TarebookError
from tarebook.store.database import Database
from tarebook.store.migrate import migrate, revisions

Shape = frozenset[tuple[str, str, str, str]]
_MOST_THINGS = 1000
_MOST_LETTERS = 100_000
_LOOKS = re.compile(r'[\s"]+')


def check_shape(file: Path) -> None:
    """Raises ValueError for tables that no Tarebook makes, `database_newer` for those of a newer one."""
    with _unread(file) as connection:
        found = _shape(connection)
        if found in _known().values():
            return
        newer = [thing for thing in found if thing[1] == "alembic_version"]
        if set(newer) <= _known()[revisions()[-1]] and _revision(connection) not in revisions():
            raise TarebookError("database_newer")
    raise ValueError("its tables are not Tarebook's")


def _revision(connection: sqlite3.Connection) -> str | None:
    row = connection.execute("SELECT version_num FROM alembic_version").fetchone()
    return str(row[0]) if row else None


@contextmanager
def _unread(file: Path) -> Iterator[sqlite3.Connection]:
    with closing(sqlite3.connect(f"file:{quote(str(file))}?mode=ro&immutable=1", uri=True)) as connection:
        connection.setlimit(sqlite3.SQLITE_LIMIT_LENGTH, _MOST_LETTERS)
        connection.execute("PRAGMA trusted_schema=OFF")
        yield connection


def _shape(connection: sqlite3.Connection) -> Shape:
    listed = connection.execute("SELECT type, name, tbl_name, coalesce(sql, '') FROM sqlite_master")
    rows = listed.fetchmany(_MOST_THINGS)
    return frozenset((kind, name, table, _LOOKS.sub("", made).lower()) for kind, name, table, made in rows)


@cache
def _known() -> dict[str, Shape]:
    """Revision of the database -> what is in it then."""
    with closing(Database("sqlite://")) as fresh:
        return {revision: _after(fresh, revision) for revision in revisions()}


def _after(database: Database, revision: str) -> Shape:
    migrate(database, revision)
    with database.engine.connect() as connection:
        driver = connection.connection.driver_connection
        assert isinstance(driver, sqlite3.Connection)
        return _shape(driver)
