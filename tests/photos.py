"""Pictures for tests, and how a paired device sends one."""

from __future__ import annotations

import hashlib
import random
from io import BytesIO

from PIL import Image

from tests.home import Device, entry


def picture(seed: int, size: tuple[int, int] = (120, 90)) -> bytes:
    """A JPEG of noise; the same one for the same seed."""
    noise = random.Random(seed).randbytes(size[0] * size[1])
    kept = BytesIO()
    Image.frombytes("L", size, noise).save(kept, "JPEG")
    return kept.getvalue()


def sha(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()


def photo_fields(data: bytes, of: str) -> dict[str, object]:
    """The fields of the record that speaks of a photo."""
    return {"of": of, "sha256": sha(data), "type": "image/jpeg", "size": len(data), "width": 120, "height": 90}


def photo_entry(data: bytes, of: str, device: Device) -> str:
    """The text of that record's entry."""
    record = f"photo-{sha(data)[:8]}"
    return entry(record, photo_fields(data, of), kind="photo", device=device.id, photos=[sha(data)])


def send_photo(device: Device, data: bytes) -> bool:
    """Announces a photo and sends it when it is wanted; tells whether it was."""
    told = device.post("/photos", {"sha256": sha(data), "size": len(data), "type": "image/jpeg"}).json
    if told["present"]:
        return False
    offset = told["offset"]
    answer = device.ask("PATCH", told["url"], {"Upload-Offset": str(offset)}, data=data[offset:])
    assert answer.status_code == 204, answer.json
    return True
