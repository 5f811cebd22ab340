"""The hash that tells one text from another, and what is made from it: a name for a text that has none of its own,
and the mark that tells one journal from another.
"""

import hashlib


def text_hash(text: str) -> str:
    """SHA-256 of an entry's exact text, as hexadecimal."""
    return hashlib.sha256(text.encode("utf-8")).hexdigest()


def raw_id(text: str) -> str:
    """The name under which a text is kept that has none of its own: unreadable, or its name is taken."""
    return "raw-" + text_hash(text)[:32]


def next_mark(mark: str, entry_hash: str, intake: str | None) -> str:
    """The mark of a journal whose mark was `mark`, with one more entry: equal marks, equal journals."""
    return hashlib.sha256(f"{mark} {entry_hash} {intake or ''}".encode("ascii")).hexdigest()
