"""What happened, one JSON object a line, in `log.jsonl` of the data folder: each request, round and backup.

Never inside: tokens, codes, names, or anything else that somebody typed; a route stands for its address. The file is
put aside at five megabytes, in the place of the one before, so that the log never takes the last of the disk.
"""

import json
import os
from contextlib import suppress
from pathlib import Path
from typing import Any

from tarebook.store.models import utc_now

NAME = "log.jsonl"
_MOST_BYTES = 5_000_000


def note(data: Path, what: str, **said: Any) -> None:
    """Adds a line. A disk that does not take it keeps nobody from their work."""
    line = json.dumps({"at": utc_now(), "what": what, **said}, separators=(",", ":")) + "\n"
    file = data / NAME
    with suppress(OSError):
        handle = os.open(file, os.O_WRONLY | os.O_APPEND | os.O_CREAT, 0o600)
        try:
            os.write(handle, line.encode())
            grown = os.fstat(handle).st_size > _MOST_BYTES
        finally:
            os.close(handle)
        if grown:
            os.replace(file, data / f"{NAME}.before")
