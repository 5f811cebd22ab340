"""Everything a garage holds, in one file: records as they stand, the journal's exact texts, and the photos.

A file is written beside its name and renamed when it is whole, so that an older export is never half replaced.
"""

import json
import os
import sys
import tempfile
import zipfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import IO, Any

from tarebook.errors import TarebookError
from tarebook.garage.records import all_records, all_texts, strangers
from tarebook.journal.kinds import SCHEMA
from tarebook.papers.photos import file_of
from tarebook.store import garages
from tarebook.store.database import Database
from tarebook.version import __version__


def takeout(database: Database, garage: str) -> dict[str, Any]:
    """The garage in the dialect of `calc`, with `entries`: the journal's exact texts, and `export`: what made it, and
    by their hashes the entries that came from strangers."""
    with database.read() as session:
        epoch = garages.get(session, garage).epoch
        made: dict[str, Any] = {"tarebook": __version__, "schema": SCHEMA, "garage": garage, "epoch": epoch}
        made["aside"] = strangers(session, garage)
        return {"export": made, **all_records(session, garage), "entries": all_texts(session, garage)}


def write_takeout(database: Database, garage: str, photos: Path, file: str, form: str) -> int:
    """Writes the garage to `file` ("-": standard output) as "json" or "zip"; gives how many photos are missing.

    Raises `file_unwritable`.
    """
    everything = takeout(database, garage)
    text = json.dumps(everything, ensure_ascii=False, indent=1) + "\n"
    try:
        with _whole(file) as out:
            if form == "json":
                out.write(text.encode())
                return 0
            return _write_zip(out, text, everything["photos"], photos)
    except BrokenPipeError:
        raise
    except OSError as problem:
        raise TarebookError("file_unwritable", file=file, reason=problem.strerror or str(problem)) from problem


def _write_zip(out: IO[bytes], text: str, records: list[dict[str, Any]], photos: Path) -> int:
    wanted = {record["sha256"]: file_of(record) for record in records}
    missing = 0
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("garage.json", text)
        for sha256, name in wanted.items():
            photo = photos / sha256[:2] / sha256
            if photo.is_file():
                archive.write(photo, name, zipfile.ZIP_STORED)
            else:
                missing += 1
    return missing


@contextmanager
def _whole(file: str) -> Iterator[IO[bytes]]:
    if file == "-":
        yield sys.stdout.buffer
        return
    target = Path(file)
    handle, beside = tempfile.mkstemp(dir=target.parent, prefix=f".{target.name}.")
    try:
        with os.fdopen(handle, "wb") as out:
            yield out
            out.flush()
            os.fsync(out.fileno())
        os.chmod(beside, 0o600)
        os.replace(beside, target)
    except BaseException:
        Path(beside).unlink(missing_ok=True)
        raise
