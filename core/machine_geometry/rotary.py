"""A rotary axis: steps per degree from its parts. It turns and never travels, so none of this is a length.

    degrees per motor turn   360 / G
    steps per degree         M µ G / 360
    full step, microstep     360 / (M G),  360 / (M µ G)

Symbols M, µ, G as in `drive`. Counted teeth close after every whole turn, so that whole turns are exact; what wheels
out of centre add within a turn is not known from the parts.

Reference: plain geometry of the parts.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction

from core.errors import InputError
from core.machine_geometry.drive import CYCLE_FULL_STEPS, describe_drive
from core.machine_geometry.parts import Drive, DriveKind
from core.quantity import Estimate
from core.words import Words, tr

TURN_DEG = 360


@dataclass(frozen=True, slots=True)
class RotaryResult:
    """What the parts give; `why` spells the product out."""

    steps_deg: float
    motor_turn_deg: float
    full_step_deg: float
    microstep_deg: float
    electrical_cycle_deg: float
    why: Words

    def estimates(self) -> tuple[Estimate, ...]:
        """Return steps_deg (steps/°), motor_turn, full_step, microstep, electrical_cycle (°); whole turns are exact."""
        named = (
            ("steps_deg", self.steps_deg, "steps/°"),
            ("motor_turn", self.motor_turn_deg, "°"),
            ("full_step", self.full_step_deg, "°"),
            ("microstep", self.microstep_deg, "°"),
            ("electrical_cycle", self.electrical_cycle_deg, "°"),
        )
        return tuple(Estimate(name, value, 0.0, math.inf, unit) for name, value, unit in named)


def describe_rotary(drive: Drive) -> RotaryResult:
    """Calculate steps per degree, full step, microstep and electrical cycle of a rotary axis.

    Raises:
        InputError: field `kind`, for a drive that moves by lengths.
    """
    if drive.kind is not DriveKind.ROTARY:
        raise InputError("kind", tr("This drive moves by lengths and has no steps per degree; choose a rotary axis."))
    full_step = Fraction(TURN_DEG) / (drive.full_steps * drive.reduction)
    steps = float(drive.microsteps / full_step)
    motor = f"{drive.full_steps} × {drive.microsteps}"
    motor += "".join(f" × {driven}/{driving}" for driven, driving in drive.gears)
    return RotaryResult(
        steps_deg=steps,
        motor_turn_deg=float(full_step * drive.full_steps),
        full_step_deg=float(full_step),
        microstep_deg=float(full_step / drive.microsteps),
        electrical_cycle_deg=float(CYCLE_FULL_STEPS * full_step),
        why=tr("{motor} ÷ 360° = {steps} steps/°", motor=motor, steps=f"{steps:.4f}"),
    )


def steps_reason(drive: Drive) -> Words:
    """Return how the steps of a drive follow from its parts, per millimetre or per degree."""
    return describe_rotary(drive).why if drive.kind is DriveKind.ROTARY else describe_drive(drive).why
