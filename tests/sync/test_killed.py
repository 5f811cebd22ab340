"""A server killed in the middle, again and again: what it had answered is there, and nothing is half there.

`--kills 500` is the stated size; `python -m tests.fuzz --only kills` kills photos, backups and restores at any step.
"""

from __future__ import annotations

import random
import sqlite3
import subprocess
import sys
import time
from pathlib import Path

import pytest

from tarebook.settings import Settings
from tarebook.store import garages
from tarebook.store.migrate import prepare
from tarebook.store.rebuild import rebuild
from tests.machine import ROOT

PUSHER = """
import sys
from pathlib import Path
from tarebook.garage import intake
from tarebook.garage.author import new_id
from tarebook.settings import Settings
from tarebook.store import garages
from tarebook.store.migrate import prepare
from tests.home import entry

database = prepare(Settings(data=Path(sys.argv[1])))
with database.write() as session:
    garage = garages.open_or_create(session).id
while True:
    texts = [entry(new_id(), {"name": "x"}, id=new_id(), device="home") for _ in range(20)]
    with database.write() as session:
        head = intake.push(session, garage, "home", texts).head
    print(head, flush=True)
"""


def killed_after(folder: Path, seconds: float) -> int:
    """Pushes until it is killed that long after its first answer; the last number it answered."""
    command = [sys.executable, "-c", PUSHER, str(folder)]
    path = f"{ROOT / 'server'}:{ROOT}"
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True, env={"PYTHONPATH": path}, cwd=ROOT) as pusher:
        assert pusher.stdout is not None
        lines = [pusher.stdout.readline()]
        time.sleep(seconds)
        pusher.kill()
        lines += pusher.stdout.readlines()
    return int([line for line in lines if line.endswith("\n")][-1])


def test_what_was_answered_is_there_and_nothing_is_half_there(tmp_path: Path, request: pytest.FixtureRequest) -> None:
    moment = random.Random(1)
    for _ in range(request.config.getoption("--kills")):
        answered = killed_after(tmp_path, moment.random() / 4)
        with sqlite3.connect(tmp_path / "tarebook.sqlite3") as plain:
            assert plain.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        database = prepare(Settings(data=tmp_path))
        with database.write() as session:
            garage = garages.open_or_create(session)
            again = rebuild(session, garage.id)
        assert garage.head >= answered
        assert (again.entries, again.changed) == (garage.head, 0)
        assert garage.head % 20 == 0
        database.close()
