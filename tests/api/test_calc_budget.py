"""A computation asked for over HTTP ends: in its time, or when nobody waits for it any more."""

from __future__ import annotations

import os
import signal
import threading
import time
from math import cos, pi, sin
from pathlib import Path
from typing import Any

import pytest

from tarebook.api.calc import apart, reckoner
from tests.api.test_calc import example
from tests.home import Device, Home


def corner(metres: float, parts: int) -> str:
    """A coordinate that no other shares a grid with."""
    millimetres = int(metres * 1000)
    return f"{millimetres} 1/{parts} mm"


def sheet() -> dict[str, Any]:
    """Fourteen kilobytes of outline that keep the exact sums busy for long: each corner on a grid of its own."""
    angles = [2 * pi * n / 200 for n in range(200)]
    corners = [
        [corner(0.5 + 0.4 * cos(a), 100_003 + 2 * n), corner(0.5 + 0.4 * sin(a), 200_003 + 2 * n)]
        for n, a in enumerate(angles)
    ]
    piece = {"id": "a", "form": "polygon", "thickness": "1 mm", "density_low": "7800", "density_high": "7900"}
    return {"pieces": [{**piece, "id": f"p{n}", "corners": corners[::step]} for n, step in enumerate((1, 2))]}


def weigh_ins() -> dict[str, Any]:
    """A hundred that contradict each other."""
    corners = ("lf", "rf", "lr", "rr")
    return {
        "cars": [{"id": "c", "wheelbase": "2420 mm", "tank_size": "45 L", "fuel_kind": "petrol"}],
        "scales": [{"id": "s", "kind": "corner_pads", "division": "0.2 kg"}],
        "weigh_ins": [
            {"layout": "corners", "scale": "s", "fuel": "12 L", "fuel_within": "1 L", "trim": "event"}
            | dict.fromkeys(corners, f"{200 + 37 * (n * n % 29)} kg")
            for n in range(100)
        ],
    }


@pytest.fixture
def brief(tmp_path: Path) -> Device:
    """A phone of a home computer that computes for a second at most."""
    return Home(tmp_path, calc_seconds=1).pair()


def code_of(answer: Any) -> str:
    return str(answer.json["error"]["code"])


@pytest.mark.parametrize(("name", "asked"), [("sheet", sheet()), ("standing", weigh_ins())], ids=["sheet", "weigh-ins"])
def test_one_that_takes_too_long_is_ended_and_the_next_is_answered(brief: Device, name: str, asked: Any) -> None:
    begun = time.monotonic()
    answer = brief.post(f"/calc/{name}", asked)
    assert time.monotonic() - begun < 8
    assert (answer.status_code, code_of(answer)) == (422, "calc_over_budget")
    assert "1 seconds" in answer.json["error"]["sentence"]
    assert brief.post("/calc/ledger", example("ledger")).status_code == 200


def test_one_that_nobody_waits_for_any_more_is_ended(home: Home, phone: Device) -> None:
    gone, begun = threading.Event(), time.monotonic()
    threading.Timer(0.5, gone.set).start()
    phone.ask("POST", "/api/v1/calc/standing", json=weigh_ins(), environ_base={"tarebook.gone": gone})
    assert time.monotonic() - begun < 8
    assert phone.post("/calc/ledger", example("ledger")).status_code == 200


def test_no_more_are_done_at_once_than_there_are_places_and_the_others_are_told(tmp_path: Path) -> None:
    phone = Home(tmp_path, calc_seconds=4).pair()
    busy = [threading.Thread(target=phone.post, args=("/calc/standing", weigh_ins())) for _ in range(apart.AT_ONCE)]
    for one in busy:
        one.start()
    time.sleep(0.5)
    answer = phone.post("/calc/ledger", example("ledger"))
    assert (answer.status_code, code_of(answer)) == (503, "calc_busy")
    for one in busy:
        one.join()
    assert phone.post("/calc/ledger", example("ledger")).status_code == 200


def test_a_process_that_died_meanwhile_is_replaced(phone: Device) -> None:
    assert phone.post("/calc/ledger", example("ledger")).status_code == 200
    for process in apart._idle:
        os.kill(process.pid, signal.SIGKILL)
        process.wait()
    assert phone.post("/calc/ledger", example("ledger")).status_code == 200


def test_one_that_takes_too_much_memory_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    """The process that computes, with little to spare: asked for a garage of half a million parts."""
    monkeypatch.setattr(apart, "_idle", [])
    little = f"import tarebook.api.calc.reckoner as r; r.MEMORY = {300 << 20}; r.main()"
    monkeypatch.setattr(apart, "_COMMAND", [*apart._COMMAND[:1], "-c", little])
    many = b'{"parts": [' + b",".join(b'{"id": "%d"}' % n for n in range(500_000)) + b"]}"
    with pytest.raises(Exception, match="calc_over_budget"):
        apart.compute("ledger", many, 60)
    assert reckoner.MEMORY > 300 << 20


@pytest.mark.parametrize(
    ("body", "code"), [(b"{", "malformed_json"), (b"\xff", "malformed_json"), (b"[]", "bad_input")]
)
def test_what_cannot_be_read_is_refused_as_before(phone: Device, body: bytes, code: str) -> None:
    answer = phone.ask("POST", "/api/v1/calc/ledger", data=body, content_type="application/json")
    assert code_of(answer) == code
