"""From the parts of a drive to its steps per millimetre, with the reason and the drive's own tolerance.

Symbols: M full steps per motor turn, µ microsteps per full step, G gear reduction (product of driven/driving teeth),
p pitch, z teeth, n starts, m module, β helix angle, D effective diameter, r reeving (carriage travel per belt travel).

    travel per turn of the last wheel   t = r p z  |  r p n  |  r π m z / cos β  |  r π D
    feed constant                       t / G                 (travel per motor turn)
    steps per millimetre                M µ G / t
    full step, microstep                t / (M G),  t / (M µ G)
    electrical cycle                    4 full steps

Reference: plain geometry of the parts; ISO 53 for the rack. Lead is pitch times starts (ISO 2904). The tolerances are
common practice without a source and may be changed for each drive.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from core.errors import InputError
from core.machine_geometry.parts import (
    MICROSTEPS,
    OWN_PARTS,
    REEVING_RATIO,
    Drive,
    DriveKind,
    Reeving,
    drive_from_parts,
    gears_from_text,
    short,
)
from core.machine_geometry.questions import DriveQuestion, question_drive
from core.measuring.finite import finite_in
from core.quantity import Estimate
from core.records.rows import Motion
from core.words import Words, tr

__all__ = [
    "MICROSTEPS",
    "OWN_PARTS",
    "Drive",
    "DriveKind",
    "DriveQuestion",
    "DriveResult",
    "Reeving",
    "check_axes",
    "describe_drive",
    "drive_from_parts",
    "exact_mm",
    "full_step_travel",
    "gears_from_text",
    "motion_note",
    "question_drive",
    "refuse_rotary",
    "turn_travel",
]

PI = Fraction("3.14159265358979323846264338327950288419716939937510")
CYCLE_FULL_STEPS = 4  # a stepping motor repeats its field after four full steps


@dataclass(frozen=True, slots=True)
class DriveResult:
    """What the parts give. `why` spells the product out; `tolerance_ratio` is the relative standard uncertainty."""

    steps_mm: float
    feed_constant_mm: float
    full_step_mm: float
    microstep_mm: float
    electrical_cycle_mm: float
    tolerance_ratio: float
    why: Words

    def estimates(self) -> tuple[Estimate, ...]:
        """Return steps_mm (steps/mm), feed_constant, full_step, microstep and electrical_cycle (mm)."""
        named = (
            ("steps_mm", self.steps_mm, "steps/mm"),
            ("feed_constant", self.feed_constant_mm, "mm"),
            ("full_step", self.full_step_mm, "mm"),
            ("microstep", self.microstep_mm, "mm"),
            ("electrical_cycle", self.electrical_cycle_mm, "mm"),
        )
        return tuple(Estimate(name, value, value * self.tolerance_ratio, math.inf, unit) for name, value, unit in named)


def turn_travel(drive: Drive) -> Fraction:
    """Return the carriage's travel in mm per turn of the pulley, screw, pinion or wheel.

    Exact for belts and screws; with π to 50 digits, and the double next to cos β, for racks and wheels.

    Raises:
        InputError: field `kind`, for a rotary axis.
    """
    refuse_rotary(drive)
    r = REEVING_RATIO[drive.reeving]
    if drive.kind is DriveKind.BELT:
        return r * exact_mm(drive.pitch_mm) * exact_mm(drive.teeth)
    if drive.kind is DriveKind.SCREW:
        return r * exact_mm(drive.pitch_mm) * exact_mm(drive.starts)
    if drive.kind is DriveKind.WHEEL:
        return r * PI * exact_mm(drive.diameter_mm)
    pitch = exact_mm(drive.pitch_mm) if drive.module_mm is None else PI * exact_mm(drive.module_mm)
    return r * pitch * exact_mm(drive.teeth) / Fraction(math.cos(math.radians(drive.helix_deg)))


def refuse_rotary(drive: Drive) -> None:
    """Keep degrees and millimetres apart."""
    if drive.kind is DriveKind.ROTARY:
        raise InputError(
            "kind",
            tr(
                "A rotary axis has steps per degree and is never compared with a length. Command 360° and look whether "
                "a mark comes back to its place."
            ),
        )


@finite_in("number")
def exact_mm(number: float | None) -> Fraction:
    """Take a decimal as it was typed: 2.032 is 254/125, not the nearest binary number."""
    return Fraction(str(number))


def full_step_travel(drive: Drive) -> Fraction:
    """Return the carriage's travel in mm per full step of the motor, f = t / (M G)."""
    return turn_travel(drive) / (drive.full_steps * drive.reduction)


def describe_drive(drive: Drive) -> DriveResult:
    """Calculate steps/mm, feed constant, full step, microstep and electrical cycle of a drive."""
    full_step = full_step_travel(drive)
    steps_mm = float(drive.microsteps / full_step)
    return DriveResult(
        steps_mm=steps_mm,
        feed_constant_mm=float(full_step * drive.full_steps),
        full_step_mm=float(full_step),
        microstep_mm=float(full_step / drive.microsteps),
        electrical_cycle_mm=float(CYCLE_FULL_STEPS * full_step),
        tolerance_ratio=drive.tolerance_ratio,
        why=_why(drive, steps_mm),
    )


def _why(drive: Drive, steps_mm: float) -> Words:
    motor = f"{drive.full_steps} × {drive.microsteps}"
    motor += "".join(f" × {driven}/{driving}" for driven, driving in drive.gears)
    reeving = "" if drive.reeving is Reeving.DIRECT else f" × {REEVING_RATIO[drive.reeving]}"
    values = {"motor": motor, "reeving": reeving, "steps": f"{steps_mm:.4f}", "teeth": drive.teeth}
    if drive.kind is DriveKind.BELT:
        return tr(
            "{motor} ÷ ({pitch} mm × {teeth} teeth{reeving}) = {steps} steps/mm",
            **values,
            pitch=short(drive.pitch_mm or 0),
        )
    if drive.kind is DriveKind.SCREW:
        return tr(
            "{motor} ÷ ({pitch} mm pitch × {starts} starts{reeving}) = {steps} steps/mm",
            **values,
            pitch=short(drive.pitch_mm or 0),
            starts=drive.starts,
        )
    if drive.kind is DriveKind.WHEEL:
        return tr(
            "{motor} ÷ (π × {diameter} mm{reeving}) = {steps} steps/mm",
            **values,
            diameter=short(drive.diameter_mm or 0),
        )
    slant = f" / cos {short(drive.helix_deg)}°" if drive.helix_deg else ""
    if drive.module_mm is None:
        return tr(
            "{motor} ÷ ({pitch} mm × {teeth} teeth{slant}{reeving}) = {steps} steps/mm",
            **values,
            pitch=short(drive.pitch_mm or 0),
            slant=slant,
        )
    return tr(
        "{motor} ÷ (π × module {module} mm × {teeth} teeth{slant}{reeving}) = {steps} steps/mm",
        **values,
        module=short(drive.module_mm),
        slant=slant,
    )


def check_axes(
    motion: Motion, drives: Mapping[str, Drive], found_steps_mm: Mapping[str, float] | None = None
) -> tuple[DriveQuestion, ...]:
    """Check that the axes of a machine go together.

    Args:
        motion: how motors move the nozzle.
        drives: by axis name x, y, z; on crossed belts x and y are the motors A and B, on a delta all are carriages.
        found_steps_mm: values found in the controller by axis, where known; they are held to the same rule.

    Raises:
        InputError: field `y`, for X and Y values that differ on crossed belts; `kind`, for a rotary axis on crossed
            belts or a delta.
    """
    turning = [axis for axis, drive in drives.items() if drive.kind is DriveKind.ROTARY]
    if turning and motion is not Motion.CARTESIAN:
        raise InputError(
            "kind",
            tr(
                "Crossed belts and deltas move by lengths on every motor; a rotary axis goes with the motion cartesian."
            ),
        )
    steps = {axis: describe_drive(drive).steps_mm for axis, drive in drives.items() if axis not in turning}
    if motion is Motion.CROSSED_BELT:
        for pair in (steps, found_steps_mm or {}):
            _check_crossed(pair)
    if motion is Motion.DELTA and len(set(steps.values())) > 1:
        return (
            DriveQuestion(
                "z", tr("The three carriages differ in steps/mm; have they really different parts? Count again.")
            ),
        )
    if "z" in turning:
        return (DriveQuestion("kind", tr("Layers are stacked along Z; is the rotary axis not X or Y?")),)
    return ()


def _check_crossed(steps_mm: Mapping[str, float]) -> None:
    x, y = steps_mm.get("x"), steps_mm.get("y")
    if x is None or y is None or math.isclose(x, y, rel_tol=1e-12):
        return
    shear = abs(y / x - 1)  # x' = x(1 + mean) + y D, D half the difference: the right angle closes by 2 D
    raise InputError(
        "y",
        tr(
            "On crossed belts both motors turn for X as well as for Y, so they share one value. {x} and {y} steps/mm "
            "would not change X against Y but shear every part by {shear} mm in 100 mm. Enter one set of parts for "
            "A and B.",
            x=f"{x:.4f}",
            y=f"{y:.4f}",
            shear=f"{100 * shear:.2g}",
        ),
    )


def motion_note(motion: Motion) -> Words:
    """Say what steps/mm means on such a machine."""
    if motion is Motion.CROSSED_BELT:
        return tr(
            "Both motors A and B carry this one value. Unequal belts shear the part; they cannot make X differ from Y."
        )
    if motion is Motion.DELTA:
        return tr(
            "The value belongs to the carriages. Rod length and radius give the size in X and Y, this value does not."
        )
    return tr("Each axis has its own value, calculated from its own parts.")
