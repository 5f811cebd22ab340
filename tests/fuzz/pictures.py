"""Broken pictures to the upload, the small picture and the phone's first look: refused by a row, or kept whole.

What was kept is given back byte for byte, the phone's reader says no other size of it than the server, and memory
stays flat whatever a picture claims to be.
"""

from __future__ import annotations

import base64
import hashlib
import resource
import struct
import zlib
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from io import BytesIO
from pathlib import Path
from random import Random
from typing import Any

from PIL import Image, PngImagePlugin

from tarebook.errors import ERRORS
from tests.fuzz.kind import Case, limited
from tests.fuzz.mutate import TEXTS, damaged
from tests.home import Device, Home
from tests.photos import picture, sha
from tests.typescript import answers

PIXELS = 1_000_000
MOST_GROWTH = 96 << 20  # bytes: some of what a million pixels take, many times over, and none of what a bomb claims
WRITTEN_BY_OTHERS = Path(__file__).resolve().parents[2] / "fixtures" / "pictures"
TYPES = ("image/jpeg", "image/png", "image/webp")


@cache
def whole() -> list[bytes]:
    """Good pictures of every format and way of writing it."""
    found = [picture(1)]
    colours = Image.frombytes("RGB", (64, 48), Random(1).randbytes(64 * 48 * 3))
    kinds = {"RGB": colours, "RGBA": colours.convert("RGBA"), "P": colours.convert("P"), "L": colours.convert("L")}
    exif = Image.Exif()
    exif[0x0112], exif[0x010E] = 6, "seat"
    ways: list[tuple[str, str, dict[str, Any]]] = [
        ("JPEG", "RGB", {"progressive": True}), ("JPEG", "L", {}), ("JPEG", "RGB", {"exif": exif, "quality": 95}),
        *(("PNG", mode, {}) for mode in kinds), ("WEBP", "RGB", {}), ("WEBP", "RGBA", {"lossless": True}),
        ("WEBP", "RGB", {"exif": exif}), ("GIF", "P", {}), ("BMP", "RGB", {}), ("TIFF", "RGB", {}),
    ]  # fmt: skip
    for kind, mode, more in ways:
        found.append(_saved(kinds[mode], kind, **more))
    found.append(_saved(colours.convert("CMYK"), "JPEG"))
    frames = [Image.new("RGB", (40, 30), colour) for colour in ("red", "green", "blue")]
    found += [_saved(frames[0], kind, save_all=True, append_images=frames[1:]) for kind in ("WEBP", "PNG", "MPO")]
    return found + [file.read_bytes() for file in sorted(WRITTEN_BY_OTHERS.iterdir())]


def _saved(image: Image.Image, kind: str, **more: Any) -> bytes:
    kept = BytesIO()
    image.save(kept, kind, **more)
    return kept.getvalue()


def _chunk(name: bytes, data: bytes) -> bytes:
    return struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))


def png(width: int, height: int, data: bytes, *chunks: bytes, bits: int = 8, colour: int = 0) -> bytes:
    head = _chunk(b"IHDR", struct.pack(">IIBBBBB", width, height, bits, colour, 0, 0, 0))
    return b"\x89PNG\r\n\x1a\n" + head + b"".join(chunks) + _chunk(b"IDAT", data) + _chunk(b"IEND", b"")


def monster(random: Random) -> bytes:
    """Pictures that no disk makes: bombs, pictures within text, and EXIF that goes round in circles."""
    match random.randrange(8):
        case 0:  # few bytes that claim many pixels, or no pixels
            side = random.choice((0, 1, 999, 1001, 30_000, 2**31 - 1, 2**32 - 1))
            return png(side, random.choice((0, 1, 1000, side)), zlib.compress(bytes(4_000_000), 9))
        case 1:  # more data than the head says
            return png(10, 10, zlib.compress(bytes(random.choice((1, 109, 200, 30_000_000))), 9))
        case 2:  # a compressed text beside the picture
            text = b"Comment\0\0" + zlib.compress(bytes(80_000_000), 9)
            return png(4, 4, zlib.compress(bytes(20)), _chunk(b"zTXt", text), _chunk(b"iCCP", text))
        case 3:  # a turned picture whose EXIF is random
            exif = (
                b"Exif\0\0"
                + random.choice((b"MM\0*\0\0\0\x08", b"II*\0\x08\0\0\0", b""))
                + random.randbytes(random.choice((2, 60, 60_000)))
            )
            return _saved(Image.new("RGB", (30, 20)), random.choice(("JPEG", "WEBP")), exif=exif)
        case 4:  # a directory that names itself as the next
            ring = b"Exif\0\0MM\0*\0\0\0\x08" + struct.pack(
                ">HHHIHHI", 1, 0x0112, 3, 1, random.choice((6, 0, 99)), 0, 8
            )
            return _saved(Image.new("RGB", (30, 20)), "JPEG", exif=ring)
        case 5:  # a palette, or bits, that the head does not fit
            return png(
                9,
                9,
                zlib.compress(bytes(300)),
                bits=random.choice((1, 2, 4, 8, 16, 3)),
                colour=random.choice((0, 2, 3, 4, 6, 7)),
            )
        case 6:
            texts = PngImagePlugin.PngInfo()
            for name in "abc":
                texts.add_text(
                    name, random.choice(TEXTS).encode("utf-8", "replace").decode(), zip=random.random() < 0.5
                )
            return _saved(Image.new("RGB", (5, 5)), "PNG", pnginfo=texts)
    head = struct.pack("<I", random.choice((0, 22, 2**32 - 1))) + b"WEBP" + random.choice((b"VP8X", b"VP8L", b"VP8 "))
    return b"RIFF" + head + random.randbytes(random.choice((3, 18, 400)))


def send(phone: Device, data: bytes, kind: str, random: Random) -> tuple[int, str]:
    """Sends the picture, in pieces of any length; the last status, and the code of a refusal."""
    answer = phone.post("/photos", {"sha256": sha(data), "size": len(data), "type": kind})
    if answer.status_code == 201:
        url, at = answer.json["url"], answer.json["offset"]
        for piece in (
            (data[at : len(data) // 2], data[max(at, len(data) // 2) :]) if random.random() < 0.5 else (data[at:],)
        ):
            answer = phone.ask("PATCH", url, {"Upload-Offset": str(at)}, data=piece)
            at += len(piece)
    return answer.status_code, answer.json["error"]["code"] if answer.status_code >= 400 else ""


def heads(data: bytes) -> dict[str, object]:
    """What the phone's reader says of it."""
    found: dict[str, object] = answers([{"function": "picture_head", "in": base64.b64encode(data).decode()}])[0]
    return found


def kept_whole(phone: Device, data: bytes) -> str:
    """What was taken in comes back byte for byte, small too, and the phone's reader says its size."""
    back = phone.get(f"/photos/{sha(data)}")
    assert back.status_code == 200
    assert hashlib.sha256(back.data).hexdigest() == sha(data)
    small = phone.get(f"/photos/{sha(data)}?size=thumb")
    assert small.status_code == 200, small.json
    with Image.open(BytesIO(small.data)) as thumb, Image.open(BytesIO(data)) as image:
        thumb.load()
        assert thumb.format == "JPEG"
        assert max(thumb.size) <= 320
        assert heads(data)["head"] == {"type": back.mimetype, "width": image.width, "height": image.height}
    return "kept"


@contextmanager
def opened(folder: Path) -> Iterator[Case]:
    home = Home(folder, photo_pixels=PIXELS, photo_bytes=2_000_000)
    phone = home.pair()
    whole()
    heads(b"")
    for data in whole():
        send(phone, data, "image/jpeg", Random(1))
    begun = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * 1024

    def case(random: Random) -> str:
        data = random.choice(whole()) if random.random() < 0.7 else monster(random)
        if random.random() < 0.8:
            data = damaged(random, data)
        found = next((kind for kind in TYPES if data[:4] in STARTS[kind]), "image/jpeg")
        kind = found if random.random() < 0.9 else random.choice(TYPES)
        heads(data)
        if not data:
            return "empty"
        with limited():
            status, code = send(phone, data, kind, random)
            assert status < 500, (status, code)
            word = code if code else kept_whole(phone, data)
        assert not code or code in ERRORS
        grown = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * 1024 - begun
        assert grown < MOST_GROWTH, f"{grown >> 20} MiB more"
        return word

    yield case
    assert list((folder / "photos" / "uploads").glob("*")) == [], "something half there"


STARTS = {
    "image/jpeg": (b"\xff\xd8\xff\xe0", b"\xff\xd8\xff\xe1"),
    "image/png": (b"\x89PNG",),
    "image/webp": (b"RIFF",),
}
