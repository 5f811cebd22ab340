"""Names for entries and records: UUIDv7 text, sortable by the clock of whoever made them, unique without asking.

Nothing is ever ordered by the clock inside; it only keeps index pages close together.
"""

from __future__ import annotations

import hashlib
import secrets
import time
import uuid


def new_id() -> str:
    """A fresh UUIDv7 (RFC 9562): 48 bits of milliseconds, then 74 random bits."""
    milliseconds = time.time_ns() // 1_000_000
    number = (milliseconds & (2**48 - 1)) << 80 | 0x7 << 76 | secrets.randbits(12) << 64 | 0b10 << 62
    return str(uuid.UUID(int=number | secrets.randbits(62)))


def text_hash(text: str) -> str:
    """SHA-256 of an entry's exact text, as hexadecimal."""
    return hashlib.sha256(text.encode("utf-8")).hexdigest()


def raw_id(text: str) -> str:
    """The name under which a text is kept that has none of its own: unreadable, or its name is taken."""
    return "raw-" + text_hash(text)[:32]
