"""Receipts: the home computer's word that it has taken an entry in, and from which device it came first.

The word is a keyed hash over the hash of the entry's exact text and the name of its author, the device that first sent
it. Everyone who pulls the entry keeps it; whoever sends the entry again shows it, and on every computer that has the
garage's key the entry keeps its author and its place in the figures, whatever has become of that device since. What
comes without a receipt, or with one that proves nothing, has for its author whoever brings it.
"""

import hmac
from base64 import urlsafe_b64encode
from dataclasses import dataclass

from tarebook.journal.entries import is_id

_BYTES = 16
"""Half of SHA-256's output, the least that RFC 2104 (5) advises: 2^128 guesses, each to be asked of the home computer;
22 characters instead of 43 in every line that is ever pulled."""


@dataclass(frozen=True)
class Proof:
    """What is shown with an entry sent again. `sent_by`: the author it names; None: the device inside the entry."""

    receipt: str
    sent_by: str | None = None


def receipt_of(key: bytes, entry_hash: str, author: str) -> str:
    """22 characters of the URL's own base64."""
    hashed = hmac.digest(key, f"{entry_hash} {author}".encode("ascii"), "sha256")
    return urlsafe_b64encode(hashed[:_BYTES]).rstrip(b"=").decode("ascii")


def author_of(key: bytes, entry_hash: str, device: str | None, shown: Proof | None) -> str | None:
    """The author that the proof proves; None when it proves nothing. `device`: the one inside the entry, if any."""
    author = None if shown is None else shown.sent_by or device
    if shown is None or author is None or not is_id(author):
        return None
    right = receipt_of(key, entry_hash, author)
    return author if hmac.compare_digest(right.encode(), shown.receipt.encode("utf-8", "replace")) else None


def told(key: bytes, entry_hash: str, device: str | None, sent_by: str, accepted: bool) -> dict[str, str]:
    """What a line of the journal says beside its text: `receipt`, where it was accepted, by the home computer or by a
    person's word, and `sent_by`, where that is not the device inside the entry."""
    line = {"receipt": receipt_of(key, entry_hash, sent_by)} if accepted else {}
    return line if sent_by == device else {**line, "sent_by": sent_by}
