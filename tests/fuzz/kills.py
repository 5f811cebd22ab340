"""The server's work killed at any step: pushes, photos, backups, restores. What was answered is there, nothing is half.

A child of this process does the work and is ended by SIGKILL at a step: before a file is opened for writing, renamed,
removed, made or brought to the disk, before and after a transaction is committed, or at any moment at all.
"""

from __future__ import annotations

import copy
import hashlib
import os
import signal
import sqlite3
import sys
import tempfile
import traceback
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from contextlib import closing, contextmanager
from datetime import UTC, datetime
from functools import partial
from pathlib import Path
from random import Random
from threading import Timer
from typing import Any

from sqlalchemy import event
from sqlalchemy.engine import Engine

from tarebook.store.backup import back_up_daily, back_up_to
from tarebook.store.backup_file import opened as opened_backup
from tarebook.store.backup_file import verify
from tarebook.store.kept import backups_in
from tarebook.store.rebuild import rebuild
from tarebook.store.restore import restore
from tests.fuzz.kind import Case
from tests.home import Device, Home, entry, id_of
from tests.photos import picture, send_photo, sha

STEPS = {"os.rename", "os.remove", "os.mkdir", "os.rmdir", "os.truncate", "shutil.copyfile", "open"}
LIKELY = {"": 40, "os.rename": 3, "os.fsync": 6, "commit": 6}  # so many steps of that name a child takes, about
WORDS = ("push", "photo", "backup", "daily", "restore")
NOON = datetime(2026, 5, 2, 12, tzinfo=UTC)


def kill_at(step: int, only: str, tell: Callable[[str], None]) -> None:
    """This process ends at its step-th step from now on; with `only` just those of that name count."""
    left = [step]

    def met(name: str) -> None:
        left[0] -= only in ("", name)
        if left[0] == 0:
            tell(f"at {name}")
            os.kill(os.getpid(), signal.SIGKILL)

    def heard(name: str, given: tuple[Any, ...]) -> None:
        if name in STEPS and (name != "open" or (isinstance(given[2], int) and given[2] & (os.O_WRONLY | os.O_RDWR))):
            met(name)

    plain_fsync = os.fsync

    def fsync(fd: Any) -> None:
        met("os.fsync")
        plain_fsync(fd)

    os.fsync = fsync
    sys.addaudithook(heard)
    event.listen(Engine, "commit", lambda _connection: met("commit"))
    event.listen(Engine, "begin", lambda _connection: met("begin"))


class Garage:
    """A folder with a garage, and what its server has answered; it is opened anew in every child.

    `words`: what the children do. `address`: of a database elsewhere, with nothing else in it.
    """

    def __init__(self, folder: Path, words: Sequence[str] = WORDS, address: str = "") -> None:
        self.folder, self.words, self.address = folder, words, address
        home = self.opened()
        self.phone = home.pair()
        self.texts: dict[str, str] = {}
        self.photos: set[str] = set()
        self.push(self.phone, "e-0", self.answered)
        back_up_to(home.settings, home.database, folder / "good.zip")
        self.restored = dict(self.texts)
        self.unsure = False
        home.close()

    def opened(self) -> Home:
        return Home(self.folder / "data", database_url=self.address)

    def answered(self, word: str) -> None:
        """Hears a line of what the child was answered. While a backup is being put back, either garage may be there."""
        what, _, rest = word.partition(" ")
        self.unsure = what == "restoring" or (what == "at" and self.unsure)
        if what == "text":
            self.texts[id_of(rest)] = rest
        elif what == "photo":
            self.photos.add(rest)
        elif what == "restored":
            self.texts, self.photos = dict(self.restored), set()

    @staticmethod
    def push(phone: Device, name: str, tell: Callable[[str], None]) -> None:
        texts = [entry(f"{name}-{n}", {"name": "x"}, id=f"{name}-{n}", device=phone.id) for n in range(5)]
        assert phone.push(*texts).status_code == 200
        for text in texts:
            tell(f"text {text}")

    def work(self, random: Random, tell: Callable[[str], None]) -> None:
        """What the child does: a little of everything, each answer told only after it was given."""
        only = random.choice(list(LIKELY))
        kill_at(random.randrange(1, LIKELY[only]), only, tell)
        kinds = random.sample(self.words, 3)
        home = self.opened()
        phone = copy.copy(self.phone)
        phone.client = home.client
        for number, kind in enumerate(kinds):
            name = f"e-{random.randrange(10**12)}-{number}"
            if kind == "push":
                self.push(phone, name, tell)
            elif kind == "photo":
                data = picture(random.randrange(10**9), (40, 30))
                send_photo(phone, data)
                tell(f"photo {sha(data)}")
            elif kind == "backup":
                back_up_to(home.settings, home.database, self.folder / "new.zip")
            elif kind == "daily":
                back_up_daily(home.settings, home.database, NOON)
            else:
                home.close()
                tell("restoring")
                restore(home.settings, self.folder / "good.zip")
                tell("restored")
                home.open()
        tell("done")

    def check(self) -> None:
        """What was answered is there byte for byte, no batch is half there, and every photo and backup proves whole."""
        if not self.address:
            with closing(sqlite3.connect(self.folder / "data" / "tarebook.sqlite3")) as plain:
                assert plain.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        home = self.opened()
        with home.database.write() as session:
            assert rebuild(session, home.garage).changed == 0
            texts: dict[str, bytes] = dict(
                session.connection().exec_driver_sql("SELECT id, text FROM entry").fetchall()
            )
            photos = set(session.connection().exec_driver_sql("SELECT sha256 FROM photo").scalars())
            figures = set(session.connection().exec_driver_sql("SELECT id FROM record").scalars())
        here = {name: text.decode() for name, text in texts.items()}
        if self.unsure and (self.texts.keys() - here.keys() or self.photos - photos):
            self.answered("restored")
        assert {name: here.get(name) for name in self.texts} == self.texts
        assert self.texts.keys() <= figures  # each text is a job of the same name
        assert set(Counter(name.rsplit("-", 1)[0] for name in here).values()) <= {5}
        assert self.photos <= photos
        for name in photos:
            kept = (home.settings.photos / name[:2] / name).read_bytes()
            assert hashlib.sha256(kept).hexdigest() == name
        self.prove_backups(home)
        home.close()

    def prove_backups(self, home: Home) -> None:
        files = [*backups_in(home.settings.backups), *self.folder.glob("*.zip")]
        for file in files:
            with tempfile.TemporaryDirectory() as scratch, opened_backup(file) as backup:
                verify(backup, Path(scratch)).close()


def killed(garage: Garage, random: Random) -> str:
    """Lets a child work until it is killed, and hears what it was answered. Gives where it ended."""
    listen, say = os.pipe()
    child = os.fork()
    if child == 0:
        try:
            garage.work(random, partial(print, file=os.fdopen(say, "w", buffering=1, encoding="utf-8", closefd=False)))
        except BaseException:
            os.write(say, f"broken {traceback.format_exc()!r}\n".encode())
        finally:
            os._exit(0)
    os.close(say)
    late = Timer(random.random() * 0.5, os.kill, (child, signal.SIGKILL)) if random.random() < 0.2 else None
    if late:
        late.start()
    with os.fdopen(listen, encoding="utf-8") as lines:
        said = [line.rstrip("\n") for line in lines if line.endswith("\n")]
    if late:
        late.cancel()
        late.join()
    os.waitpid(child, 0)
    for line in said:
        garage.answered(line)
    last = said[-1] if said else ""
    assert not last.startswith("broken "), last
    return last if last.startswith("at ") else "to the end" if last == "done" else "at any moment"


@contextmanager
def opened(folder: Path) -> Iterator[Case]:
    """A garage that is killed again and again; another when it has grown."""
    garages = [Garage(folder / "1")]

    def case(random: Random) -> str:
        if len(garages[-1].texts) > 400:
            garages.append(Garage(folder / str(len(garages) + 1)))
        where = killed(garages[-1], random)
        garages[-1].check()
        return where

    yield case
