"""Give every garage the key of its receipts, and say of every entry whether another device sent it than it names"""

from __future__ import annotations

import secrets

import sqlalchemy as sa
from alembic import op

from tarebook.journal.entries import read

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None

_GARAGE = sa.table(
    "garage", sa.column("id", sa.String), sa.column("receipt_key", sa.LargeBinary), sa.column("epoch", sa.String)
)
_ENTRY = sa.table(
    "entry", sa.column("garage", sa.String), sa.column("number", sa.BigInteger), sa.column("text", sa.LargeBinary),
    sa.column("sent_by", sa.String), sa.column("sent_for", sa.String),
)  # fmt: skip


def upgrade() -> None:
    # With a default, for SQLite then only adds the column; to make the table anew would empty all that belong to it.
    op.add_column("garage", sa.Column("receipt_key", sa.LargeBinary(), nullable=False, server_default=""))
    op.add_column("entry", sa.Column("sent_for", sa.String(length=80), nullable=True))
    connection = op.get_bind()
    for name in connection.scalars(sa.select(_GARAGE.c.id)).all():
        # By a new epoch phones read the journal once more, and get the receipts of what they have.
        given = {"receipt_key": secrets.token_bytes(32), "epoch": secrets.token_hex(8)}
        connection.execute(sa.update(_GARAGE).where(_GARAGE.c.id == name).values(given))
    columns = sa.select(_ENTRY.c.garage, _ENTRY.c.number, _ENTRY.c.text, _ENTRY.c.sent_by)
    rows = connection.execute(columns.execution_options(yield_per=1000))
    others = [found for row in rows if (found := _sent_for_another(row))]
    for garage, number, device in others:
        here = _ENTRY.c.garage == garage, _ENTRY.c.number == number
        connection.execute(sa.update(_ENTRY).where(*here).values(sent_for=device))


def _sent_for_another(row: sa.Row) -> tuple[str, int, str] | None:
    entry = read(row.text.decode("utf-8"))
    return None if entry is None or entry.device == row.sent_by else (row.garage, row.number, entry.device)
