"""The tables. Portable types only: double precision, UTC times, text for states, JSON for what no query looks into.

They are made by `migrations` alone; what only SQLite needs (ids that are never used twice) is said only there, so that
importing this file loads no dialect.

A value that cannot be read back (a damaged page, a foreign hand) raises `DamagedValueError`, later a `StoreError`.
"""

from __future__ import annotations

import json
import math
from abc import abstractmethod
from collections.abc import Callable, Mapping
from datetime import UTC, datetime
from typing import Any

from sqlalchemy import JSON, DateTime, Dialect, Double, ForeignKey, Index, MetaData, Text, UniqueConstraint
from sqlalchemy.orm import DeclarativeBase, Mapped, mapped_column
from sqlalchemy.types import TypeDecorator, TypeEngine

from core.records.rows import Motion, TrialState

# Named constraints, so that later migrations can drop them.
NAMES = {
    "ix": "ix_%(column_0_label)s",
    "uq": "uq_%(table_name)s_%(column_0_name)s",
    "fk": "fk_%(table_name)s_%(column_0_name)s",
    "pk": "pk_%(table_name)s",
}
_MARK = "$"  # doubled where it begins a key, so that the tag below is never taken for one
_NON_FINITE = "$float"


class DamagedValueError(Exception):
    """A stored value is not of the kind that its column holds."""


def json_from_value(value: object) -> str:
    """Return strict JSON; nan and the infinities, which JSON does not know, become tagged objects."""
    return json.dumps(_strict(value), allow_nan=False, separators=(",", ":"))


def _strict(value: object) -> object:
    if isinstance(value, Mapping):
        return {_MARK * str(key).startswith(_MARK) + str(key): _strict(item) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [_strict(item) for item in value]
    if isinstance(value, float) and not math.isfinite(value):
        return {_NON_FINITE: str(float(value))}
    return value


def value_from_json(text: str) -> object:
    """Return what `json_from_value` was given; tuples come back as lists."""
    return json.loads(text, object_hook=_loose)


def _loose(found: dict[str, Any]) -> object:
    if _NON_FINITE in found:
        return float(found[_NON_FINITE])
    return {key.removeprefix(_MARK): item for key, item in found.items()}


class _Guarded(TypeDecorator[Any]):
    """A column type that notices what cannot be read back."""

    cache_ok = True
    impl: TypeEngine[Any] | type[TypeEngine[Any]] = Text

    def result_processor(self, dialect: Dialect, coltype: object) -> Callable[[Any], Any]:
        inner = super().result_processor(dialect, coltype)

        def read(value: Any) -> Any:
            try:
                return None if value is None else self.checked(inner(value) if inner else value)
            except (ValueError, TypeError) as error:
                raise DamagedValueError from error

        return read

    @abstractmethod
    def checked(self, value: Any) -> Any:
        """Return the value as the rows hold it, or raise ValueError or TypeError."""


class PlainText(_Guarded):
    """Text. Half characters that no encoding can write (lone surrogates) become question marks."""

    cache_ok = True

    def process_bind_param(self, value: str | None, dialect: Dialect) -> str | None:
        """Return the value as it is stored."""
        return value if value is None else str(value).encode("utf-8", "replace").decode("utf-8")

    def checked(self, value: str) -> str:
        """See `_Guarded`."""
        return "".join((value,))  # bytes or a number, where text should be, are refused


class Real(_Guarded):
    """A double precision number; infinity is one."""

    cache_ok = True
    impl = Double

    def checked(self, value: float) -> float:
        """See `_Guarded`."""
        return float(value)


class UtcTime(_Guarded):
    """A moment: stored as UTC, given as an aware datetime."""

    cache_ok = True
    impl = DateTime(timezone=True)

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        """Return the value as it is stored."""
        return value if value is None else value.astimezone(UTC)

    def checked(self, value: datetime) -> datetime:
        """See `_Guarded`."""
        return value.replace(tzinfo=UTC) if value.tzinfo is None else value.astimezone(UTC)


class MotionText(PlainText):
    """How a machine moves, by name."""

    cache_ok = True

    def checked(self, value: str) -> Motion:
        """See `_Guarded`."""
        return Motion(value)


class StateText(PlainText):
    """The state of a trial, by name."""

    cache_ok = True

    def checked(self, value: str) -> TrialState:
        """See `_Guarded`."""
        return TrialState(value)


class JsonObject(_Guarded):
    """A JSON object of anything."""

    cache_ok = True
    impl = JSON

    def checked(self, value: object) -> dict[str, Any]:
        """See `_Guarded`."""
        if not isinstance(value, dict):
            raise TypeError
        return value


class JsonObjects(_Guarded):
    """A JSON list of objects, given as a tuple."""

    cache_ok = True
    impl = JSON

    def checked(self, value: object) -> tuple[dict[str, Any], ...]:
        """See `_Guarded`."""
        if not isinstance(value, list) or not all(isinstance(item, dict) for item in value):
            raise TypeError
        return tuple(value)


class Base(DeclarativeBase):
    """All tables."""

    metadata = MetaData(naming_convention=NAMES)
    type_annotation_map = {str: PlainText, float: Real, datetime: UtcTime, Motion: MotionText, TrialState: StateText}


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
    """A trial: readings as entered, and what was decided. `open_as` is empty unless the trial is open, and unique."""

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

    # Each answers a series by itself: a row with its readings is not touched.
    __table_args__ = (
        Index(None, "machine_id", "state", "kept_at", "lot_id"),
        Index(None, "lot_id", "state", "kept_at", "machine_id"),
        Index(None, "instrument_id", "state", "kept_at"),
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
    """A setting that a kept trial put in force. Ids grow in the order of keeping, whatever the clock says."""

    __tablename__ = "setting"

    id: Mapped[int] = mapped_column(primary_key=True)
    machine_id: Mapped[int] = mapped_column(ForeignKey("machine.id"))
    lot_id: Mapped[int | None] = mapped_column(ForeignKey("lot.id"))
    name: Mapped[str]
    old: Mapped[float | None]
    new: Mapped[float]
    unit: Mapped[str]
    since: Mapped[datetime]
    trial_id: Mapped[int] = mapped_column(ForeignKey("trial.id"))
    verified_by: Mapped[int | None] = mapped_column(ForeignKey("trial.id"))

    __table_args__ = (Index(None, "machine_id", "name"),)
