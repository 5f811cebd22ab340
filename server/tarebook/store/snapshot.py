"""A garage database as one plain SQLite file, whichever database it came from, and back into either.

Rows are copied, not pages, all of them in one unchanging view of the source while others go on writing. So the copy
holds nothing that was deleted, SQLite and PostgreSQL come out alike, and what must not leave this computer is simply
never copied. Tokens are on no computer but the phone's; their hashes go along, or a restored garage would know nobody.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from sqlalchemy import Connection, insert, select

from tarebook.store.database import Database
from tarebook.store.migrate import migrate
from tarebook.store.models import db

NEVER_COPIED = {"pair_code", "pair_join", "upload"}
"""Secrets of the moment, and photos half on their way: phones begin those anew."""

_AT_ONCE = 1000


def copy_rows(source: Connection, target: Connection) -> None:
    """Every row of every table but `NEVER_COPIED` into the empty tables of `target`."""
    for table in db.metadata.sorted_tables:
        if table.name in NEVER_COPIED:
            continue
        rows = source.execute(select(table).execution_options(yield_per=_AT_ONCE))
        for some in rows.mappings().partitions(_AT_ONCE):
            target.execute(insert(table), [dict(row) for row in some])


@contextmanager
def snapshot(database: Database, file: Path) -> Iterator[Database]:
    """The database as it is now, in a new SQLite file; when the block ends that file is all there is of it."""
    file.touch(mode=0o600)
    copy = Database(f"sqlite:///{file.absolute()}")
    try:
        migrate(copy)
        with database.read() as source, copy.write() as target:
            copy_rows(source.connection(), target.connection())
        yield copy
        _make_single(copy)
    finally:
        copy.close()


def _make_single(database: Database) -> None:
    """Brings what stands in the log beside a SQLite database into its one file."""
    with database.engine.connect() as connection:
        driver = connection.connection.driver_connection
        if driver is not None:  # SQLAlchemy's own commands would begin a transaction, in which this is not done
            driver.execute("PRAGMA journal_mode=DELETE")
