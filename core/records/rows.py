"""What the database holds, as plain frozen rows. No SQL here: everybody may import these.

Times are UTC. Lengths are millimetres. `id` is None until the store has given one.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from enum import StrEnum
from typing import Any

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
    """A printer. `drives` maps an axis to the parts of its drive, as `Drive.parts` gives them."""

    name: str
    motion: Motion = Motion.CARTESIAN
    travel_x_mm: float = 220.0
    travel_y_mm: float = 220.0
    travel_z_mm: float = 220.0
    drives: Mapping[str, Mapping[str, Any]] = field(default_factory=dict)
    note: str = ""
    id: int | None = None
    version: int = 1


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
        conditions: what held while reading (`tolerance`, `part_temperature_c`, `piece`, ...), plain JSON values.
        estimates: the results; empty while the trial is open.
        verdict: the advice as plain JSON objects, as shown when the trial was kept.
        used: ids of the kept trials whose results this one relied on.
        method: the subject and the version of its mathematics.
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


@dataclass(frozen=True, slots=True)
class SettingInForce:
    """A number that a kept trial made a machine work with: in force from then on, until a later one takes its place.

    Attributes:
        lot_id: the lot it holds for; None: for the machine, whatever the lot.
        name: the setting, for example `scale_x`.
        old: what was set before; None where nobody knows.
        new: what is set now, in `unit`.
        since: when the trial was kept; the store gives it.
        trial_id: the kept trial it comes from; the store gives it.
        verified_by: a later kept trial that found it right; None so far.
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
