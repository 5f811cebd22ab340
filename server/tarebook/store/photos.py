"""Photos, named by the hash of their bytes. A file under `photos/` is whole, verified and on the disk, or not there.

A phone announces a photo, sends it in pieces, and may go on after any interruption from the offset the server tells.
After the last piece: size, hash, a look at the picture, fsync, rename, and only then the row that says it is here.
No database lock is held meanwhile.
"""

import hashlib
import os
import secrets
import shutil
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

from sqlalchemy import delete, func, select
from sqlalchemy.orm import Session

from tarebook.errors import TarebookError
from tarebook.settings import Settings
from tarebook.store import durable, photo_copies, pictures
from tarebook.store.database import Database
from tarebook.store.files import disk_trouble, fsync, locked, write_all, write_whole
from tarebook.store.models import PhotoRow, UploadRow, utc_now
from tarebook.store.pictures import Picture

CHUNK_BYTES = 1024 * 1024
_HASH_BYTES = 32
FORGOTTEN_AFTER = timedelta(days=30)


@dataclass(frozen=True)
class Upload:
    """A photo on its way, as its row says."""

    id: str
    garage: str
    sha256: str
    size: int
    type: str


@contextmanager
def disk_troubles() -> Iterator[None]:
    """Turns a full or failing disk into a refusal."""
    try:
        yield
    except OSError as problem:
        raise disk_trouble(problem) from problem


class Photos:
    """The photo folder and its rows."""

    def __init__(self, settings: Settings, database: Database) -> None:
        self.folder = settings.photos
        self.uploads = settings.photos / "uploads"
        self.most_bytes = settings.photo_bytes
        self.most_of_device = settings.device_photo_bytes
        self.most_pixels = settings.photo_pixels
        self.reserve = settings.reserve_bytes
        self.database = database
        self._data, self._pool = settings.data, settings.backups
        self._proven: dict[str, tuple[int, int, int]] = {}

    def announce(self, garage: str, sha256: str, size: int, kind: str) -> Upload | None:
        """The upload by which the photo comes, new or begun before; None when it is here. Raises `photo_too_large`, and
        `photo_no_room` when what is left of the disk is for weighings."""
        if size > self.most_bytes:
            raise TarebookError("photo_too_large", most=self.most_bytes)
        with self.database.write() as session:
            if self.find(session, garage, sha256):
                return None
            self._leave_room()
            row = session.get(UploadRow, (garage, sha256))
            if row is not None and (row.size, row.type) != (size, kind):
                self._forget(session, [row])
                row = None
            return _upload(row or self._begin(session, garage, sha256, size, kind))

    def check_allowance(self, garage: str, device: str, sha256: str, size: int) -> None:
        """Raises `photo_allowance` when a new photo is more than this device may still send."""
        with self.database.read() as session:
            mine = select(func.sum(PhotoRow.size)).where(PhotoRow.garage == garage, PhotoRow.sent_by == device)
            is_new = session.get(PhotoRow, (garage, sha256)) is None
            if is_new and (session.scalar(mine) or 0) + size > self.most_of_device:
                raise TarebookError("photo_allowance", most=self.most_of_device)

    def _begin(self, session: Session, garage: str, sha256: str, size: int, kind: str) -> UploadRow:
        limit = (datetime.now(UTC) - FORGOTTEN_AFTER).isoformat(timespec="milliseconds")
        old = select(UploadRow).where(UploadRow.garage == garage, UploadRow.started_at < limit)
        self._forget(session, session.scalars(old).all())
        row = UploadRow(
            garage=garage, sha256=sha256, id=secrets.token_hex(16), size=size, type=kind, started_at=utc_now()
        )
        session.add(row)
        session.flush()
        return row

    def _forget(self, session: Session, rows: Sequence[UploadRow]) -> None:
        for row in rows:
            session.delete(row)
            self._part(row.id).unlink(missing_ok=True)
        session.flush()

    def find_upload(self, session: Session, garage: str, name: str) -> Upload:
        """Raises `upload_unknown`."""
        row = session.scalar(select(UploadRow).where(UploadRow.garage == garage, UploadRow.id == name))
        if row is None:
            raise TarebookError("upload_unknown")
        return _upload(row)

    def offset(self, upload: Upload) -> int:
        """How many bytes are here."""
        try:
            return self._part(upload.id).stat().st_size
        except FileNotFoundError:
            return 0

    def append(self, upload: Upload, offset: int, piece: bytes, sent_by: str) -> int:
        """Adds a piece at `offset` and gives the new offset; the last piece completes the photo.

        Raises `upload_offset` (data: the right one), `photo_too_large`, `disk_full`, and what `pictures.inspect` and
        the hash have to say of the whole. A piece that cannot be written whole leaves nothing behind.
        """
        self._leave_room()
        with disk_troubles():
            self.uploads.mkdir(mode=0o700, parents=True, exist_ok=True)
            here = self._write(upload, offset, piece)
        if here == upload.size:
            self._complete(upload, sent_by)
        return here

    def _leave_room(self) -> None:
        if shutil.disk_usage(self._data).free < self.reserve:
            raise TarebookError("photo_no_room")

    def _write(self, upload: Upload, offset: int, piece: bytes) -> int:
        with locked(self._part(upload.id)) as handle:
            here = os.fstat(handle).st_size
            if here != offset:
                raise TarebookError("upload_offset", offset=here)
            if here + len(piece) > upload.size:
                raise TarebookError("photo_too_large", most=upload.size)
            try:
                write_all(handle, piece, here)
            except OSError:
                os.ftruncate(handle, here)
                raise
            return here + len(piece)

    def _complete(self, upload: Upload, sent_by: str) -> None:
        part = self._part(upload.id)
        try:
            picture = self._verified(part, upload)
        except TarebookError:
            with self.database.write() as session:
                self._forget(session, session.scalars(select(UploadRow).where(UploadRow.id == upload.id)).all())
            raise
        with disk_troubles():
            self._settle(part, upload.sha256)
        with self.database.write() as session:
            session.execute(delete(UploadRow).where(UploadRow.id == upload.id))
            self._record(session, upload, picture, sent_by)

    def _verified(self, part: Path, upload: Upload) -> Picture:
        if hashlib.sha256(part.read_bytes()).hexdigest() != upload.sha256:
            raise TarebookError("photo_hash_mismatch")
        return pictures.inspect(part, upload.type, self.most_pixels)

    def _settle(self, part: Path, sha256: str) -> None:
        """From part to photo: on the disk first, then under its name, then the name on the disk."""
        target = self.path(sha256)
        target.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        fsync(part)
        os.replace(part, target)
        photo_copies.damaged(target).unlink(missing_ok=True)
        fsync(target.parent)

    def _record(self, session: Session, upload: Upload, picture: Picture, sent_by: str) -> None:
        if session.get(PhotoRow, (upload.garage, upload.sha256)) is None:
            session.add(
                PhotoRow(
                    garage=upload.garage, sha256=upload.sha256, size=upload.size, type=picture.type,
                    width=picture.width, height=picture.height, sent_by=sent_by, received_at=utc_now(),
                )
            )  # fmt: skip
            durable.uncover(session, upload.garage, upload.sha256)

    def keep(self, garage: str, data: bytes, kind: str, sent_by: str) -> Picture:
        """Takes in a whole photo from the server itself, by the way a phone's comes."""
        upload = self.announce(garage, hashlib.sha256(data).hexdigest(), len(data), kind)
        if upload is not None:
            self.append(upload, self.offset(upload), data[self.offset(upload) :], sent_by)
        with self.database.read() as session:
            row = self.get(session, garage, hashlib.sha256(data).hexdigest())
            return Picture(row.type, row.width, row.height)

    def is_here(self, garage: str, data: bytes) -> bool:
        """Whether a photo with these bytes is here, complete."""
        with self.database.read() as session:
            return self.find(session, garage, hashlib.sha256(data).hexdigest()) is not None

    def find(self, session: Session, garage: str, sha256: str) -> PhotoRow | None:
        """The row of a photo whose file is there and whole too: one lost or gone bad is healed or asked for again."""
        row = session.get(PhotoRow, (garage, sha256))
        return row if row is not None and self._is_whole(sha256) else None

    def _is_whole(self, sha256: str) -> bool:
        """The hash is made when the file is first read, and when it looks otherwise than it did then."""
        if (looks := self._looks(sha256)) is None or self._proven.get(sha256) != looks:
            with disk_troubles():
                if photo_copies.healed(self._data, self._pool, sha256) is None:
                    return False
            if looks := self._looks(sha256):
                self._proven[sha256] = looks
        return True

    def _looks(self, sha256: str) -> tuple[int, int, int] | None:
        try:
            found = self.path(sha256).stat()
        except OSError:
            return None
        return found.st_size, found.st_mtime_ns, found.st_ino

    def get(self, session: Session, garage: str, sha256: str) -> PhotoRow:
        """Raises `photo_unknown`, and `photo_damaged` until the photo has come again."""
        row = self.find(session, garage, sha256)
        if row is None:
            gone_bad = photo_copies.damaged(self.path(sha256)).exists()
            raise TarebookError("photo_damaged" if gone_bad else "photo_unknown")
        return row

    def path(self, sha256: str) -> Path:
        return self.folder / sha256[:2] / sha256

    def thumb(self, sha256: str) -> bytes:
        """The small picture, made when first asked for. Its file ends with its hash, and is made anew when bad."""
        file = self.folder / sha256[:2] / f"{sha256}.thumb"
        kept = file.read_bytes() if file.exists() else b""
        small = kept[:-_HASH_BYTES]
        if hashlib.sha256(small).digest() != kept[-_HASH_BYTES:]:
            small = pictures.thumbnail(self.path(sha256))
            with disk_troubles():
                write_whole(file, small + hashlib.sha256(small).digest())
        return small

    def _part(self, name: str) -> Path:
        return self.uploads / name


def _upload(row: UploadRow) -> Upload:
    return Upload(row.id, row.garage, row.sha256, row.size, row.type)
