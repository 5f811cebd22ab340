"""The home computer of a world: the real application on SQLite in memory, and everything that can happen to its disk.

The application is built once; what a world changes is the folder behind it. The tables of a new database are copied
from one that was migrated, as the migrations are not what is looked at here.
"""

from __future__ import annotations

import errno
import shutil
import sqlite3
import sys
import tempfile
from collections.abc import Iterator
from contextlib import ExitStack, closing, contextmanager
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import Any, NamedTuple
from unittest.mock import patch
from urllib.parse import unquote

from flask import Flask, Response
from sqlalchemy import Engine, create_engine, event, inspect
from sqlalchemy.pool import QueuePool

from tarebook import create_app
from tarebook.api.services import NAME, Services
from tarebook.devices.allowance import Allowance
from tarebook.devices.tries import Tries
from tarebook.garage.records import all_texts
from tarebook.importing.rescue import rescue
from tarebook.settings import Settings
from tarebook.store import backup, backup_file, database, files, garages, migrate, photos, restore, snapshot
from tarebook.store.database import Database
from tarebook.store.rebuild import rebuild

MEMORY = "/dev/shm" if Path("/dev/shm").is_dir() else None
_MIGRATE = migrate.migrate
_ENVIRON = {
    "SERVER_NAME": "localhost", "SERVER_PORT": "80", "SERVER_PROTOCOL": "HTTP/1.1", "HTTP_HOST": "localhost",
    "REMOTE_ADDR": "127.0.0.1", "SCRIPT_NAME": "", "wsgi.version": (1, 0), "wsgi.url_scheme": "http",
    "wsgi.multithread": False, "wsgi.multiprocess": False, "wsgi.run_once": False,
}  # fmt: skip
_WRITING = ("INSERT", "UPDATE", "DELETE", "BEGIN IMMEDIATE")


class Answer(NamedTuple):
    status: int
    headers: dict[str, str]
    body: str


class PulledPlugError(RuntimeError):
    """The server ended in the middle of something."""


@cache
def _application() -> tuple[Flask, list[str]]:
    """The application, and what makes the tables of an empty database."""
    with tempfile.TemporaryDirectory(dir=MEMORY) as folder:
        settings = Settings(data=Path(folder), static_app=Path(folder))
        with closing(Database(settings.database)) as database:
            _MIGRATE(database)
        with closing(sqlite3.connect(Path(folder) / "tarebook.sqlite3")) as made:
            return create_app(settings), list(made.iterdump())


def _migrate(database: Database) -> None:
    """As the migrations would: their outcome, or nothing where they have run."""
    with database.write() as session:
        if not inspect(session.connection()).has_table("alembic_version"):
            for statement in _application()[1]:
                if statement not in ("BEGIN TRANSACTION;", "COMMIT;"):
                    session.connection().exec_driver_sql(statement)


@contextmanager
def migrated_quickly() -> Iterator[None]:
    with ExitStack() as patched:
        for module in (migrate, snapshot, backup_file, restore):
            patched.enter_context(patch.object(module, "migrate", _migrate))
        patched.enter_context(patch.object(database, "_engine", _engine))
        yield


def _engine(address: str, _app: Flask) -> Engine:
    """As the program's own, but what one engine has learned of statements all others know."""
    engine = create_engine(address, poolclass=QueuePool)
    event.listen(engine, "connect", database._on_connect)
    event.listen(engine, "begin", database._on_begin)
    event.listen(engine, "checkin", database._on_checkin)
    shared = _first_engine()
    engine.dialect, engine._compiled_cache = shared.dialect, shared._compiled_cache
    return engine


@cache
def _first_engine() -> Engine:
    engine = create_engine("sqlite://", query_cache_size=5000)
    engine.connect().close()
    dialect, commit = engine.dialect, engine.dialect.do_commit
    event.listen(engine, "do_execute", _before_a_write)
    event.listen(engine, "do_executemany", _before_a_write)

    def do_commit(connection: Any) -> None:
        DISK.write()
        commit(connection)

    dialect.do_commit = do_commit  # type: ignore[assignment,method-assign]
    return engine


def _before_a_write(_cursor: Any, statement: str, _parameters: Any, _context: Any) -> None:
    if statement.startswith(_WRITING):
        DISK.write()


class Disk:
    """The disk under the server. `after`: so many writes still go well; then each fails as `how` says."""

    def __init__(self) -> None:
        self.how: str | None = None
        self.after = 0
        self.struck = False

    def write(self) -> None:
        if self.how is None:
            return
        self.after -= 1
        if self.after >= 0:
            return
        self.struck = True
        if self.how == "crash":
            raise PulledPlugError
        raise _sqlite(*_TROUBLES[self.how])

    def write_file(self, *_given: Any) -> None:
        try:
            self.write()
        except sqlite3.Error as trouble:
            raise OSError(errno.ENOSPC if self.how == "full" else errno.EIO, "no") from trouble

    def well(self) -> None:
        self.how, self.after, self.struck = None, 0, False


_TROUBLES = {
    "full": (sqlite3.SQLITE_FULL, "database or disk is full"),
    "failing": (sqlite3.SQLITE_IOERR, "disk I/O error"),
    "readonly": (sqlite3.SQLITE_READONLY, "attempt to write a readonly database"),
}


def _sqlite(code: int, words: str) -> sqlite3.OperationalError:
    trouble = sqlite3.OperationalError(words)
    trouble.sqlite_errorcode = code
    return trouble


DISK = Disk()
"""The one disk of whatever server there is: every write, and every end of a transaction, first asks it."""


class Server:
    """One home computer. `folder` changes when it is replaced by another."""

    def __init__(self, root: Path) -> None:
        self.root = root
        self.count = 0
        self.beside: sqlite3.Connection | None = None
        self.seen = -1
        self.disk = DISK
        self.disk.well()
        self.app = _application()[0]
        self.new_computer()
        self.start()
        with self.database.write() as session:
            self.garage = garages.open_or_create(session).id

    def new_computer(self) -> None:
        self.count += 1
        folder = self.root / f"home-{self.count}"
        self.settings = Settings(data=folder, static_app=folder)

    def start(self) -> None:
        """As `serve` does first: the tables are those of this program."""
        self.database = migrate.prepare(self.settings)
        self.photos = photos.Photos(self.settings, self.database)
        self.app.extensions[NAME] = Services(self.settings, self.database, self.photos, Tries(), Allowance(10**9))

    def stop(self) -> None:
        if self.beside is not None:
            self.beside.close()
        self.beside, self.seen = None, -1
        self.database.close()

    def restart(self) -> None:
        self.disk.well()
        self.stop()
        self.start()

    @contextmanager
    def failing_files(self) -> Iterator[None]:
        """Photos are written past the database, to the same disk."""
        if self.disk.how is None:
            yield
            return
        write, disk = files.write_all, self.disk

        def write_all(*given: Any) -> None:
            disk.write_file()
            write(*given)

        with patch.object(photos, "write_all", write_all), patch.object(photos, "fsync", disk.write_file):
            yield

    def request(self, method: str, path: str, headers: dict[str, str], data: bytes | None) -> Answer:
        """By WSGI itself (PEP 3333): a client for tests costs more than most answers."""
        name, _, query = path.partition("?")
        environ = {
            **_ENVIRON, "REQUEST_METHOD": method, "PATH_INFO": unquote(name), "QUERY_STRING": query,
            "wsgi.input": BytesIO(data or b""), "wsgi.errors": sys.stderr, "CONTENT_LENGTH": str(len(data or b"")),
        }  # fmt: skip
        for header, value in headers.items():
            header = header.upper().replace("-", "_")
            environ["CONTENT_TYPE" if header == "CONTENT_TYPE" else f"HTTP_{header}"] = value
        with self.failing_files():
            answer = Response.from_app(self.app, environ, buffered=True)
        return Answer(answer.status_code, dict(answer.headers), answer.get_data(as_text=True))

    def back_up(self, file: Path) -> None:
        with self.failing_files():
            backup.back_up_to(self.settings, self.database, file)

    def restore(self, file: Path, elsewhere: bool, choose: restore.Choose) -> None:
        self.stop()
        if elsewhere:
            self.new_computer()
        restore.restore(self.settings, file, choose)
        self.restart()

    def copy_files(self, to: Path) -> None:
        """What somebody copies who knows of no backup: the folder as it is, while nobody writes."""
        self.stop()
        shutil.copytree(self.settings.data, to)
        self.start()

    def put_files_back(self, copy: Path) -> None:
        self.stop()
        shutil.rmtree(self.settings.data)
        shutil.copytree(copy, self.settings.data)
        self.restart()

    def take_in(self, file: Path) -> None:
        rescue(self.database, self.garage, self.photos, file, False, lambda _bad: None)

    def another_garages(self, file: Path) -> set[str]:
        """The texts that a garage of nothing else has once it has taken the file in."""
        folder = file.with_suffix("")
        settings = Settings(data=folder, static_app=folder)
        with closing(migrate.prepare(settings)) as database:
            with database.write() as session:
                garage = garages.open_or_create(session).id
            rescue(database, garage, photos.Photos(settings, database), file, True, lambda _bad: None)
            with database.read() as session:
                texts = set(all_texts(session, garage))
        shutil.rmtree(folder)
        return texts

    def rebuild(self) -> int:
        with self.database.write() as session:
            return rebuild(session, self.garage).changed

    def has_changed(self) -> bool:
        """Whether anybody has written since this was last asked."""
        before = self.seen
        self.seen = self.rows("pragma data_version")[0][0]
        return self.seen != before

    def rows(self, query: str) -> list[tuple[Any, ...]]:
        """Read past the program."""
        if self.beside is None:
            self.beside = sqlite3.connect(self.settings.data / "tarebook.sqlite3")
        return self.beside.execute(query).fetchall()
