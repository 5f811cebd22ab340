"""What a row of the error table holds, and which part of the app needs it.

`first`: the first screen. `later`: only screens opened later, so the row comes with the rooms of the core that say it.
`at_home`: only commands, `serve` and its answers; a phone that is answered so takes the words from the answer.
"""

from dataclasses import dataclass
from functools import partial
from typing import Literal


@dataclass(frozen=True)
class ErrorRow:
    """`{name}` in a text is filled from the data. `status` is the HTTP status (200: never an answer of its own)."""

    told: Literal["first", "later", "at_home"]
    sentence: str
    do: str
    status: int = 200


first, later, at_home = partial(ErrorRow, "first"), partial(ErrorRow, "later"), partial(ErrorRow, "at_home")
