"""What a maker states of a lot, counted changes of lots and instruments, settings in force, indexes for series."""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None


def upgrade() -> None:
    # The defaults are for the rows that are there already; the program writes every column itself.
    with op.batch_alter_table("lot") as batch:
        batch.add_column(sa.Column("maker", sa.Text, nullable=False, server_default=""))
        batch.add_column(sa.Column("batch", sa.Text, nullable=False, server_default=""))
        batch.add_column(sa.Column("nominal_diameter_mm", sa.Double, nullable=True))
        batch.add_column(sa.Column("claimed_tolerance_mm", sa.Double, nullable=True))
        batch.add_column(sa.Column("spool_mass_g", sa.Double, nullable=True))
        batch.add_column(sa.Column("version", sa.Integer, nullable=False, server_default="1"))
    with op.batch_alter_table("instrument") as batch:
        batch.add_column(sa.Column("version", sa.Integer, nullable=False, server_default="1"))
    with op.batch_alter_table("trial") as batch:
        batch.drop_index("ix_trial_machine_id")
        batch.drop_index("ix_trial_lot_id")
        batch.create_index("ix_trial_machine_id", ["machine_id", "state", "kept_at", "lot_id"])
        batch.create_index("ix_trial_lot_id", ["lot_id", "state", "kept_at", "machine_id"])
        batch.create_index("ix_trial_instrument_id", ["instrument_id", "state", "kept_at"])
    op.create_table(
        "setting",
        sa.Column("id", sa.Integer, nullable=False),
        sa.Column("machine_id", sa.Integer, nullable=False),
        sa.Column("lot_id", sa.Integer, nullable=True),
        sa.Column("name", sa.Text, nullable=False),
        sa.Column("old", sa.Double, nullable=True),
        sa.Column("new", sa.Double, nullable=False),
        sa.Column("unit", sa.Text, nullable=False),
        sa.Column("since", sa.DateTime(timezone=True), nullable=False),
        sa.Column("trial_id", sa.Integer, nullable=False),
        sa.Column("verified_by", sa.Integer, nullable=True),
        sa.PrimaryKeyConstraint("id", name="pk_setting"),
        sa.ForeignKeyConstraint(["machine_id"], ["machine.id"], name="fk_setting_machine_id"),
        sa.ForeignKeyConstraint(["lot_id"], ["lot.id"], name="fk_setting_lot_id"),
        sa.ForeignKeyConstraint(["trial_id"], ["trial.id"], name="fk_setting_trial_id"),
        sa.ForeignKeyConstraint(["verified_by"], ["trial.id"], name="fk_setting_verified_by"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_setting_machine_id", "setting", ["machine_id", "name"])
