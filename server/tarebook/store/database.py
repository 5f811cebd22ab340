"""The database: SQLite in the data folder, or PostgreSQL by `DATABASE_URL`.

Reading and writing are two doors. `write` takes the write lock at once (`BEGIN IMMEDIATE`): a SQLite transaction
that first reads and then writes can fail half-way under load, and a retry is not always possible. A transaction is
on the disk when its block ends (`synchronous=FULL`); what fails leaves nothing behind.
"""

import shutil
import sqlite3
import tempfile
import threading
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path
from typing import Any
from urllib.parse import quote

from flask import Flask
from sqlalchemy import Connection, Engine, event, text
from sqlalchemy.exc import DBAPIError, SQLAlchemyError
from sqlalchemy.orm import Session

from tarebook.errors import TarebookError
from tarebook.settings import Settings
from tarebook.store.files import disk_trouble, try_folder
from tarebook.store.models import db

LOCK_WAIT_SECONDS = 15
_FULL = {sqlite3.SQLITE_FULL}
_BUSY = {sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED}
_UNWELL = {sqlite3.SQLITE_IOERR, sqlite3.SQLITE_READONLY, sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_PERM}
_DAMAGED = {sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB}
_PG_FULL, _PG_BUSY = ("53100",), ("40001", "40P01", "55P03", "53300")


class Database:
    """An engine and its two doors. Make it with `prepare` (serving) or directly once the tables are there.

    `app`: the web application it belongs to; a command line has none and gets one without routes.
    """

    def __init__(self, address: str, app: Flask | None = None) -> None:
        self.engine = _engine(address, app or Flask("tarebook.store"))
        self.name = self.engine.url.database or address
        self._turn = threading.Lock()

    @contextmanager
    def read(self) -> Iterator[Session]:
        """A session over one unchanging view of the tables."""
        with self._translated(), Session(self.engine) as session:
            if not self.is_sqlite:
                session.connection(execution_options={"isolation_level": "REPEATABLE READ"})
            yield session

    @contextmanager
    def write(self) -> Iterator[Session]:
        """A session that holds the write lock, commits at the end, and rolls back on any exception."""
        with self._in_turn(), self._translated(), Session(self.engine, expire_on_commit=False) as session:
            session.connection(execution_options={"tarebook_write": True})
            yield session
            session.commit()

    @contextmanager
    def _in_turn(self) -> Iterator[None]:
        """SQLite takes one writer and lets others poll for the lock, by chance; waiting in line here is fairer."""
        if not self.is_sqlite:
            yield
        elif self._turn.acquire(timeout=LOCK_WAIT_SECONDS):
            try:
                yield
            finally:
                self._turn.release()
        else:
            raise TarebookError("busy")

    @contextmanager
    def _translated(self) -> Iterator[None]:
        """Turns the database's and the disk's own troubles into refusals of the error table."""
        try:
            yield
        except DBAPIError as problem:
            code = refusal(problem)
            if code is None:
                raise
            if code == "store_unwell":
                self._name_the_cause()
            raise TarebookError(code, file=self.name, reason=str(problem.orig).splitlines()[0]) from problem
        except UnicodeDecodeError as problem:
            raise TarebookError("database_damaged", file=self.name, reason="a text in it is none") from problem

    def _name_the_cause(self) -> None:
        """SQLite says less than the disk: a file that is tried there tells more."""
        try:
            try_folder(Path(self.name).parent)
        except OSError as problem:
            raise disk_trouble(problem) from problem

    @property
    def is_sqlite(self) -> bool:
        return self.engine.dialect.name == "sqlite"

    def check_pages(self) -> None:
        """Raises `database_damaged` when SQLite finds its file unsound. A tenth of a second for 100,000 entries."""
        if not self.is_sqlite:
            return
        with self.read() as session:
            found = session.scalar(text("PRAGMA quick_check(1)"))
        if found != "ok":
            raise TarebookError("database_damaged", file=self.name, reason=str(found).splitlines()[-1])

    def close(self) -> None:
        self.engine.dispose()


def _engine(address: str, app: Flask) -> Engine:
    app.config["SQLALCHEMY_DATABASE_URI"] = address
    app.config["SQLALCHEMY_ENGINE_OPTIONS"] = {"pool_pre_ping": not address.startswith("sqlite")}
    try:
        db.init_app(app)
        with app.app_context():
            engine = db.engine
    except (SQLAlchemyError, ImportError, ValueError) as problem:
        raise TarebookError("database_unreachable", reason=str(problem).splitlines()[0]) from problem
    if engine.dialect.name == "sqlite":
        event.listen(engine, "connect", _on_connect)
        event.listen(engine, "begin", _on_begin)
        event.listen(engine, "checkin", _on_checkin)
    return engine


def _on_connect(connection: Any, _record: Any) -> None:
    connection.isolation_level = None  # the driver must not begin transactions of its own
    for pragma in (
        f"busy_timeout={LOCK_WAIT_SECONDS * 1000}",
        "journal_mode=WAL",
        "synchronous=FULL",
        "foreign_keys=ON",
    ):
        connection.execute(f"PRAGMA {pragma}")


def _on_begin(connection: Connection) -> None:
    write = connection.get_execution_options().get("tarebook_write")
    connection.exec_driver_sql("BEGIN IMMEDIATE" if write else "BEGIN")


def _on_checkin(connection: Any, _record: Any) -> None:
    """A COMMIT that failed may leave its transaction open (SQLite, "Response To Errors Within A Transaction"), which
    SQLAlchemy takes for ended: nobody after it could begin one."""
    if connection is not None and connection.in_transaction:
        connection.rollback()


def refusal(problem: DBAPIError) -> str | None:
    """The code for a database error that is nobody's mistake in this program; None for any other."""
    number = getattr(problem.orig, "sqlite_errorcode", None)
    kind = number & 0xFF if isinstance(number, int) else None  # the rest of the number tells variants apart
    state = getattr(problem.orig, "sqlstate", None)
    if kind in _FULL or state in _PG_FULL:
        return "disk_full"
    if kind in _BUSY or state in _PG_BUSY:
        return "busy"
    if kind in _UNWELL:
        return "store_unwell"
    if kind in _DAMAGED:
        return "database_damaged"
    lost = problem.connection_invalidated or (state is None and kind is None and _is_operational(problem))
    return "database_unreachable" if lost else None


def _is_operational(problem: DBAPIError) -> bool:
    return type(problem).__name__ == "OperationalError"


def in_memory(file: Path) -> Database:
    """A copy of a SQLite database in memory, made without writing anything beside its file."""
    copy = Database("sqlite://")
    with copy.engine.connect() as connection:
        driver = connection.connection.driver_connection
        assert isinstance(driver, sqlite3.Connection)
        try:
            _copy_anyhow(file, driver)
        except sqlite3.DatabaseError as problem:
            raise TarebookError("database_damaged", file=str(file), reason=str(problem)) from problem
    copy.name = str(file)
    return copy


def _copy_anyhow(file: Path, into: sqlite3.Connection) -> None:
    try:
        _copy(file, "mode=ro", into)  # beside a running server, or what a killed one left
    except sqlite3.OperationalError:
        _copy_alone(file, into)


def _copy(file: Path, how: str, into: sqlite3.Connection) -> None:
    with closing(sqlite3.connect(f"file:{quote(str(file))}?{how}", uri=True)) as source:
        source.backup(into)


def _copy_alone(file: Path, into: sqlite3.Connection) -> None:
    """Nobody has it open, and there is no room for the index that SQLite puts beside a log of changes."""
    log = file.with_name(f"{file.name}-wal")
    if not log.exists() or log.stat().st_size == 0:
        return _copy(file, "mode=ro&immutable=1", into)
    with tempfile.TemporaryDirectory() as elsewhere:
        for one in (file, log):
            shutil.copy(one, elsewhere)
        _copy(Path(elsewhere) / file.name, "mode=rw", into)


def settings_database(settings: Settings) -> Database:
    """The database the settings name, as it is. Raises `garage_missing` when a SQLite file is not there yet."""
    if not settings.database_url and not (settings.data / "tarebook.sqlite3").exists():
        raise TarebookError("garage_missing", folder=str(settings.data))
    return Database(settings.database)
