"""What a row of the error table holds."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class ErrorRow:
    """`status` is the HTTP status (200: never an answer of its own). `{name}` in a text is filled from the data."""

    status: int
    sentence: str
    do: str
