"""A device that floods the garage is stopped, and everybody else is not."""

from __future__ import annotations

from pathlib import Path

import pytest

from tarebook.devices.allowance import DAY, Allowance
from tarebook.errors import TarebookError
from tests.home import Home, entry
from tests.photos import picture, sha


def test_after_its_entries_of_a_day_a_device_waits_for_the_next_and_others_do_not() -> None:
    now = [10 * DAY + 60.0]
    allowance = Allowance(5, clock=lambda: now[0])
    allowance.count("g", "a", 5)
    with pytest.raises(TarebookError) as refused:
        allowance.check("g", "a")
    assert refused.value.data == {"most": 5, "seconds": DAY - 60}
    allowance.check("g", "b")
    now[0] += DAY - 60
    allowance.check("g", "a")


def test_a_flood_is_refused_says_until_when_and_what_is_repeated_costs_nothing(tmp_path: Path) -> None:
    home = Home(tmp_path, device_entries=3)
    phone, other = home.pair(), home.pair()
    texts = [entry(f"j{n}", {"name": "x"}, device=phone.id) for n in range(4)]
    for _ in range(5):
        assert phone.push(texts[0]).status_code == 200
    assert phone.push(*texts[1:3]).status_code == 200
    answer = phone.push(texts[3])
    assert (answer.status_code, answer.json["error"]["code"]) == (429, "device_allowance")
    assert answer.headers["Retry-After"] == str(answer.json["error"]["data"]["seconds"])
    assert other.push(entry("j9", {"name": "x"}, device=other.id)).status_code == 200
    assert len(other.pull().json["entries"]) == 4


def test_photos_of_one_device_may_take_so_much_room_and_no_more(tmp_path: Path) -> None:
    one, two = picture(1), picture(2)
    home = Home(tmp_path, device_photo_bytes=max(len(one), len(two)) + 10)
    phone, other = home.pair(), home.pair()
    announced = [{"sha256": sha(data), "size": len(data), "type": "image/jpeg"} for data in (one, two)]
    url = phone.post("/photos", announced[0]).json["url"]
    assert phone.ask("PATCH", url, {"Upload-Offset": "0"}, data=one).status_code == 204
    answer = phone.post("/photos", announced[1])
    assert (answer.status_code, answer.json["error"]["code"]) == (429, "photo_allowance")
    assert phone.post("/photos", announced[0]).json == {"present": True}
    assert other.post("/photos", announced[1]).status_code == 201
