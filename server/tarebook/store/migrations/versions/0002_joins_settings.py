"""Let a phone join by a short code and a yes on the home computer; keep what the server chose once"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.execute("DELETE FROM pair_code")  # none is good for longer than it takes to start the new program
    with op.batch_alter_table("pair_code") as batch_op:
        batch_op.add_column(sa.Column("short_hash", sa.String(length=64), nullable=True))
        batch_op.add_column(sa.Column("here", sa.Boolean(), nullable=False))
        batch_op.add_column(sa.Column("made_at", sa.String(length=32), nullable=False))
        batch_op.create_unique_constraint("pair_code_short_hash", ["short_hash"])
    op.create_table(
        "pair_join",
        sa.Column("garage", sa.String(length=80), nullable=False),
        sa.Column("id", sa.String(length=80), nullable=False),
        sa.Column("secret_hash", sa.String(length=64), nullable=False),
        sa.Column("code", sa.String(length=64), nullable=False),
        sa.Column("name", sa.String(length=80), nullable=False),
        sa.Column("wanted", sa.String(length=80), nullable=True),
        sa.Column("words", sa.String(length=40), nullable=False),
        sa.Column("asked_at", sa.String(length=32), nullable=False),
        sa.Column("good_until", sa.String(length=32), nullable=False),
        sa.Column("confirmed", sa.Boolean(), nullable=True),
        sa.Column("given_at", sa.String(length=32), nullable=True),
        sa.ForeignKeyConstraint(["garage"], ["garage.id"], ondelete="CASCADE"),
        sa.PrimaryKeyConstraint("garage", "id"),
        sa.UniqueConstraint("secret_hash"),
    )
    op.create_table(
        "setting",
        sa.Column("name", sa.String(length=80), nullable=False),
        sa.Column("value", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("name"),
    )
