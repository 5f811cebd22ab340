"""Make the tables of the journal, devices and photos"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "garage",
        sa.Column("id", sa.String(length=80), nullable=False),
        sa.Column("epoch", sa.String(length=80), nullable=False),
        sa.Column("head", sa.BigInteger(), nullable=False),
        sa.Column("durable", sa.BigInteger(), nullable=True),
        sa.Column("folded_by", sa.String(length=64), nullable=False),
        sa.Column("made_at", sa.String(length=32), nullable=False),
        sa.PrimaryKeyConstraint("id"),
    )
    op.create_table(
        "device",
        sa.Column("garage", sa.String(length=80), nullable=False),
        sa.Column("id", sa.String(length=80), nullable=False),
        sa.Column("name", sa.String(length=80), nullable=False),
        sa.Column("token_hash", sa.String(length=64), nullable=False),
        sa.Column("paired_at", sa.String(length=32), nullable=False),
        sa.Column("last_seen", sa.String(length=32), nullable=False),
        sa.Column("revoked_at", sa.String(length=32), nullable=True),
        sa.ForeignKeyConstraint(["garage"], ["garage.id"], ondelete="CASCADE"),
        sa.PrimaryKeyConstraint("garage", "id"),
        sa.UniqueConstraint("token_hash"),
    )
    op.create_table(
        "entry",
        sa.Column("garage", sa.String(length=80), nullable=False),
        sa.Column("number", sa.BigInteger(), autoincrement=False, nullable=False),
        sa.Column("id", sa.String(length=80), nullable=False),
        sa.Column("hash", sa.String(length=64), nullable=False),
        sa.Column("mark", sa.String(length=64), nullable=False),
        sa.Column("text", sa.LargeBinary(), nullable=False),
        sa.Column("record", sa.String(length=80), nullable=True),
        sa.Column("sent_by", sa.String(length=80), nullable=False),
        sa.Column("intake", sa.String(length=20), nullable=True),
        sa.Column("reason", sa.String(length=20), nullable=True),
        sa.Column("received_at", sa.String(length=32), nullable=False),
        sa.ForeignKeyConstraint(["garage"], ["garage.id"], ondelete="CASCADE"),
        sa.PrimaryKeyConstraint("garage", "number"),
        sa.UniqueConstraint("garage", "id"),
    )
    with op.batch_alter_table("entry", schema=None) as batch_op:
        batch_op.create_index("entry_aside", ["garage", "reason"], unique=False)
        batch_op.create_index("entry_of_record", ["garage", "record"], unique=False)

    op.create_table(
        "pair_code",
        sa.Column("garage", sa.String(length=80), nullable=False),
        sa.Column("hash", sa.String(length=64), nullable=False),
        sa.Column("good_until", sa.String(length=32), nullable=False),
        sa.Column("used_at", sa.String(length=32), nullable=True),
        sa.ForeignKeyConstraint(["garage"], ["garage.id"], ondelete="CASCADE"),
        sa.PrimaryKeyConstraint("garage", "hash"),
    )
    op.create_table(
        "photo",
        sa.Column("garage", sa.String(length=80), nullable=False),
        sa.Column("sha256", sa.String(length=64), nullable=False),
        sa.Column("size", sa.BigInteger(), nullable=False),
        sa.Column("type", sa.String(length=20), nullable=False),
        sa.Column("width", sa.Integer(), nullable=False),
        sa.Column("height", sa.Integer(), nullable=False),
        sa.Column("sent_by", sa.String(length=80), nullable=False),
        sa.Column("received_at", sa.String(length=32), nullable=False),
        sa.ForeignKeyConstraint(["garage"], ["garage.id"], ondelete="CASCADE"),
        sa.PrimaryKeyConstraint("garage", "sha256"),
    )
    op.create_table(
        "record",
        sa.Column("garage", sa.String(length=80), nullable=False),
        sa.Column("id", sa.String(length=80), nullable=False),
        sa.Column("kind", sa.String(length=40), nullable=False),
        sa.Column("state", sa.Text(), nullable=False),
        sa.Column("standing", sa.Text(), nullable=False),
        sa.Column("deleted", sa.Boolean(), nullable=False),
        sa.Column("disputed", sa.Boolean(), nullable=False),
        sa.ForeignKeyConstraint(["garage"], ["garage.id"], ondelete="CASCADE"),
        sa.PrimaryKeyConstraint("garage", "id"),
    )
    with op.batch_alter_table("record", schema=None) as batch_op:
        batch_op.create_index("record_of_kind", ["garage", "kind"], unique=False)

    op.create_table(
        "upload",
        sa.Column("garage", sa.String(length=80), nullable=False),
        sa.Column("sha256", sa.String(length=64), nullable=False),
        sa.Column("id", sa.String(length=80), nullable=False),
        sa.Column("size", sa.BigInteger(), nullable=False),
        sa.Column("type", sa.String(length=20), nullable=False),
        sa.Column("started_at", sa.String(length=32), nullable=False),
        sa.ForeignKeyConstraint(["garage"], ["garage.id"], ondelete="CASCADE"),
        sa.PrimaryKeyConstraint("garage", "sha256"),
        sa.UniqueConstraint("id"),
    )
    op.create_table(
        "verdict",
        sa.Column("garage", sa.String(length=80), nullable=False),
        sa.Column("entry", sa.String(length=80), nullable=False),
        sa.Column("take", sa.Boolean(), nullable=False),
        sa.ForeignKeyConstraint(["garage"], ["garage.id"], ondelete="CASCADE"),
        sa.PrimaryKeyConstraint("garage", "entry"),
    )
    op.create_table(
        "waiting",
        sa.Column("garage", sa.String(length=80), nullable=False),
        sa.Column("needs", sa.String(length=80), nullable=False),
        sa.Column("entry", sa.String(length=80), nullable=False),
        sa.ForeignKeyConstraint(["garage"], ["garage.id"], ondelete="CASCADE"),
        sa.PrimaryKeyConstraint("garage", "needs", "entry"),
    )
    with op.batch_alter_table("waiting", schema=None) as batch_op:
        batch_op.create_index("waiting_entry", ["garage", "entry"], unique=False)
