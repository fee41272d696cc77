"""Run the changes on the connection that was handed over, inside its transaction."""

from alembic import context

from core.records.tables import Base

context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=Base.metadata,
    render_as_batch=True,  # SQLite cannot alter a column in place
)
with context.begin_transaction():
    context.run_migrations()
