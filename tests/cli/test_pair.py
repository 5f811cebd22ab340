"""`tarebook pair` and `tarebook devices`: a phone is let in at the terminal."""

from __future__ import annotations

import builtins
import re
import threading
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from tarebook.devices import pairing
from tarebook.devices.joining import Asked
from tarebook.errors import TarebookError
from tarebook.store import house
from tests.home import Home

ORIGIN = "https://tarebook.local:8443"


@pytest.fixture
def home(tmp_path: Path, tarebook: Any) -> Iterator[Home]:
    """The garage in the data folder the commands use, with an address for phones."""
    made = Home(tmp_path / "data")
    with made.database.write() as session:
        house.keep_origin(session, ORIGIN)
    yield made
    made.close()


class Phone(threading.Thread):
    """Comes with a code as soon as an invitation is there, and waits until it is told something."""

    def __init__(
        self, home: Home, monkeypatch: pytest.MonkeyPatch, short: bool = False, name: str = "My phone"
    ) -> None:
        super().__init__()
        self.home, self.short, self.name_ = home, short, name
        self.codes: list[str] = []
        self.asked: Asked | None = None
        self.outcome: object = None
        invite = pairing.invite

        def overheard(*arguments: Any, **more: Any) -> pairing.Invitation:
            made = invite(*arguments, **more)
            self.codes = [made.full, made.short]
            return made

        monkeypatch.setattr(pairing, "invite", overheard)

    def run(self) -> None:
        end = time.monotonic() + 60
        while time.monotonic() < end and self.outcome is None:
            time.sleep(0.05)
            try:
                self._try()
            except TarebookError as refusal:
                self.outcome = refusal.code if self.asked else None

    def _try(self) -> None:
        with self.home.database.write() as session:
            if self.asked is None and self.codes:
                answer = pairing.redeem(session, self.codes[self.short], self.name_)
                assert isinstance(answer, Asked)
                self.asked = answer
            elif self.asked is not None:
                found = pairing.collect(session, self.asked.join)
                self.outcome = found if isinstance(found, pairing.Paired) else None


def run_with(phone: Phone, tarebook: Any, monkeypatch: pytest.MonkeyPatch, says: str) -> tuple[Any, list[str]]:
    """(what the command left, the questions it asked)"""
    questions: list[str] = []

    def answer(question: str) -> str:
        questions.append(question)
        return says

    monkeypatch.setattr(builtins, "input", answer)
    phone.start()
    ended = tarebook("pair")
    phone.join()
    return ended, questions


@pytest.mark.parametrize("short", [False, True])
def test_a_yes_lets_the_phone_in(home: Home, tarebook: Any, monkeypatch: pytest.MonkeyPatch, short: bool) -> None:
    phone = Phone(home, monkeypatch, short)
    ended, questions = run_with(phone, tarebook, monkeypatch, "y")
    assert ended.code == 0
    assert isinstance(phone.outcome, pairing.Paired)
    full, code = phone.codes
    assert f"type there: {code}" in ended.out
    assert f"{ORIGIN}/#pair={full}" in ended.out
    assert phone.asked is not None
    assert f"“My phone” asks to join. It must show these two words: {' '.join(phone.asked.words)}\n" in ended.out
    assert questions == ["Does it show exactly these? [y/N] "]
    assert re.search(r"^\S+  My phone  paired ", tarebook("devices").out, re.MULTILINE)


def test_the_qr_is_drawn(home: Home, tarebook: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    ended, _questions = run_with(Phone(home, monkeypatch), tarebook, monkeypatch, "y")
    drawn = [line for line in ended.out.splitlines() if set(line) <= set("█▀▄ ") and line]
    assert len({len(line) for line in drawn}) == 1
    assert len(drawn) in (len(drawn[0]) // 2, len(drawn[0]) // 2 + 1)  # two modules to a character, and square


@pytest.mark.parametrize("says", ["", "n", "no", "maybe"])
def test_anything_else_is_a_no(home: Home, tarebook: Any, monkeypatch: pytest.MonkeyPatch, says: str) -> None:
    phone = Phone(home, monkeypatch)
    ended, _questions = run_with(phone, tarebook, monkeypatch, says)
    assert (ended.code, phone.outcome) == (1, "pair_refused")
    assert tarebook("devices").out.startswith("No device is paired yet.")


def test_a_name_that_would_steer_the_terminal_is_shown_without_its_commands(
    home: Home, tarebook: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    phone = Phone(home, monkeypatch, name="\x1b[2Jyes\r\u202e")
    ended, _questions = run_with(phone, tarebook, monkeypatch, "y")
    assert "“?[2Jyes??” asks to join" in ended.out
    assert "?[2Jyes??" in tarebook("devices").out


def test_when_nobody_comes_the_code_is_withdrawn(home: Home, tarebook: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    phone = Phone(home, monkeypatch)
    monkeypatch.setattr("tarebook.cli.pair._LOOK_EVERY_SECONDS", 0.01)
    monkeypatch.setattr("tarebook.devices.pairing.seconds_left", lambda _until: 1)
    ended = tarebook("pair")
    assert ended.code == 1
    assert ended.out.endswith("Nobody came. Run it again for a fresh code.\n")
    with home.database.write() as session, pytest.raises(TarebookError, match="pair_code_wrong"):
        pairing.redeem(session, phone.codes[0], "late")


def test_ctrl_c_withdraws_the_code(home: Home, tarebook: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    phone = Phone(home, monkeypatch)

    def interrupted(_seconds: float) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("tarebook.cli.pair.time.sleep", interrupted)
    assert tarebook("pair").code == 130
    with home.database.write() as session, pytest.raises(TarebookError, match="pair_code_wrong"):
        pairing.redeem(session, phone.codes[0], "late")


def test_here_prints_a_link_for_this_computer(home: Home, tarebook: Any) -> None:
    ended = tarebook("pair", "--here", "--port", "9000")
    link = re.fullmatch(r"http://localhost:9000/#pair=(\S{22})\n", ended.out)
    assert link is not None
    assert home.client.post("/api/v1/pair", json={"code": link[1]}).status_code == 200


def test_without_an_address_for_phones_the_link_is_printed_and_the_way_to_phones_told(
    tmp_path: Path, tarebook: Any
) -> None:
    Home(tmp_path / "data").close()
    ended = tarebook("pair")
    assert re.fullmatch(r"http://localhost:8017/#pair=\S{22}\n", ended.out)
    assert "tarebook serve --lan" in ended.err


def test_a_device_is_renamed_and_taken_off_by_id_or_by_name(home: Home, tarebook: Any) -> None:
    one, two = home.pair("one"), home.pair("two")
    assert tarebook("devices", "rename", one.id, " In the shed ").out == f"{one.id} is called In the shed now.\n"
    assert tarebook("devices", "revoke", "In the shed").out == f"{one.id}, In the shed, is taken off the list.\n"
    assert one.get("/devices").status_code == 403
    assert two.get("/devices").status_code == 200
    assert "In the shed  paired" in tarebook("devices").out


def test_a_name_that_several_have_names_none(home: Home, tarebook: Any) -> None:
    for _ in range(2):
        home.pair("twin")
    ended = tarebook("devices", "revoke", "twin")
    assert (ended.code, ended.err) == (
        1,
        "tarebook: Several devices are called twin. Name it by its id, as the list shows it.\n",
    )
    assert tarebook("devices", "rename", "nobody", "x").code == 1
    assert tarebook("devices", "rename", "twin", "x").code == 1
