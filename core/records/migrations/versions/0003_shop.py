"""A shop: events, attachments, values for all, limits and templates of machines, authors, and one count of keeping."""

from typing import Any

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None


def upgrade() -> None:
    # The defaults are for the rows that are there already; the program writes every column itself.
    with op.batch_alter_table("machine") as batch:
        batch.add_column(sa.Column("limits", sa.JSON, nullable=False, server_default="{}"))
        batch.add_column(sa.Column("templates", sa.JSON, nullable=False, server_default="{}"))
    with op.batch_alter_table("trial") as batch:
        batch.add_column(sa.Column("author", sa.Text, nullable=False, server_default=""))
        batch.add_column(sa.Column("serial", sa.Integer, nullable=True))
        batch.add_column(sa.Column("gives", sa.Text, nullable=False, server_default=""))
        batch.create_index("ix_trial_serial", ["serial"])
        batch.create_index("ix_trial_state", ["state", "machine_id", "subject", "lot_id", "gives", "serial"])
    _change_setting()
    _count_what_was_kept()
    _create_event()
    _create_attachment()
    op.create_table(
        "shop_value",
        sa.Column("id", sa.Integer, nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("key", sa.Text, nullable=False),
        sa.Column("value", sa.JSON, nullable=False),
        sa.Column("author", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_shop_value"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_shop_value_key", "shop_value", ["key"])


def _change_setting() -> None:
    """Let `trial_id` be empty, for what is undone or set by hand comes from no trial; add what was not asked before.

    SQLite changes a column by making the table anew. It is written out here, because alembic's own way puts the
    constraints in any order, and a table is to be the same however old its file is.
    """
    if op.get_bind().dialect.name == "sqlite":
        op.create_table("setting_anew", *_old_columns(), *_new_columns(), *_constraints(), sqlite_autoincrement=True)
        op.execute(
            "INSERT INTO setting_anew (id, machine_id, lot_id, name, old, new, unit, since, trial_id, verified_by) "
            "SELECT id, machine_id, lot_id, name, old, new, unit, since, trial_id, verified_by FROM setting"
        )
        op.drop_table("setting")
        op.rename_table("setting_anew", "setting")
        op.create_index("ix_setting_machine_id", "setting", ["machine_id", "name"])
    else:
        op.alter_column("setting", "trial_id", existing_type=sa.Integer, nullable=True)
        for column in _new_columns():
            op.add_column("setting", column)
        op.create_foreign_key("fk_setting_undoes", "setting", "setting", ["undoes"], ["id"])
    op.create_index("ix_setting_serial", "setting", ["serial"])


def _old_columns() -> list[sa.Column[Any]]:
    return [
        sa.Column("id", sa.Integer, nullable=False),
        sa.Column("machine_id", sa.Integer, nullable=False),
        sa.Column("lot_id", sa.Integer, nullable=True),
        sa.Column("name", sa.Text, nullable=False),
        sa.Column("old", sa.Double, nullable=True),
        sa.Column("new", sa.Double, nullable=False),
        sa.Column("unit", sa.Text, nullable=False),
        sa.Column("since", sa.DateTime(timezone=True), nullable=False),
        sa.Column("trial_id", sa.Integer, nullable=True),
        sa.Column("verified_by", sa.Integer, nullable=True),
    ]


def _new_columns() -> list[sa.Column[Any]]:
    return [
        sa.Column("prediction", sa.JSON, nullable=False, server_default="{}"),
        sa.Column("undoes", sa.Integer, nullable=True),
        sa.Column("because", sa.Text, nullable=False, server_default=""),
        sa.Column("author", sa.Text, nullable=False, server_default=""),
        sa.Column("serial", sa.Integer, nullable=False, server_default="0"),
    ]


def _constraints() -> list[sa.Constraint]:
    return [
        sa.PrimaryKeyConstraint("id", name="pk_setting"),
        sa.ForeignKeyConstraint(["machine_id"], ["machine.id"], name="fk_setting_machine_id"),
        sa.ForeignKeyConstraint(["lot_id"], ["lot.id"], name="fk_setting_lot_id"),
        sa.ForeignKeyConstraint(["trial_id"], ["trial.id"], name="fk_setting_trial_id"),
        sa.ForeignKeyConstraint(["verified_by"], ["trial.id"], name="fk_setting_verified_by"),
        sa.ForeignKeyConstraint(["undoes"], ["setting.id"], name="fk_setting_undoes"),
    ]


def _count_what_was_kept() -> None:
    """Number the kept trials by when they were kept, and settings as their trials."""
    connection = op.get_bind()
    kept = connection.execute(sa.text("SELECT id FROM trial WHERE kept_at IS NOT NULL ORDER BY kept_at, id")).scalars()
    numbered = [{"number": number, "id": trial_id} for number, trial_id in enumerate(kept, start=1)]
    if numbered:
        connection.execute(sa.text("UPDATE trial SET serial = :number WHERE id = :id"), numbered)
    given: dict[int, list[str]] = {}
    for trial_id, name in connection.execute(sa.text("SELECT trial_id, name FROM result")):
        given.setdefault(trial_id, []).append(name)
    named = [{"names": "\n".join(sorted(names)), "id": trial_id} for trial_id, names in given.items()]
    if named:
        connection.execute(sa.text("UPDATE trial SET gives = :names WHERE id = :id"), named)
    connection.execute(
        sa.text("UPDATE setting SET serial = (SELECT serial FROM trial WHERE trial.id = setting.trial_id)")
    )


def _create_event() -> None:
    op.create_table(
        "event",
        sa.Column("id", sa.Integer, nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("kind", sa.Text, nullable=False),
        sa.Column("machine_id", sa.Integer, nullable=True),
        sa.Column("lot_id", sa.Integer, nullable=True),
        sa.Column("instrument_id", sa.Integer, nullable=True),
        sa.Column("trial_id", sa.Integer, nullable=True),
        sa.Column("detail", sa.JSON, nullable=False),
        sa.Column("note", sa.Text, nullable=False),
        sa.Column("author", sa.Text, nullable=False),
        sa.Column("takes_back", sa.Integer, nullable=True),
        sa.Column("serial", sa.Integer, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_event"),
        sa.ForeignKeyConstraint(["machine_id"], ["machine.id"], name="fk_event_machine_id"),
        sa.ForeignKeyConstraint(["lot_id"], ["lot.id"], name="fk_event_lot_id"),
        sa.ForeignKeyConstraint(["instrument_id"], ["instrument.id"], name="fk_event_instrument_id"),
        sa.ForeignKeyConstraint(["trial_id"], ["trial.id"], name="fk_event_trial_id"),
        sa.ForeignKeyConstraint(["takes_back"], ["event.id"], name="fk_event_takes_back"),
        sqlite_autoincrement=True,
    )
    for column in ("machine_id", "lot_id", "instrument_id", "trial_id", "serial"):
        op.create_index(f"ix_event_{column}", "event", [column])


def _create_attachment() -> None:
    op.create_table(
        "attachment",
        sa.Column("id", sa.Integer, nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("machine_id", sa.Integer, nullable=True),
        sa.Column("lot_id", sa.Integer, nullable=True),
        sa.Column("trial_id", sa.Integer, nullable=True),
        sa.Column("event_id", sa.Integer, nullable=True),
        sa.Column("name", sa.Text, nullable=False),
        sa.Column("mime", sa.Text, nullable=False),
        sa.Column("size", sa.Integer, nullable=False),
        sa.Column("note", sa.Text, nullable=False),
        sa.Column("author", sa.Text, nullable=False),
        # Last, so that reading the columns before it does not walk through the pages of the bytes.
        sa.Column("content", sa.LargeBinary, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_attachment"),
        sa.ForeignKeyConstraint(["machine_id"], ["machine.id"], name="fk_attachment_machine_id"),
        sa.ForeignKeyConstraint(["lot_id"], ["lot.id"], name="fk_attachment_lot_id"),
        sa.ForeignKeyConstraint(["trial_id"], ["trial.id"], name="fk_attachment_trial_id"),
        sa.ForeignKeyConstraint(["event_id"], ["event.id"], name="fk_attachment_event_id"),
        sqlite_autoincrement=True,
    )
    for column in ("machine_id", "lot_id", "trial_id", "event_id"):
        op.create_index(f"ix_attachment_{column}", "attachment", [column])
