"""The one-time codes of pairing: a full one of 128 random bits for a link or QR, and a short one for typing.

The short one has 8 of 30 letters and digits that nobody takes for one another: 39 bits, enough for a code that is good
for five minutes, once, against tries that are counted. Both are kept as hashes only.
"""

import secrets

from tarebook.devices.tokens import hashed

ALPHABET = "23456789ABCDEFGHJKMNPQRSTVWXYZ"
LENGTH = 8


def new_full() -> str:
    return secrets.token_urlsafe(16)


def new_short() -> str:
    """As it is shown: K7QM-2XRD."""
    code = "".join(secrets.choice(ALPHABET) for _ in range(LENGTH))
    return f"{code[:4]}-{code[4:]}"


def short_hash(typed: str) -> str:
    """The hash of a short code as typed: capital or small, with spaces and hyphens anywhere."""
    return hashed("".join(letter for letter in typed.upper() if letter.isascii() and letter.isalnum()))
