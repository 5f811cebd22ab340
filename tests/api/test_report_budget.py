"""A build sheet asked for over HTTP ends as any computation there does: in its time, or when nobody waits for it."""

from __future__ import annotations

import threading
import time
from pathlib import Path
from typing import Any

from tarebook.garage.author import Change, write
from tests.api.test_calc_budget import weigh_ins
from tests.home import Device, Home

WELL_WITHIN = 30  # seconds on a busy computer; left alone, it takes more than a minute


def garage(folder: Path, seconds: int) -> Home:
    """A home computer that computes for so long at most, with a car that nothing explains."""
    home, records = Home(folder, calc_seconds=seconds), weigh_ins()
    changes = [Change("car", "c", {"name": "Pebble", **_fields(records["cars"][0])})]
    changes += [Change("scale", "s", {"name": "Pads", **_fields(records["scales"][0])})]
    changes += [Change("weigh_in", None, {"car": "c", **one}) for one in records["weigh_ins"]]
    with home.database.write() as session:
        write(session, home.garage, changes)
    return home


def _fields(record: dict[str, Any]) -> dict[str, Any]:
    return {name: value for name, value in record.items() if name != "id"}


def test_one_that_takes_too_long_is_ended_and_a_small_one_is_answered(tmp_path: Path, phone: Device) -> None:
    begun, answer = time.monotonic(), garage(tmp_path / "large", 1).pair().get("/report")
    assert time.monotonic() - begun < WELL_WITHIN
    assert (answer.status_code, answer.json["error"]["code"]) == (422, "calc_over_budget")
    assert phone.get("/report").status_code == 200


def test_one_that_nobody_waits_for_any_more_is_ended(tmp_path: Path) -> None:
    gone, device, begun = threading.Event(), garage(tmp_path, 3600).pair(), time.monotonic()
    gone.set()
    device.ask("GET", "/api/v1/report", environ_base={"tarebook.gone": gone})
    assert time.monotonic() - begun < WELL_WITHIN


def test_a_car_that_is_not_there_is_told_as_before(phone: Device) -> None:
    answer = phone.get("/report?car=Flint")
    assert (answer.status_code, answer.json["error"]["code"]) == (404, "car_unknown")
