"""Photos on the wire: whole and verified, or not there."""

from __future__ import annotations

import errno
import hashlib
import struct
import zlib
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
from PIL import ExifTags, Image

from tests.home import Device, Home


def picture(kind: str = "JPEG", size: tuple[int, int] = (640, 480)) -> bytes:
    kept = BytesIO()
    Image.effect_noise(size, 60).convert("RGB").save(kept, kind)
    return kept.getvalue()


def sha(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()


def announce(phone: Device, data: bytes, kind: str = "image/jpeg", **more: Any):
    return phone.post("/photos", {"sha256": sha(data), "size": len(data), "type": kind, **more})


def send(phone: Device, url: str, data: bytes, offset: int = 0):
    headers = {"Upload-Offset": str(offset), "Content-Type": "application/octet-stream"}
    return phone.ask("PATCH", url, headers, data=data)


def upload(phone: Device, data: bytes, kind: str = "image/jpeg"):
    return send(phone, announce(phone, data, kind).json["url"], data)


def with_place() -> bytes:
    """A JPEG as a camera writes it that knows where it is."""
    kept, exif = BytesIO(), Image.Exif()
    exif[ExifTags.IFD.GPSInfo] = {ExifTags.GPS.GPSLatitudeRef: "N", ExifTags.GPS.GPSLatitude: (47.0, 22.0, 8.0)}
    Image.new("RGB", (40, 30), "red").save(kept, "JPEG", exif=exif)
    return kept.getvalue()


@pytest.mark.parametrize(("kind", "mime"), [("JPEG", "image/jpeg"), ("PNG", "image/png"), ("WEBP", "image/webp")])
def test_a_photo_sent_in_pieces_comes_back_the_same(home: Home, phone: Device, kind: str, mime: str) -> None:
    data = picture(kind)
    url = announce(phone, data, mime).json["url"]
    assert send(phone, url, data[:1000]).headers["Upload-Offset"] == "1000"
    assert phone.ask("HEAD", url).headers["Upload-Offset"] == "1000"
    assert send(phone, url, data[1000:], 1000).status_code == 204
    answer = home.pair().get(f"/photos/{sha(data)}")
    assert (answer.data, answer.mimetype) == (data, mime)
    assert announce(phone, data, mime).json == {"present": True}
    assert phone.ask("HEAD", url).status_code == 404


def test_a_data_folder_named_from_where_the_command_ran_serves_its_photos(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    home, data = Home(Path("cars")), picture()
    phone = home.pair()
    assert upload(phone, data).status_code == 204
    for size in ("full", "thumb"):
        assert phone.get(f"/photos/{sha(data)}?size={size}").status_code == 200


def test_an_upload_announced_again_goes_on_where_it_was(phone: Device) -> None:
    data = picture()
    first = announce(phone, data)
    send(phone, first.json["url"], data[:500])
    assert announce(phone, data).json == {**first.json, "offset": 500}


def test_the_small_picture_is_small(phone: Device) -> None:
    kept = BytesIO()
    Image.new("RGBA", (1600, 900), (200, 30, 30, 128)).save(kept, "PNG")
    data = kept.getvalue()
    upload(phone, data, "image/png")
    answer = phone.get(f"/photos/{sha(data)}?size=thumb")
    assert answer.mimetype == "image/jpeg"
    assert Image.open(BytesIO(answer.data)).size == (320, 180)


def test_a_piece_at_the_wrong_place_is_told_the_right_one(phone: Device) -> None:
    data = picture()
    url = announce(phone, data).json["url"]
    send(phone, url, data[:100])
    answer = send(phone, url, data[:100])
    assert (answer.status_code, answer.json["error"]["data"]["offset"]) == (409, 100)


def test_bytes_of_another_hash_are_refused_and_the_upload_starts_afresh(phone: Device) -> None:
    data = picture()
    url = announce(phone, data).json["url"]
    answer = send(phone, url, bytes(len(data)))
    assert (answer.status_code, answer.json["error"]["code"]) == (422, "photo_hash_mismatch")
    assert phone.get(f"/photos/{sha(data)}").status_code == 404
    assert announce(phone, data).json["offset"] == 0
    assert upload(phone, data).status_code == 204


def png_of(width: int, height: int) -> bytes:
    """A PNG that claims a size and holds next to nothing."""

    def chunk(name: bytes, body: bytes) -> bytes:
        return struct.pack(">I", len(body)) + name + body + struct.pack(">I", zlib.crc32(name + body))

    header = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", header) + chunk(b"IDAT", zlib.compress(b"")) + chunk(b"IEND", b"")


def webp_of(width: int, height: int) -> bytes:
    body = (
        b"VP8X"
        + struct.pack("<I", 10)
        + bytes(4)
        + (width - 1).to_bytes(3, "little")
        + (height - 1).to_bytes(3, "little")
    )
    return b"RIFF" + struct.pack("<I", len(body) + 4) + b"WEBP" + body


def outside(name: str) -> bytes:
    """A picture written by libheif."""
    return (Path(__file__).resolve().parents[2] / "fixtures" / "pictures" / name).read_bytes()


HOSTILE = {
    "a page": (b"<!doctype html><script>alert(1)</script>", "image/jpeg", "photo_not_an_image"),
    "a drawing with scripts": (b'<svg xmlns="http://www.w3.org/2000/svg"/>', "image/png", "photo_not_an_image"),
    "a GIF": (picture("GIF"), "image/png", "photo_not_an_image"),
    "a PNG called JPEG": (picture("PNG"), "image/jpeg", "photo_wrong_type"),
    "one with its place": (with_place(), "image/jpeg", "photo_tells_place"),
    "a HEIC": (outside("red.heic"), "image/jpeg", "photo_heic"),
    "a truncated HEIC": (outside("red.heic")[:100], "image/jpeg", "photo_heic"),
    "an AVIF": (outside("red.avif"), "image/jpeg", "photo_not_an_image"),
    "a text named as a HEIC": (b"seat.heic: ftypheic, they say", "image/jpeg", "photo_not_an_image"),
    "a truncated JPEG": (picture()[:-2000], "image/jpeg", "photo_truncated"),
    "a truncated PNG": (picture("PNG")[:3000], "image/png", "photo_truncated"),
    "a truncated WebP": (picture("WEBP")[:3000], "image/webp", None),
    "a JPEG of its first bytes": (picture()[:30], "image/jpeg", None),
    "a PNG of 50,000 × 50,000": (png_of(50_000, 50_000), "image/png", "photo_too_many_pixels"),
    "a WebP of 16,000 × 16,000": (webp_of(16_000, 16_000), "image/webp", "photo_too_many_pixels"),
}


@pytest.mark.parametrize(("data", "kind", "expected"), HOSTILE.values(), ids=HOSTILE.keys())
def test_what_is_no_whole_picture_is_refused_and_not_kept(
    phone: Device, data: bytes, kind: str, expected: str | None
) -> None:
    answer = upload(phone, data, kind)
    assert answer.status_code == 422
    assert answer.json["error"]["code"] in ({expected} if expected else {"photo_truncated", "photo_not_an_image"})
    assert phone.get(f"/photos/{sha(data)}").status_code == 404
    assert announce(phone, data, kind).json["offset"] == 0


def test_sizes_beyond_the_limits_are_refused(phone: Device) -> None:
    assert announce(phone, b"", size=3_000_000).json["error"]["code"] == "photo_too_large"
    url = announce(phone, b"", size=1_900_000).json["url"]
    assert send(phone, url, bytes(1024 * 1024 + 1)).json["error"]["code"] == "upload_chunk_too_large"
    assert send(phone, url, bytes(1024 * 1024)).status_code == 204
    assert send(phone, url, bytes(1_000_000), 1024 * 1024).json["error"]["code"] == "photo_too_large"
    assert phone.ask("HEAD", url).headers["Upload-Offset"] == str(1024 * 1024)


@pytest.mark.parametrize("kind", ["image/heic", "image/heif", "image/heic-sequence"])
def test_a_heic_announced_as_one_is_told_how_to_become_a_jpeg(phone: Device, kind: str) -> None:
    answer = announce(phone, outside("red.heic"), kind)
    assert (answer.status_code, answer.json["error"]["code"]) == (422, "photo_heic")
    assert "JPEG" in answer.json["error"]["do"]


@pytest.mark.parametrize("body", [{"sha256": "A" * 64}, {"size": 0}, {"size": -1}, {"type": "image/gif"}, {"type": 1}])
def test_an_announcement_of_the_wrong_shape_is_refused(phone: Device, body: dict[str, Any]) -> None:
    assert announce(phone, b"x", **body).status_code == 422


@pytest.mark.parametrize("name", ["a" * 64, "..", "%2e%2e%2fx", "%00", "é", "a/b"])
def test_a_photo_or_upload_that_is_not_there_is_not_found(phone: Device, name: str) -> None:
    assert phone.get(f"/photos/{name}").status_code == 404
    assert phone.ask("HEAD", f"/api/v1/uploads/{name}").status_code == 404


def test_a_piece_without_an_offset_is_refused(phone: Device) -> None:
    data = picture()
    url = announce(phone, data).json["url"]
    assert phone.ask("PATCH", url, data=data).status_code == 422
    assert phone.ask("PATCH", url, {"Upload-Offset": "-1"}, data=data).status_code == 422


def test_another_garage_sees_no_photo_and_no_upload(home: Home, phone: Device) -> None:
    from tarebook.devices import pairing
    from tarebook.store import garages

    data = picture()
    url = announce(phone, data).json["url"]
    with home.database.write() as session:
        other = Device(home.client, pairing.admit(session, garages.create(session).id, "x", None))
    assert other.ask("HEAD", url).status_code == 404
    send(phone, url, data)
    assert other.get(f"/photos/{sha(data)}").status_code == 404
    assert announce(other, data).json["present"] is False


def test_a_full_disk_is_told_in_a_sentence_and_the_phone_may_go_on_later(
    phone: Device, monkeypatch: pytest.MonkeyPatch
) -> None:
    data = picture()
    url = announce(phone, data).json["url"]

    def full(*_: object) -> int:
        raise OSError(errno.ENOSPC, "No space left on device")

    with monkeypatch.context() as patch:
        patch.setattr("tarebook.store.files.os.write", full)
        answer = send(phone, url, data)
    assert (answer.status_code, answer.json["error"]["code"]) == (507, "disk_full")
    assert phone.ask("HEAD", url).headers["Upload-Offset"] == "0"
    assert send(phone, url, data).status_code == 204
