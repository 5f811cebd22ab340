"""Runs the migrations on the connection `store.migrate` hands over, inside its transaction."""

from alembic import context

from tarebook.store.models import db

context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=db.metadata,
    render_as_batch=True,
    compare_type=True,
)
context.run_migrations()
