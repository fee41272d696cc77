"""${message}."""

import sqlalchemy as sa
from alembic import op

revision = ${repr(up_revision)}
down_revision = ${repr(down_revision)}
branch_labels = None
depends_on = None


# Where SQLite makes the table trial or result anew, keep its ids from being used twice:
# op.batch_alter_table("trial", table_kwargs={"sqlite_autoincrement": True})
def upgrade() -> None:
    ${upgrades if upgrades else "pass"}
