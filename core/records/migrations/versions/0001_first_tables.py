"""The first tables: machine, lot, instrument, trial, result, used."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None


def upgrade() -> None:
    _create_machine()
    _create_lot()
    _create_instrument()
    _create_trial()
    _create_result()
    _create_used()


def _create_machine() -> None:
    op.create_table(
        "machine",
        sa.Column("id", sa.Integer, nullable=False),
        sa.Column("name", sa.Text, nullable=False),
        sa.Column("motion", sa.Text, nullable=False),
        sa.Column("travel_x_mm", sa.Double, nullable=False),
        sa.Column("travel_y_mm", sa.Double, nullable=False),
        sa.Column("travel_z_mm", sa.Double, nullable=False),
        sa.Column("drives", sa.JSON, nullable=False),
        sa.Column("note", sa.Text, nullable=False),
        sa.Column("version", sa.Integer, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_machine"),
        sa.UniqueConstraint("name", name="uq_machine_name"),
    )


def _create_lot() -> None:
    op.create_table(
        "lot",
        sa.Column("id", sa.Integer, nullable=False),
        sa.Column("name", sa.Text, nullable=False),
        sa.Column("material", sa.Text, nullable=False),
        sa.Column("colour", sa.Text, nullable=False),
        sa.Column("note", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_lot"),
        sa.UniqueConstraint("name", name="uq_lot_name"),
    )


def _create_instrument() -> None:
    op.create_table(
        "instrument",
        sa.Column("id", sa.Integer, nullable=False),
        sa.Column("name", sa.Text, nullable=False),
        sa.Column("kind", sa.Text, nullable=False),
        sa.Column("resolution_mm", sa.Double, nullable=False),
        sa.Column("u_outside_zero_mm", sa.Double, nullable=False),
        sa.Column("u_inside_zero_mm", sa.Double, nullable=False),
        sa.Column("u_scale_ratio", sa.Double, nullable=False),
        sa.Column("sd_hand_mm", sa.Double, nullable=True),
        sa.Column("sd_hand_dof", sa.Integer, nullable=True),
        sa.Column("note", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_instrument"),
        sa.UniqueConstraint("name", name="uq_instrument_name"),
    )


def _create_trial() -> None:
    op.create_table(
        "trial",
        sa.Column("id", sa.Integer, nullable=False),
        sa.Column("subject", sa.Text, nullable=False),
        sa.Column("machine_id", sa.Integer, nullable=True),
        sa.Column("lot_id", sa.Integer, nullable=True),
        sa.Column("instrument_id", sa.Integer, nullable=True),
        sa.Column("state", sa.Text, nullable=False),
        # What an open trial is open for: the database itself allows one each.
        sa.Column("open_as", sa.Text, nullable=True),
        sa.Column("readings", sa.JSON, nullable=False),
        sa.Column("conditions", sa.JSON, nullable=False),
        sa.Column("verdict", sa.JSON, nullable=False),
        sa.Column("method", sa.Text, nullable=False),
        sa.Column("note", sa.Text, nullable=False),
        sa.Column("started_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("kept_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("withdrawn_because", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_trial"),
        sa.ForeignKeyConstraint(["machine_id"], ["machine.id"], name="fk_trial_machine_id"),
        sa.ForeignKeyConstraint(["lot_id"], ["lot.id"], name="fk_trial_lot_id"),
        sa.ForeignKeyConstraint(["instrument_id"], ["instrument.id"], name="fk_trial_instrument_id"),
        sa.UniqueConstraint("open_as", name="uq_trial_open_as"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_trial_machine_id", "trial", ["machine_id"])
    op.create_index("ix_trial_lot_id", "trial", ["lot_id"])


def _create_result() -> None:
    op.create_table(
        "result",
        sa.Column("id", sa.Integer, nullable=False),
        sa.Column("trial_id", sa.Integer, nullable=False),
        sa.Column("name", sa.Text, nullable=False),
        sa.Column("value", sa.Double, nullable=False),
        sa.Column("u", sa.Double, nullable=False),
        sa.Column("dof", sa.Double, nullable=False),
        sa.Column("unit", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_result"),
        sa.ForeignKeyConstraint(["trial_id"], ["trial.id"], name="fk_result_trial_id"),
        sa.UniqueConstraint("trial_id", "name", name="uq_result_trial_id"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_result_name", "result", ["name"])


def _create_used() -> None:
    op.create_table(
        "used",
        sa.Column("id", sa.Integer, nullable=False),
        sa.Column("trial_id", sa.Integer, nullable=False),
        sa.Column("used_id", sa.Integer, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_used"),
        sa.ForeignKeyConstraint(["trial_id"], ["trial.id"], name="fk_used_trial_id"),
        sa.ForeignKeyConstraint(["used_id"], ["trial.id"], name="fk_used_used_id"),
        sa.UniqueConstraint("trial_id", "used_id", name="uq_used_trial_id"),
    )
    op.create_index("ix_used_used_id", "used", ["used_id"])
