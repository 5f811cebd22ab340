"""What people do with their phones."""

from __future__ import annotations

import base64
import json
import zlib
from functools import cache
from random import Random

from tests.sync.simulation.moves.table import by_a_phone, fields, record
from tests.sync.simulation.world import Phone, World


@by_a_phone(12)
def edit(world: World, phone: Phone) -> str:
    return world.save(phone, "edit", record(world), fields(world), None)


@by_a_phone(1.5)
def delete(world: World, phone: Phone) -> str:
    return world.save(phone, "edit", record(world), {"deleted": True}, None)


@by_a_phone(1)
def undelete(world: World, phone: Phone) -> str:
    return world.save(phone, "edit", record(world), {"deleted": False}, None)


@by_a_phone(0.5)
def build_on_what_is_not_there(world: World, phone: Phone) -> str:
    late = f"late-{world.chance.randrange(3)}"
    return world.save(phone, "edit", record(world), {"hours": "7"}, [late])


@by_a_phone(0.5)
def save_under_a_name_another_may_have_used(world: World, phone: Phone) -> str:
    name = f"late-{world.chance.randrange(3)}"
    entry = {
        "id": name, "device": phone.device, "writer": "late", "n": world.chance.randrange(3), "kind": "job",
        "record": record(world), "set": {"name": "Seats", "hours": "9"}, "base": [], "photos": [], "made_at": "",
    }  # fmt: skip
    text = json.dumps(entry)
    if text in world.truth.saved:
        return None
    return world.save(phone, "foreign", name, text)


@by_a_phone(0.5)
def poison(world: World, phone: Phone) -> str:
    text = world.chance.choice(["{", '{"id":"poison"}', '["a list"]', "\u2028"]) + f" {world.chance.randrange(4)}"
    return world.save(phone, "foreign", None, text)


@by_a_phone(0.7)
def photo(world: World, phone: Phone) -> str:
    picture = world.chance.choice(_pictures())
    return world.save(phone, "photo", record(world), {"base64": picture})


@cache
def _pictures() -> list[str]:
    """Small ones, and one that goes up in pieces: plain PNGs (ISO/IEC 15948) of noise, kept as it is."""
    return [_png(8, number, 9) for number in range(6)] + [_png(330, 7, 0)]


def _png(width: int, seed: int, level: int) -> str:
    lines = b"".join(b"\0" + Random(seed * 1000 + row).randbytes(3 * width) for row in range(width))
    parts = {b"IHDR": width.to_bytes(4) * 2 + b"\x08\x02\0\0\0", b"IDAT": zlib.compress(lines, level), b"IEND": b""}
    chunks = [len(data).to_bytes(4) + name + data + zlib.crc32(name + data).to_bytes(4) for name, data in parts.items()]
    return base64.b64encode(b"\x89PNG\r\n\x1a\n" + b"".join(chunks)).decode()


@by_a_phone(6)
def judge(world: World, phone: Phone) -> str | None:
    return _judged(world, phone, world.chance.randrange(6), world.chance.random() < 0.6, False)


@by_a_phone(4)
def take_in_all_strangers(world: World, phone: Phone) -> str | None:
    return _judged(world, phone, 0, True, True)


def _judged(world: World, phone: Phone, *given: object) -> str | None:
    """None where there was nothing to judge, to the home computer's knowledge or to the phone's."""
    if all(reason is None for _number, _name, _text, reason in world.journal):
        return None
    done = world.save(phone, "judge", *given)
    return None if done == "saved 0" else done


@by_a_phone(3)
def retry(world: World, phone: Phone) -> str:
    world.app(phone, "retry")
    return ""
