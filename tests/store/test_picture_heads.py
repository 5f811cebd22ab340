"""What the phone's first look says of a picture is what the home computer takes in, damaged or not."""

from __future__ import annotations

import base64

import pytest

from tests.home import Device
from tests.photos import picture, send_photo, sha
from tests.typescript import answers

DAMAGE = {
    "none": b"",
    "junk": b"\0\x01junk",
    "fill bytes": b"\xff\xff\xff",
    "an escaped byte": b"\xff\x00",
    "a restart": b"\xff\xd3",
    "a comment of no length": b"\xff\xfe\x00\x00",
    "junk and a comment": b"\x07\xff\xfe\x00\x03!",
}


@pytest.mark.parametrize("damage", DAMAGE.values(), ids=DAMAGE)
def test_the_phone_knows_a_damaged_jpeg_that_the_home_computer_takes_in(phone: Device, damage: bytes) -> None:
    good = picture(1)
    after_the_first = 4 + int.from_bytes(good[4:6], "big")
    data = good[:after_the_first] + damage + good[after_the_first:]
    said, of_good = answers(
        [{"function": "picture_head", "in": base64.b64encode(one).decode()} for one in (data, good)]
    )
    assert send_photo(phone, data)
    assert phone.get(f"/photos/{sha(data)}").status_code == 200
    assert said == of_good
    assert said["head"]["type"] == "image/jpeg"
