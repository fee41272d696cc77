"""What is known beside the readings, and which of them a rule looks at."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from core.guidance.findings import Finding, finding
from core.guidance.splitpair import SplitPair
from core.machine_geometry.drive import Drive, DriveKind, drive_from_parts
from core.measuring.reach import within_reach
from core.part_size.features import FEATURES, FeatureKind
from core.part_size.sizeerror import SizeError
from core.quantity import Estimate
from core.records.rows import Machine, Motion
from core.words import Words, tr


@dataclass(frozen=True, slots=True)
class KeptResult:
    """The newest valid result of another trial, and the number of that trial."""

    trial_id: int
    estimate: Estimate


@dataclass(frozen=True, slots=True)
class Known:
    """What is known beside the readings.

    Attributes:
        drives: the drive of each axis; an axis that is missing has no parts on record.
        motion: how the motors move the axes.
        tolerance: a class of `tolerance.CLASSES`, or plus-minus in mm.
        flow_checked: whether a valid flow trial stands behind the print.
        reversal: reversal error by axis, measured on the machine itself; an axis that is missing has none on record.
        split: by axis what the other trials of the shop say of this machine and lot; missing where none is linked.
        travel_mm: travel of each axis of the machine; an axis that is missing is not on record.
    """

    drives: Mapping[str, Drive] = field(default_factory=dict)
    motion: Motion = Motion.CARTESIAN
    tolerance: str | float = "m"
    flow_checked: bool = False
    reversal: Mapping[str, KeptResult] = field(default_factory=dict)
    split: Mapping[str, SplitPair] = field(default_factory=dict)
    travel_mm: Mapping[str, float] = field(default_factory=dict)


@within_reach
def known_of(
    machine: Machine | None,
    tolerance: str | float,
    flow_checked: bool = False,
    reversal: Mapping[str, KeptResult] | None = None,
    split: Mapping[str, SplitPair] | None = None,
) -> Known:
    """Gather what is known from the record of a machine; on crossed belts one drive serves X and Y.

    A rotary axis has no steps per millimetre to be judged by a length and is left out.

    Raises:
        InputError: for drive parts on record that cannot be, and results out of reach.
    """
    if machine is None:
        return Known(tolerance=tolerance, flow_checked=flow_checked, reversal=reversal or {})
    travel = {"x": machine.travel_x_mm, "y": machine.travel_y_mm, "z": machine.travel_z_mm}
    every = {axis: drive_from_parts(parts) for axis, parts in machine.drives.items()}
    drives = {axis: drive for axis, drive in every.items() if drive.kind is not DriveKind.ROTARY}
    return Known(drives, machine.motion, tolerance, flow_checked, reversal or {}, split or {}, travel)


def kinds_on(fit: SizeError, axis: str) -> tuple[FeatureKind, ...]:
    """Kinds of the features along one axis."""
    return tuple(k for k, a in zip(fit.kinds, fit.axes, strict=True) if a == axis)


def printed_axes(fit: SizeError) -> list[str]:
    """Axes with lengths of a part."""
    return sorted({a for k, a in zip(fit.kinds, fit.axes, strict=True) if k is not FeatureKind.TRAVEL})


def longest_mm(fit: SizeError, axes: list[str]) -> float:
    """Longest nominal length along these axes."""
    return float(max(L for L, a in zip(fit.nominal_mm, fit.axes, strict=True) if a in axes))


def constant_finding(
    fit: SizeError, constant: Estimate, factor: float, axis: str | None, known: Known, kind: FeatureKind | None = None
) -> Finding:
    """Judge a constant by the tolerance of the shortest length it matters for: there it is tightest."""
    concerned = [
        L
        for L, a, k in zip(fit.nominal_mm, fit.axes, fit.kinds, strict=True)
        if axis in (None, a) and (k is kind if kind else not FEATURES[k].constant or axis == "z")
    ]
    return finding(constant, factor, float(min(concerned)), known.tolerance)


def axis_constant(fit: SizeError, axis: str) -> Estimate | None:
    """Return the constant of an axis whose wall outset and lost motion are not told apart, if there is one."""
    return fit.estimate(f"constant_{axis}") or fit.estimate(f"hole_constant_{axis}")


def needs_of(fit: SizeError, name: str) -> Words:
    """The reading that would tell this parameter."""
    return next((m.needs for m in fit.not_estimable if m.name == name), tr("measure more kinds of feature"))
