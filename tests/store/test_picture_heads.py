"""What the phone's first look says of a picture is what the home computer takes in, damaged or not."""

from __future__ import annotations

import base64
from pathlib import Path
from random import Random

import pytest

from tarebook.store.pictures import is_heic
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


PICTURES = Path(__file__).resolve().parents[2] / "fixtures" / "pictures"


def test_both_know_heic_by_the_same_brands() -> None:
    random, found = Random(5), []
    brands = [b"heic", b"heix", b"hevc", b"hevx", b"heim", b"heis", b"hevm", b"hevs", b"mif1", b"avif", b"isom"]
    for _ in range(200):
        said = b"".join(random.choices(brands[:8] if random.random() < 0.2 else brands[8:], k=random.randrange(1, 5)))
        length = 12 + len(said) if random.random() < 0.8 else random.choice((0, 1, 8, 13, 500, 2**32 - 1))
        box = length.to_bytes(4, "big") + random.choice((b"ftyp", b"ftyp", b"moov")) + said[:4] + bytes(4) + said[4:]
        found.append(box[: random.choice((len(box), len(box), random.randrange(len(box) + 1)))] + b"heic" * 3)
    found += [(PICTURES / name).read_bytes() for name in ("red.heic", "red.avif")]
    told = answers([{"function": "picture_head", "in": base64.b64encode(each).decode()} for each in found])
    assert [each["heic"] for each in told] == [is_heic(each) for each in found]
    assert 0 < sum(map(is_heic, found)) < len(found)
