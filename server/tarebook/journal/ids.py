"""The hash that tells one text from another, and the name made from it for a text that has none of its own."""

from __future__ import annotations

import hashlib


def text_hash(text: str) -> str:
    """SHA-256 of an entry's exact text, as hexadecimal."""
    return hashlib.sha256(text.encode("utf-8")).hexdigest()


def raw_id(text: str) -> str:
    """The name under which a text is kept that has none of its own: unreadable, or its name is taken."""
    return "raw-" + text_hash(text)[:32]
