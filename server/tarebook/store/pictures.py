"""Looks at a picture before trusting it: its kind, its size, and that it is whole.

The number of pixels is read from the header and checked before anything is decoded: a small file can claim more
pixels than the machine has memory.
"""

import re
import struct
import threading
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path

from PIL import ExifTags, Image, ImageOps, UnidentifiedImageError

from tarebook.errors import TarebookError

TYPES = {"JPEG": "image/jpeg", "MPO": "image/jpeg", "PNG": "image/png", "WEBP": "image/webp"}
THUMB_PIXELS = 320
_HEIC = re.compile(rb"hei[cxms]|hev[cxms]")  # brands of pictures coded with HEVC: ISO/IEC 23008-12
_FTYP_MOST = 1024
_BAD_EXIF = (OSError, ValueError, SyntaxError, EOFError, TypeError, KeyError, AttributeError, struct.error)
_ONE_AT_A_TIME = threading.Lock()  # decoding is what takes memory

Image.MAX_IMAGE_PIXELS = None  # the limit of our own, below, comes first and is lower


@dataclass(frozen=True)
class Picture:
    type: str
    width: int
    height: int


def inspect(path: Path, told: str, most_pixels: int) -> Picture:
    """The picture in a file said to be of type `told`.

    Raises `photo_not_an_image`, `photo_heic`, `photo_wrong_type`, `photo_too_many_pixels`, `photo_truncated`,
    `photo_tells_place`.
    """
    with path.open("rb") as file:
        _within(_webp_size(file.read(30)), most_pixels)  # its reader makes room for the whole picture on opening
    with _ONE_AT_A_TIME, _opened(path) as image:
        found = TYPES[image.format or ""]
        if found != told:
            raise TarebookError("photo_wrong_type", found=found, told=told)
        _within(image.size, most_pixels)
        _decode(image)
        if _tells_place(image):
            raise TarebookError("photo_tells_place")
        return Picture(found, *image.size)


def _opened(path: Path) -> Image.Image:
    try:
        return Image.open(path, formats=["JPEG", "PNG", "WEBP"])
    except UnidentifiedImageError as problem:
        with path.open("rb") as file:
            raise TarebookError("photo_heic" if is_heic(file.read(_FTYP_MOST)) else "photo_not_an_image") from problem
    except (OSError, ValueError, SyntaxError) as problem:
        raise TarebookError("photo_truncated") from problem


def is_heic(head: bytes) -> bool:
    """Whether one of the brands in a file's first box says HEIC; its name says nothing. The phone looks alike."""
    if len(head) < 12 or head[4:8] != b"ftyp":
        return False
    end = min(int.from_bytes(head[:4]), len(head), _FTYP_MOST)
    brands = [head[8:12], *(head[at : at + 4] for at in range(16, end - 3, 4))]
    return any(map(_HEIC.fullmatch, brands))


def _decode(image: Image.Image) -> None:
    try:
        image.load()
    except (OSError, ValueError, SyntaxError, EOFError) as problem:
        raise TarebookError("photo_truncated") from problem


def _tells_place(image: Image.Image) -> bool:
    """Whether its EXIF has a place; one that cannot be read tells none."""
    try:
        return bool(image.getexif().get_ifd(ExifTags.IFD.GPSInfo))
    except _BAD_EXIF:
        return False


def _within(size: tuple[int, int], most: int) -> None:
    width, height = size
    if width * height > most:
        raise TarebookError("photo_too_many_pixels", width=width, height=height)


def _webp_size(head: bytes) -> tuple[int, int]:
    """Width and height in a WebP header (RFC 9649); (0, 0) for anything else."""
    if len(head) < 30 or head[:4] != b"RIFF" or head[8:12] != b"WEBP":
        return 0, 0
    kind = head[12:16]
    if kind == b"VP8X":
        return int.from_bytes(head[24:27], "little") + 1, int.from_bytes(head[27:30], "little") + 1
    if kind == b"VP8L":
        bits = int.from_bytes(head[21:25], "little")
        return (bits & 0x3FFF) + 1, (bits >> 14 & 0x3FFF) + 1
    return int.from_bytes(head[26:28], "little") & 0x3FFF, int.from_bytes(head[28:30], "little") & 0x3FFF


def thumbnail(path: Path) -> bytes:
    """A JPEG of at most 320 × 320 pixels, upright, on white where the picture is see-through."""
    with _ONE_AT_A_TIME, Image.open(path) as image:
        image.draft("RGB", (THUMB_PIXELS, THUMB_PIXELS))
        small = _upright(image)
        small.thumbnail((THUMB_PIXELS, THUMB_PIXELS))
        layered = small.convert("RGBA")
        page = Image.new("RGB", layered.size, "white")
        page.paste(layered, mask=layered.getchannel("A"))
    kept = BytesIO()
    page.save(kept, "JPEG", quality=80)
    return kept.getvalue()


def _upright(image: Image.Image) -> Image.Image:
    """Turned as its EXIF says; as it is, where that cannot be read."""
    try:
        return ImageOps.exif_transpose(image)
    except _BAD_EXIF:
        return image
