"""The tables. The garage is the shard key of every one of them but `setting`, which is about the server itself.

`entry` is the journal and the only truth. `record`, `waiting` and `verdict` are its fold, written in the same
transaction and made again by `tarebook rebuild`. Moments are ISO 8601 text in UTC; JSON is text, because a
database's own JSON type refuses characters that people may type.
"""

from __future__ import annotations

from datetime import UTC, datetime
from typing import TYPE_CHECKING

from flask_sqlalchemy import SQLAlchemy
from sqlalchemy import BigInteger, ForeignKey, Index, LargeBinary, String, Text, UniqueConstraint
from sqlalchemy.orm import DeclarativeBase, Mapped, mapped_column

ID = String(80)
HASH = String(64)
MOMENT = String(32)


def utc_now() -> str:
    return datetime.now(UTC).isoformat(timespec="milliseconds")


class Base(DeclarativeBase):
    """What every table is made from."""


db = SQLAlchemy(model_class=Base, disable_autonaming=True)

if TYPE_CHECKING:
    Table = Base  # the extension builds its class while running, which no type checker can follow
else:
    Table = db.Model


def _garage() -> Mapped[str]:
    return mapped_column(ID, ForeignKey("garage.id", ondelete="CASCADE"), primary_key=True)


class GarageRow(Table):
    """`head`: the number of the last entry; the row is locked first by whoever writes. `epoch`: new after a restore."""

    __tablename__ = "garage"
    id: Mapped[str] = mapped_column(ID, primary_key=True)
    epoch: Mapped[str] = mapped_column(ID)
    head: Mapped[int] = mapped_column(BigInteger, default=0)
    durable: Mapped[int | None] = mapped_column(BigInteger, default=None)  # the last number in a verified backup
    folded_by: Mapped[str] = mapped_column(HASH)  # fingerprint of the rules that made the fold
    made_at: Mapped[str] = mapped_column(MOMENT)
    receipt_key: Mapped[bytes] = mapped_column(LargeBinary)  # of this garage's receipts; sent to nobody


class EntryRow(Table):
    """`text`: the exact bytes. `sent_by`: the author, the device that first sent it for all that is proven. `sent_for`:
    the device inside the entry, where that is another. `intake`: a reason known only on arrival. `reason`: why it is
    set aside now, or null.

    `mark`: the hash of this entry, its `intake` and the mark before it, so of the whole journal up to here.
    """

    __tablename__ = "entry"
    garage: Mapped[str] = _garage()
    number: Mapped[int] = mapped_column(BigInteger, primary_key=True, autoincrement=False)
    id: Mapped[str] = mapped_column(ID)
    hash: Mapped[str] = mapped_column(HASH)
    mark: Mapped[str] = mapped_column(HASH)
    text: Mapped[bytes] = mapped_column(LargeBinary)
    record: Mapped[str | None] = mapped_column(ID)
    sent_by: Mapped[str] = mapped_column(ID)
    sent_for: Mapped[str | None] = mapped_column(ID)
    intake: Mapped[str | None] = mapped_column(String(20))
    reason: Mapped[str | None] = mapped_column(String(20))
    received_at: Mapped[str] = mapped_column(MOMENT)
    __table_args__ = (
        UniqueConstraint("garage", "id"),
        Index("entry_of_record", "garage", "record"),
        Index("entry_aside", "garage", "reason"),
    )


class RecordRow(Table):
    """`state`: see `journal.state`. `standing`: the values as everyone else sees them. `disputed`: open conflicts."""

    __tablename__ = "record"
    garage: Mapped[str] = _garage()
    id: Mapped[str] = mapped_column(ID, primary_key=True)
    kind: Mapped[str] = mapped_column(String(40))
    state: Mapped[str] = mapped_column(Text)
    standing: Mapped[str] = mapped_column(Text)
    deleted: Mapped[bool]
    disputed: Mapped[bool]
    __table_args__ = (Index("record_of_kind", "garage", "kind"),)


class WaitingRow(Table):
    """`entry` waits for `needs`: an entry that is not settled yet, or a record that is not there."""

    __tablename__ = "waiting"
    garage: Mapped[str] = _garage()
    needs: Mapped[str] = mapped_column(ID, primary_key=True)
    entry: Mapped[str] = mapped_column(ID, primary_key=True)
    __table_args__ = (Index("waiting_entry", "garage", "entry"),)


class VerdictRow(Table):
    """What a person decided about an entry set aside."""

    __tablename__ = "verdict"
    garage: Mapped[str] = _garage()
    entry: Mapped[str] = mapped_column(ID, primary_key=True)
    take: Mapped[bool]


class DeviceRow(Table):
    """A paired app. Only the hash of its token is kept."""

    __tablename__ = "device"
    garage: Mapped[str] = _garage()
    id: Mapped[str] = mapped_column(ID, primary_key=True)
    name: Mapped[str] = mapped_column(String(80))
    token_hash: Mapped[str] = mapped_column(HASH, unique=True)
    paired_at: Mapped[str] = mapped_column(MOMENT)
    last_seen: Mapped[str] = mapped_column(MOMENT)
    revoked_at: Mapped[str | None] = mapped_column(MOMENT)


class PairCodeRow(Table):
    """An invitation, by the hashes of its codes: the full one, and the short one that is typed. `here`: only for a
    browser on this computer, which needs no second word."""

    __tablename__ = "pair_code"
    garage: Mapped[str] = _garage()
    hash: Mapped[str] = mapped_column(HASH, primary_key=True)
    short_hash: Mapped[str | None] = mapped_column(HASH, unique=True)
    here: Mapped[bool]
    made_at: Mapped[str] = mapped_column(MOMENT)
    good_until: Mapped[str] = mapped_column(MOMENT)
    used_at: Mapped[str | None] = mapped_column(MOMENT)


class PairJoinRow(Table):
    """A device that had the right code and waits for a yes on the home computer. `code`: its invitation's hash."""

    __tablename__ = "pair_join"
    garage: Mapped[str] = _garage()
    id: Mapped[str] = mapped_column(ID, primary_key=True)
    secret_hash: Mapped[str] = mapped_column(HASH, unique=True)
    code: Mapped[str] = mapped_column(HASH)
    name: Mapped[str] = mapped_column(String(80))
    wanted: Mapped[str | None] = mapped_column(ID)  # the name its app had before
    words: Mapped[str] = mapped_column(String(40))
    asked_at: Mapped[str] = mapped_column(MOMENT)
    good_until: Mapped[str] = mapped_column(MOMENT)
    confirmed: Mapped[bool | None]  # null: nobody has said yet
    given_at: Mapped[str | None] = mapped_column(MOMENT)


class SettingRow(Table):
    """What the server has chosen once and must not forget; see `store.house`."""

    __tablename__ = "setting"
    name: Mapped[str] = mapped_column(ID, primary_key=True)
    value: Mapped[str] = mapped_column(Text)


class PhotoRow(Table):
    """A photo whose bytes are here, complete and verified."""

    __tablename__ = "photo"
    garage: Mapped[str] = _garage()
    sha256: Mapped[str] = mapped_column(HASH, primary_key=True)
    size: Mapped[int] = mapped_column(BigInteger)
    type: Mapped[str] = mapped_column(String(20))
    width: Mapped[int]
    height: Mapped[int]
    sent_by: Mapped[str] = mapped_column(ID)
    received_at: Mapped[str] = mapped_column(MOMENT)


class UploadRow(Table):
    """A photo on its way; its bytes so far are a file named by `id`."""

    __tablename__ = "upload"
    garage: Mapped[str] = _garage()
    sha256: Mapped[str] = mapped_column(HASH, primary_key=True)
    id: Mapped[str] = mapped_column(ID, unique=True)
    size: Mapped[int] = mapped_column(BigInteger)
    type: Mapped[str] = mapped_column(String(20))
    started_at: Mapped[str] = mapped_column(MOMENT)
