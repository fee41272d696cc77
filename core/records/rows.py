"""What the database holds, as plain frozen rows. No SQL here: everybody may import these.

Times are UTC. Lengths are millimetres. `id` is None until the store has given one.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from enum import StrEnum
from typing import Any, NamedTuple

from core.quantity import Estimate


class Motion(StrEnum):
    """How the motors move the nozzle over the bed."""

    CARTESIAN = "cartesian"
    CROSSED_BELT = "crossed_belt"
    DELTA = "delta"


class TrialState(StrEnum):
    """Open: still being typed. Kept: stored for good. Withdrawn: out of use, with a reason, still visible."""

    OPEN = "open"
    KEPT = "kept"
    WITHDRAWN = "withdrawn"


@dataclass(frozen=True, slots=True)
class Machine:
    """A printer. `drives` maps an axis to the parts of its drive, as `Drive.parts` gives them.

    Attributes:
        limits: what it can bear, each entry optional: `nozzle_mm`, `hot_end_limit_c`, `bed_limit_c`, `max_flow_mm3_s`,
            and by axis (`x`, `y`, `z`, `e`) `max_speed_mm_s` and `max_acceleration_mm_s2`.
        templates: plain texts with {names}, each optional: `start`, `end` (commands round a print), `settings` (one
            line a setting).
    """

    name: str
    motion: Motion = Motion.CARTESIAN
    travel_x_mm: float = 220.0
    travel_y_mm: float = 220.0
    travel_z_mm: float = 220.0
    drives: Mapping[str, Mapping[str, Any]] = field(default_factory=dict)
    note: str = ""
    id: int | None = None
    version: int = 1
    limits: Mapping[str, Any] = field(default_factory=dict)
    templates: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Lot:
    """Filament of one maker, colour and batch, usually one spool.

    `nominal_diameter_mm` and `claimed_tolerance_mm` (half the width: diameter ± tolerance) are as its maker states
    them, `spool_mass_g` is the mass of the empty spool; None where nobody said.
    """

    name: str
    material: str
    colour: str = ""
    note: str = ""
    maker: str = ""
    batch: str = ""
    nominal_diameter_mm: float | None = None
    claimed_tolerance_mm: float | None = None
    spool_mass_g: float | None = None
    id: int | None = None
    version: int = 1


@dataclass(frozen=True, slots=True)
class Instrument:
    """A caliper or other length instrument with the standard uncertainties that no averaging removes.

    `sd_hand_mm` is the repeatability of one re-seated reading from the last check, with `sd_hand_dof` degrees of
    freedom; None where no check is on record.
    """

    name: str
    kind: str = "caliper"
    resolution_mm: float = 0.01
    u_outside_zero_mm: float = 0.0
    u_inside_zero_mm: float = 0.0
    u_scale_ratio: float = 0.0
    sd_hand_mm: float | None = None
    sd_hand_dof: int | None = None
    note: str = ""
    id: int | None = None
    version: int = 1


@dataclass(frozen=True, slots=True)
class Trial:
    """One trial of one subject: what was read, what it gave, and the verdict that was shown.

    Attributes:
        subject: the name of the core module, for example `sizeerror`.
        readings: named lists of equal length, exactly as entered and in core units (`raw`, `measured_mm`, ...).
        conditions: what was kept with them (`tolerance`, `part_temperature_c`, `piece`, ...), plain JSON values.
        estimates: the results; empty while the trial is open.
        verdict: the advice as plain JSON objects, as shown when the trial was kept.
        used: ids of the kept trials whose results this one relied on.
        method: the subject and the version of its mathematics.
        author: who kept it; the store fills in who is at work.
        serial: its place in the order of keeping, one count with events and settings, whatever the clock says; the
            store gives it, None while the trial is open.
    """

    subject: str
    machine_id: int | None = None
    lot_id: int | None = None
    instrument_id: int | None = None
    state: TrialState = TrialState.OPEN
    readings: Mapping[str, list[Any]] = field(default_factory=dict)
    conditions: Mapping[str, Any] = field(default_factory=dict)
    estimates: tuple[Estimate, ...] = ()
    verdict: tuple[Mapping[str, Any], ...] = ()
    used: tuple[int, ...] = ()
    method: str = ""
    note: str = ""
    started_at: datetime | None = None
    kept_at: datetime | None = None
    withdrawn_because: str = ""
    id: int | None = None
    author: str = ""
    serial: int | None = None


@dataclass(frozen=True, slots=True)
class SettingInForce:
    """A number that a machine was made to work with: in force from then on, until a later one takes its place.

    Attributes:
        lot_id: the lot it holds for; None: for the machine, whatever the lot.
        name: the setting, for example `scale_x`.
        old: what was set before; None where nobody knows.
        new: what is set now, in `unit`.
        since: when the trial was kept; the store gives it.
        trial_id: the kept trial it comes from; the store gives it. None where it was set by hand or undone.
        verified_by: a later kept trial that found it right; None so far.
        prediction: what the change should do to an estimate: `name`, `value`, `U`, `unit`; empty for none.
        undoes: the earlier entry whose old value this one brings back; None for none.
        because: why it was set, where no trial says so.
        author: who set it; the store fills in who is at work.
        serial: its place in the order of keeping, that of its trial; the store gives it.
    """

    machine_id: int
    lot_id: int | None
    name: str
    old: float | None
    new: float
    unit: str
    since: datetime | None = None
    trial_id: int | None = None
    id: int | None = None
    verified_by: int | None = None
    prediction: Mapping[str, Any] = field(default_factory=dict)
    undoes: int | None = None
    because: str = ""
    author: str = ""
    serial: int | None = None


@dataclass(frozen=True, slots=True)
class Event:
    """What happened to a machine, lot or instrument, or was looked at or skipped by hand; never changed afterwards.

    Attributes:
        kind: what happened, a key of `resources/walk.toml` (`belt_changed`), or `checked`, `skipped`, `note`, and what
            the store itself writes: `withdrawn`.
        trial_id: the trial it speaks of.
        detail: plain JSON values that belong to it, for example `step` and `tone_hz` of a check.
        note: words of the person, for a skipped step the reason.
        author: who logged it; the store fills in who is at work.
        takes_back: an earlier event that was logged by mistake and no longer counts.
        at: when it happened; the store gives the present moment where it is None.
        serial: its place in the order of keeping, one count with trials and settings; the store gives it.
    """

    kind: str
    machine_id: int | None = None
    lot_id: int | None = None
    instrument_id: int | None = None
    trial_id: int | None = None
    detail: Mapping[str, Any] = field(default_factory=dict)
    note: str = ""
    author: str = ""
    takes_back: int | None = None
    at: datetime | None = None
    serial: int | None = None
    id: int | None = None


@dataclass(frozen=True, slots=True)
class Attachment:
    """A picture or other small file kept with a machine, lot, trial or event; its bytes are read by id.

    Attributes:
        name: of the file it was.
        mime: what it is, for example `image/jpeg`.
        size: its length in bytes; the store gives it.
    """

    name: str
    mime: str
    machine_id: int | None = None
    lot_id: int | None = None
    trial_id: int | None = None
    event_id: int | None = None
    note: str = ""
    author: str = ""
    at: datetime | None = None
    size: int = 0
    id: int | None = None


@dataclass(frozen=True, slots=True)
class ShopValue:
    """A value for the whole shop, such as the list of its parts: the newest of its key holds, older ones stay.

    Attributes:
        value: plain JSON values.
        id: given by the store; whoever writes the next value names it, so that a stale edit is noticed.
    """

    key: str
    value: Mapping[str, Any]
    author: str = ""
    at: datetime | None = None
    id: int | None = None


class NewestKept(NamedTuple):
    """Which kept trial in use is the newest that gives this set of results, by its serial number.

    `gives` are the sorted names of the results, one a line.
    """

    machine_id: int | None
    lot_id: int | None
    subject: str
    gives: str
    serial: int


class InUse(NamedTuple):
    """A kept trial in use, as the setup walk needs it: what it gives, and the trials it relied on.

    `undecided` is what would tell, where the whole verdict is that it cannot tell yet; else empty.
    """

    id: int
    serial: int
    subject: str
    machine_id: int | None
    lot_id: int | None
    instrument_id: int | None
    kept_at: datetime
    gives: frozenset[str]
    used: tuple[int, ...] = ()
    undecided: str = ""


@dataclass(frozen=True, slots=True)
class SeriesPoint:
    """One estimate of a name among all those in use, with when and where it was found."""

    trial_id: int
    kept_at: datetime
    value: float
    u: float
    dof: float
    unit: str
    machine_id: int | None
    lot_id: int | None


class BackupKind(StrEnum):
    """Why a copy of the database was made."""

    ASKED = "asked"
    DAILY = "daily"
    UPGRADE = "upgrade"
    RESTORE = "restore"


@dataclass(frozen=True, slots=True)
class Backup:
    """A copy of the database as it was at a moment."""

    file: str
    kind: BackupKind
    made_at: datetime
    size: int


@dataclass(frozen=True, slots=True)
class Contents:
    """What a database or a copy of it holds, at a glance.

    Attributes:
        tables: the version of its tables.
        rows: how many rows each table has.
        newest: of the newest trial its number, subject, machine and moment; None where there is no trial.
    """

    tables: str
    rows: Mapping[str, int]
    newest: tuple[int, str, str, datetime] | None


@dataclass(frozen=True, slots=True)
class ImportReport:
    """What became of every line of an imported file.

    Attributes:
        added: how many rows each table gained; all zero where something was at fault.
        already: how many rows were on record already.
        lines: place and sentence of each line that was at fault or not taken as it stands, in order.
        refused: whether nothing was imported, because of the faults in `lines`.
    """

    added: Mapping[str, int]
    already: int
    lines: tuple[tuple[str, str], ...]
    refused: bool
