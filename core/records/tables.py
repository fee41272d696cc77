"""The tables, of the kinds of columns in `columns`.

They are made by `migrations` alone; what only SQLite needs (ids that are never used twice) is said only there, so that
importing this file loads no dialect.
"""

from __future__ import annotations

from datetime import datetime
from typing import Any

from sqlalchemy import ForeignKey, Index, MetaData, UniqueConstraint
from sqlalchemy.orm import DeclarativeBase, Mapped, mapped_column

from core.records.columns import Content, JsonObject, JsonObjects, MotionText, PlainText, Real, StateText, UtcTime
from core.records.rows import Motion, TrialState

# Named constraints, so that later migrations can drop them.
NAMES = {
    "ix": "ix_%(column_0_label)s",
    "uq": "uq_%(table_name)s_%(column_0_name)s",
    "fk": "fk_%(table_name)s_%(column_0_name)s",
    "pk": "pk_%(table_name)s",
}


class Base(DeclarativeBase):
    """All tables."""

    metadata = MetaData(naming_convention=NAMES)
    type_annotation_map = {
        str: PlainText,
        float: Real,
        datetime: UtcTime,
        bytes: Content,
        Motion: MotionText,
        TrialState: StateText,
    }


class NamedRow(Base):
    """What has a name that is given once; `version` counts its changes, so that a stale edit is noticed."""

    __abstract__ = True

    id: Mapped[int] = mapped_column(primary_key=True)
    name: Mapped[str] = mapped_column(unique=True)
    version: Mapped[int]


class MachineRow(NamedRow):
    """A printer."""

    __tablename__ = "machine"

    motion: Mapped[Motion]
    travel_x_mm: Mapped[float]
    travel_y_mm: Mapped[float]
    travel_z_mm: Mapped[float]
    drives: Mapped[dict[str, Any]] = mapped_column(JsonObject)
    note: Mapped[str]
    limits: Mapped[dict[str, Any]] = mapped_column(JsonObject)
    templates: Mapped[dict[str, Any]] = mapped_column(JsonObject)


class LotRow(NamedRow):
    """Filament of one maker, colour and batch."""

    __tablename__ = "lot"

    material: Mapped[str]
    colour: Mapped[str]
    note: Mapped[str]
    maker: Mapped[str]
    batch: Mapped[str]
    nominal_diameter_mm: Mapped[float | None]
    claimed_tolerance_mm: Mapped[float | None]
    spool_mass_g: Mapped[float | None]


class InstrumentRow(NamedRow):
    """A length instrument with what its last check gave."""

    __tablename__ = "instrument"

    kind: Mapped[str]
    resolution_mm: Mapped[float]
    u_outside_zero_mm: Mapped[float]
    u_inside_zero_mm: Mapped[float]
    u_scale_ratio: Mapped[float]
    sd_hand_mm: Mapped[float | None]
    sd_hand_dof: Mapped[int | None]
    note: Mapped[str]


class TrialRow(Base):
    """A trial: readings as entered, and what was decided.

    `open_as` is empty unless the trial is open, and unique. `gives` are the sorted names of its results, one a line:
    written when it is kept, so that an index alone tells which trial of a machine is the newest of what.
    """

    __tablename__ = "trial"

    id: Mapped[int] = mapped_column(primary_key=True)
    subject: Mapped[str]
    machine_id: Mapped[int | None] = mapped_column(ForeignKey("machine.id"))
    lot_id: Mapped[int | None] = mapped_column(ForeignKey("lot.id"))
    instrument_id: Mapped[int | None] = mapped_column(ForeignKey("instrument.id"))
    state: Mapped[TrialState]
    open_as: Mapped[str | None] = mapped_column(unique=True)
    readings: Mapped[dict[str, Any]] = mapped_column(JsonObject)
    conditions: Mapped[dict[str, Any]] = mapped_column(JsonObject)
    verdict: Mapped[tuple[dict[str, Any], ...]] = mapped_column(JsonObjects)
    method: Mapped[str]
    note: Mapped[str]
    started_at: Mapped[datetime]
    kept_at: Mapped[datetime | None]
    withdrawn_because: Mapped[str]
    author: Mapped[str]
    serial: Mapped[int | None] = mapped_column(index=True)
    gives: Mapped[str]

    # Each answers a series by itself, the last one the board: a row with its readings is not touched.
    __table_args__ = (
        Index(None, "machine_id", "state", "kept_at", "lot_id"),
        Index(None, "lot_id", "state", "kept_at", "machine_id"),
        Index(None, "instrument_id", "state", "kept_at"),
        Index(None, "state", "machine_id", "subject", "lot_id", "gives", "serial"),
    )


class ResultRow(Base):
    """One estimate of a kept trial. Ids grow in the order of keeping, whatever the clock says."""

    __tablename__ = "result"

    id: Mapped[int] = mapped_column(primary_key=True)
    trial_id: Mapped[int] = mapped_column(ForeignKey("trial.id"))
    name: Mapped[str] = mapped_column(index=True)
    value: Mapped[float]
    u: Mapped[float]
    dof: Mapped[float]
    unit: Mapped[str]

    __table_args__ = (UniqueConstraint("trial_id", "name"),)


class UsedRow(Base):
    """That a kept trial relied on the results of an earlier one."""

    __tablename__ = "used"

    id: Mapped[int] = mapped_column(primary_key=True)
    trial_id: Mapped[int] = mapped_column(ForeignKey("trial.id"))
    used_id: Mapped[int] = mapped_column(ForeignKey("trial.id"), index=True)

    __table_args__ = (UniqueConstraint("trial_id", "used_id"),)


class SettingRow(Base):
    """A setting that was put in force. Ids grow in the order of keeping, whatever the clock says."""

    __tablename__ = "setting"

    id: Mapped[int] = mapped_column(primary_key=True)
    machine_id: Mapped[int] = mapped_column(ForeignKey("machine.id"))
    lot_id: Mapped[int | None] = mapped_column(ForeignKey("lot.id"))
    name: Mapped[str]
    old: Mapped[float | None]
    new: Mapped[float]
    unit: Mapped[str]
    since: Mapped[datetime]
    trial_id: Mapped[int | None] = mapped_column(ForeignKey("trial.id"))
    verified_by: Mapped[int | None] = mapped_column(ForeignKey("trial.id"))
    prediction: Mapped[dict[str, Any]] = mapped_column(JsonObject)
    undoes: Mapped[int | None] = mapped_column(ForeignKey("setting.id"))
    because: Mapped[str]
    author: Mapped[str]
    serial: Mapped[int] = mapped_column(index=True)

    __table_args__ = (Index(None, "machine_id", "name"),)


class EventRow(Base):
    """What happened, was looked at or skipped. `serial` counts with trials and settings."""

    __tablename__ = "event"

    id: Mapped[int] = mapped_column(primary_key=True)
    at: Mapped[datetime]
    kind: Mapped[str]
    machine_id: Mapped[int | None] = mapped_column(ForeignKey("machine.id"), index=True)
    lot_id: Mapped[int | None] = mapped_column(ForeignKey("lot.id"), index=True)
    instrument_id: Mapped[int | None] = mapped_column(ForeignKey("instrument.id"), index=True)
    trial_id: Mapped[int | None] = mapped_column(ForeignKey("trial.id"), index=True)
    detail: Mapped[dict[str, Any]] = mapped_column(JsonObject)
    note: Mapped[str]
    author: Mapped[str]
    takes_back: Mapped[int | None] = mapped_column(ForeignKey("event.id"))
    serial: Mapped[int] = mapped_column(index=True)


class AttachmentRow(Base):
    """A small file with what it belongs to; `content` is read only when asked for."""

    __tablename__ = "attachment"

    id: Mapped[int] = mapped_column(primary_key=True)
    at: Mapped[datetime]
    machine_id: Mapped[int | None] = mapped_column(ForeignKey("machine.id"), index=True)
    lot_id: Mapped[int | None] = mapped_column(ForeignKey("lot.id"), index=True)
    trial_id: Mapped[int | None] = mapped_column(ForeignKey("trial.id"), index=True)
    event_id: Mapped[int | None] = mapped_column(ForeignKey("event.id"), index=True)
    name: Mapped[str]
    mime: Mapped[str]
    size: Mapped[int]
    note: Mapped[str]
    author: Mapped[str]
    content: Mapped[bytes]


class ShopValueRow(Base):
    """A value for the whole shop; the newest of its key holds."""

    __tablename__ = "shop_value"

    id: Mapped[int] = mapped_column(primary_key=True)
    at: Mapped[datetime]
    key: Mapped[str] = mapped_column(index=True)
    value: Mapped[dict[str, Any]] = mapped_column(JsonObject)
    author: Mapped[str]
