"""Runs the migrations on the connection `store.migrate` hands over, inside its transaction."""

from alembic import context

from tarebook.store.models import Base

context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=Base.metadata,
    render_as_batch=True,
    compare_type=True,
)
context.run_migrations()
