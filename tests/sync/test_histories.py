"""Random histories of several phones and one server: nothing called saved is lost, and all replicas agree.

Phones write, push, pull, crash and are cloned; the network loses requests and answers; the server fails half-way,
revokes devices, and is restored from older copies, announced or behind everybody's back. All begin as a program that
does not know a field which another's entries set, and may be upgraded. Then the network is quiet.
"""

from __future__ import annotations

import json
import shutil
import tempfile
from contextlib import ExitStack, suppress
from pathlib import Path
from typing import Any
from unittest.mock import patch

from hypothesis import HealthCheck, Phase, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, precondition, rule

from tarebook.garage.records import all_texts
from tarebook.store import garages
from tarebook.store.migrate import prepare
from tarebook.store.rebuild import refold
from tests.home import Home
from tests.journal.older import without
from tests.sync.model_phone import LostError, ModelPhone
from tests.sync.replicas import folded, server_state

FATES = st.sampled_from([(), (), ("request",), ("answer",), (None, "request"), (None, "answer")])
WHICH = st.integers(min_value=0, max_value=5)
RECORDS = st.sampled_from(["job-1", "job-2"])
FIELDS = st.dictionaries(st.sampled_from(["hours", "note"]), st.sampled_from(["1", "2", None]), min_size=1)
POISON = st.sampled_from(["{", '{"id":"poison"}', '["a list"]'])

# Thousands of flushes to a disk are not what is looked at here.
MEMORY = "/dev/shm" if Path("/dev/shm").is_dir() else None


class Garage(RuleBasedStateMachine):
    def __init__(self) -> None:
        super().__init__()
        self.older = ExitStack()
        self.older.enter_context(without({"job": ["note"]}))
        self.folder = Path(tempfile.mkdtemp(prefix="histories-", dir=MEMORY))
        self.home = Home(self.folder / "data")
        self.phones: list[ModelPhone] = []
        self.saved: list[str] = []
        self.copies: list[Path] = []
        self.sound: set[str] = set()  # names of entries that are invalid to no program

    @initialize(clocks=st.lists(st.sampled_from([2016, 2026, 2036]), min_size=2, max_size=3))
    def begin(self, clocks: list[int]) -> None:
        self.phones = [ModelPhone(self.home.pair(), clock=clock) for clock in clocks]
        for phone in self.phones:
            phone.pull()

    def phone(self, which: int) -> ModelPhone:
        return self.phones[which % len(self.phones)]

    @rule(which=WHICH, record=RECORDS, fields=FIELDS)
    def edit(self, which: int, record: str, fields: dict[str, Any]) -> None:
        text = self.phone(which).save("job", record, {"name": "Seats", **fields})
        self.saved.append(text)
        self.sound.add(json.loads(text)["id"])

    @rule()
    def upgrade(self) -> None:
        """All at once: what a replica holds does not depend on what it knows."""
        self.older.close()
        self.start_the_server()

    def start_the_server(self) -> None:
        """As `serve` does first: the tables are those of this program."""
        self.home.close()
        prepare(self.home.settings).close()

    @rule(which=WHICH, record=RECORDS, deleted=st.booleans())
    def delete(self, which: int, record: str, deleted: bool) -> None:
        phone = self.phone(which)
        if record in phone.fold().records:
            self.saved.append(phone.save("job", record, {"deleted": deleted}))

    @rule(which=WHICH, text=POISON, number=st.integers(0, 3))
    def save_poison(self, which: int, text: str, number: int) -> None:
        self.saved.append(self.phone(which).save_text(f"{text} {number}"))

    @rule(which=WHICH, record=RECORDS)
    def build_on_what_is_not_there_yet(self, which: int, record: str) -> None:
        self.saved.append(self.phone(which).save("job", record, {"name": "Seats", "note": "late"}, base=["late"]))

    @rule(which=WHICH, record=RECORDS)
    def save_under_a_name_another_may_have_used(self, which: int, record: str) -> None:
        self.saved.append(self.phone(which).save("job", record, {"name": "Seats", "hours": "9"}, id="late"))

    @rule(which=WHICH, take=st.booleans(), pick=WHICH)
    def judge(self, which: int, take: bool, pick: int) -> None:
        phone = self.phone(which)
        aside = sorted(phone.fold(with_pending=False).aside())
        if aside:
            fields = {"entry": aside[pick % len(aside)], "take": take}
            self.saved.append(phone.save("verdict", f"verdict-{len(self.saved)}", fields))

    @rule(which=WHICH, fates=FATES, most=st.sampled_from([1, 500]), copy_first=st.booleans())
    def push(self, which: int, fates: tuple[str | None, ...], most: int, copy_first: bool) -> None:
        if copy_first:
            self.copy_the_database()
        phone = self.phone(which)
        phone.network.drop = list(fates)
        with suppress(LostError):
            assert phone.push(most) in (200, 401, 403, 409)

    @rule(which=WHICH, fates=FATES, limit=st.sampled_from([1, 1000]))
    def pull(self, which: int, fates: tuple[str | None, ...], limit: int) -> None:
        phone = self.phone(which)
        phone.network.drop = list(fates)
        with suppress(LostError):
            assert phone.pull(limit) in (200, 401, 403, 409)

    @rule(which=WHICH)
    def sync(self, which: int) -> None:
        self.phone(which).sync(self.home)

    @rule(which=WHICH)
    def push_while_the_server_fails_half_way(self, which: int) -> None:
        phone = self.phone(which)
        phone.network.drop.clear()
        with patch("tarebook.garage.intake.write_waiting", side_effect=RuntimeError("pulled plug")):
            assert phone.push() in (401, 403, 409, 500)

    @rule(which=WHICH)
    def crash(self, which: int) -> None:
        self.phone(which).crash()

    @precondition(lambda self: len(self.phones) < 5)
    @rule(which=WHICH)
    def clone(self, which: int) -> None:
        self.phones.append(self.phone(which).clone())

    @rule(which=WHICH, by=WHICH)
    def revoke(self, which: int, by: int) -> None:
        answer = self.phone(by).device.post(f"/devices/{self.phone(which).device.id}/revoke")
        assert answer.status_code in (200, 401, 403, 404)

    def copy_the_database(self) -> None:
        copy = self.folder / f"copy-{len(self.copies)}"
        self.home.close()
        shutil.copytree(self.home.settings.data, copy)
        self.copies.append(copy)

    @precondition(lambda self: self.copies)
    @rule(back=st.integers(1, 3), announced=st.booleans())
    def restore(self, back: int, announced: bool) -> None:
        self.home.close()
        shutil.rmtree(self.home.settings.data)
        shutil.copytree(self.copies[-min(back, len(self.copies))], self.home.settings.data)
        self.start_the_server()
        if announced:
            with self.home.database.write() as session:
                garages.new_epoch(session, self.home.garage)

    def quieten(self) -> None:
        """Twice round: what the last phone sent, the first must still pull."""
        for phone in self.phones * 2:
            phone.sync(self.home)

    def teardown(self) -> None:
        try:
            self.quieten()
            self.check()
            self.upgrade()
            self.check()
        finally:
            self.older.close()
            shutil.rmtree(self.folder)

    def check(self) -> None:
        with self.home.database.read() as session:
            again = refold(session, self.home.garage)
            kept = set(all_texts(session, self.home.garage))
        assert set(self.saved) <= kept, "something called saved is gone"
        state = server_state(self.home)
        assert state == folded(again)
        assert not {name for name, reason in state["aside"].items() if reason == "invalid"} & self.sound
        for phone in self.phones:
            assert phone.pending == []
            assert folded(phone.fold()) == state


TestHistories = Garage.TestCase
TestHistories.settings = settings(
    max_examples=60,
    stateful_step_count=40,
    suppress_health_check=list(HealthCheck),
    phases=[Phase.explicit, Phase.reuse, Phase.generate],  # to shrink a failing history takes minutes: add Phase.shrink
)
