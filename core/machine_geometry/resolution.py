"""What the steps of a drive allow: clean layer heights, clean test lengths, and how fast the controller can step.

Between full steps a motor stands where its field puts it, give or take 5 % of a full step, and this error repeats with
the electrical cycle of four full steps. Travels of whole cycles therefore carry none of it, and layers of whole full
steps are alike. A pulley or screw out of centre repeats with its turn, so a test length takes whole turns as well.

A motor under load lags behind its field, and one microstep alone holds only a part of its torque: friction above that
swallows microsteps, so that finer ones are not finer travel.

    lag = (2/π)*asin(load/holding)*f        torque of one microstep = sin(90°/µ) of holding

Symbols as in `drive`; f full step, µ microsteps, v speed. Reference: plain arithmetic of the parts, torque over angle
taken as a sine; the 5 % and the share of a ceiling that may be used are common practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction

from core.errors import InputError
from core.machine_geometry.drive import CYCLE_FULL_STEPS, describe_drive, exact_mm, full_step_travel, turn_travel
from core.machine_geometry.parts import MICROSTEPS, Drive, short
from core.machine_geometry.questions import DriveQuestion
from core.measuring.finite import finite_in
from core.measuring.reach import above_zero, within_reach
from core.records.rows import Motion
from core.words import tr

_MOST_MULTIPLES = 1000
USABLE_SHARE = 0.7  # of a ceiling (common practice, no source)


@dataclass(frozen=True, slots=True)
class CleanLengths:
    """Test lengths of whole turns; `whole_cycles` tells whether they are whole electrical cycles too."""

    lengths_mm: tuple[float, ...]
    whole_cycles: bool


@dataclass(frozen=True, slots=True)
class SpeedCeiling:
    """The speed at which the controller can step no faster, in any direction, and the share of it to be used."""

    ceiling_mm_s: float
    usable_mm_s: float


@within_reach
def clean_heights_mm(drive: Drive, low_mm: float = 0.1, high_mm: float = 0.3) -> tuple[float, ...]:
    """Return the layer heights from low to high that are whole full steps, n f; of very many every so many.

    Raises:
        InputError: field `high_mm`, where it is below `low_mm` or either is not a positive number.
    """
    _check_range(low_mm, high_mm)
    return _multiples(full_step_travel(drive), low_mm, high_mm)


@within_reach
def clean_lengths_mm(drive: Drive, high_mm: float, low_mm: float = 10.0) -> CleanLengths:
    """Return the test lengths from low to high that are whole turns of the last wheel and whole electrical cycles.

    Gear pairs may leave no such length in the range; then whole turns alone, for a turn matters more than a cycle. Of
    very many every so many.

    Raises:
        InputError: field `high_mm`, where it is below `low_mm` or either is not a positive number.
    """
    _check_range(low_mm, high_mm)
    travel, whole_cycles = whole_travel(drive, high_mm)
    return CleanLengths(_multiples(travel, low_mm, high_mm), whole_cycles)


def whole_travel(drive: Drive, high_mm: float) -> tuple[Fraction, bool]:
    """Return after which travel (mm) a turn begins anew, together with the electrical cycle, and whether it does.

    Args:
        drive: whose last wheel turns.
        high_mm: the longest travel that is of use; a turn alone where both together take longer.
    """
    turn = turn_travel(drive)
    cycles_a_turn = drive.full_steps * drive.reduction / CYCLE_FULL_STEPS
    both = turn * cycles_a_turn.denominator
    return (both, True) if both <= exact_mm(high_mm) else (turn, False)


def _multiples(unit_mm: Fraction, low_mm: float, high_mm: float) -> tuple[float, ...]:
    """Return the multiples from low to high; where they are too many to choose from, every so many of them."""
    first, last = math.ceil(exact_mm(low_mm) / unit_mm), math.floor(exact_mm(high_mm) / unit_mm)
    every = max(-(-(last - first) // _MOST_MULTIPLES), 1)
    return tuple(float(n * unit_mm) for n in range(-(-first // every) * every, last + 1, every))


def _check_range(low_mm: float, high_mm: float) -> None:
    if not (0 < low_mm <= high_mm < math.inf):
        raise InputError(
            "high_mm",
            tr(
                "From {low} to {high} mm is no range; the second must be the larger.",
                low=short(low_mm),
                high=short(high_mm),
            ),
        )


@within_reach
def question_height(drive: Drive, height_mm: float) -> DriveQuestion | None:
    """Ask about a layer height that is no whole number of full steps; None where it is one.

    Raises:
        InputError: field `height_mm`, not a positive number.
    """
    if not 0 < height_mm < math.inf:
        raise InputError("height_mm", tr("A layer height of {height} mm is not possible.", height=short(height_mm)))
    full_step = full_step_travel(drive)
    count = exact_mm(height_mm) / full_step
    if abs(count - round(count)) <= 1e-9:
        return None
    heights = [float(n * full_step) for n in (math.floor(count), math.ceil(count)) if n > 0]
    return DriveQuestion(
        "height_mm",
        tr(
            "Layer {height} mm is {count} full steps on this drive; layers will not be alike. Nearest clean heights: "
            "{clean}.",
            height=short(height_mm),
            count=f"{float(count):.4g}",
            clean=", ".join(f"{h:.4g} mm" for h in heights),
        ),
        min(heights, key=lambda height: abs(height - height_mm)),
    )


@within_reach
def speed_ceiling(drive: Drive, step_rate_per_s: float, motion: Motion = Motion.CARTESIAN) -> SpeedCeiling:
    """Return the speed at the controller's highest step rate; on crossed belts along the diagonal that one motor runs.

    A delta's carriages may have to run two to three times as fast as the nozzle near the rim: no figure of the parts.

    Raises:
        InputError: field `step_rate_per_s`, not a positive number.
    """
    ceiling = speed_from_steps(step_rate_per_s, describe_drive(drive).steps_mm) / _diagonal(motion)
    return SpeedCeiling(ceiling, USABLE_SHARE * ceiling)


@within_reach
@above_zero("ratio")
@finite_in("ratio")
def speed_from_steps(step_rate_per_s: float, ratio: float) -> float:
    """Return the speed at the controller's highest step rate, in the unit of `ratio`, steps per unit, per second.

    Raises:
        InputError: field `step_rate_per_s` or `ratio`, not a positive number.
    """
    if not 0 < step_rate_per_s < math.inf:
        raise InputError(
            "step_rate_per_s", tr("A step rate of {rate} per second is not possible.", rate=short(step_rate_per_s))
        )
    return step_rate_per_s / ratio


@within_reach
def winding_ceiling_mm_s(drive: Drive, supply_v: float, current_a: float, inductance_mh: float) -> float:
    """Return the speed at which the supply can just reverse the current of a winding within a full step, V f / (2 I L).

    Torque falls well before it: use half (common practice, no source).

    Raises:
        InputError: field `supply_v`, `current_a` or `inductance_mh`, not a positive number.
    """
    return winding_full_steps_per_s(supply_v, current_a, inductance_mh) * describe_drive(drive).full_step_mm


@within_reach
def winding_full_steps_per_s(supply_v: float, current_a: float, inductance_mh: float) -> float:
    """Return how many full steps per second the supply can just reverse the current of a winding in, V / (2 I L).

    Raises:
        InputError: field `supply_v`, `current_a` or `inductance_mh`, not a positive number.
    """
    for field, value in (("supply_v", supply_v), ("current_a", current_a), ("inductance_mh", inductance_mh)):
        if not 0 < value < math.inf:
            raise InputError(field, tr("“{value}” must be a number above 0; type it again.", value=short(value)))
    return supply_v / (2 * current_a * inductance_mh * 1e-3)


def question_speed(
    drive: Drive, speed_mm_s: float, step_rate_per_s: float, motion: Motion = Motion.CARTESIAN
) -> DriveQuestion | None:
    """Ask about a speed above what the controller can step; None where it can.

    Raises:
        InputError: field `speed_mm_s` or `step_rate_per_s`, not a positive number.
    """
    if not 0 < speed_mm_s < math.inf:
        raise InputError("speed_mm_s", tr("A speed of {speed} mm/s is not possible.", speed=short(speed_mm_s)))
    ceiling = speed_ceiling(drive, step_rate_per_s, motion).ceiling_mm_s
    if speed_mm_s <= ceiling * (1 + 1e-12):
        return None
    steps_mm = describe_drive(drive).steps_mm
    needed = speed_mm_s * steps_mm * _diagonal(motion)
    coarser = [micro for micro in MICROSTEPS if micro < drive.microsteps * ceiling / speed_mm_s * (1 + 1e-12)]
    values = {
        "speed": short(speed_mm_s),
        "steps": f"{steps_mm:.6g}",
        "needed": f"{needed:.0f}",
        "rate": f"{step_rate_per_s:.0f}",
        "most": f"{math.floor(ceiling * 10) / 10:.10g}",
        "microsteps": max(coarser, default=0),
    }
    if coarser:
        says = tr(
            "{speed} mm/s at {steps} steps/mm needs {needed} steps/s; this controller's ceiling is {rate}. "
            "Most here {most} mm/s; or microsteps {microsteps}.",
            **values,
        )
    else:
        says = tr(
            "{speed} mm/s at {steps} steps/mm needs {needed} steps/s; this controller's ceiling is {rate}. "
            "Most here {most} mm/s, even with full steps.",
            **values,
        )
    return DriveQuestion("speed_mm_s", says, ceiling)


def _diagonal(motion: Motion) -> float:
    """At 45 degrees one motor of a crossed belt does all the work, √2 times as fast."""
    return math.sqrt(2) if motion is Motion.CROSSED_BELT else 1.0


@within_reach
def load_lag_mm(drive: Drive, load_ratio: float) -> float:
    """Return how far a motor lags under a load, given as a share of its holding torque; either way it looks like play.

    Raises:
        InputError: field `load_ratio`, not from 0 up to 1.
    """
    if not 0 <= load_ratio < 1:
        raise InputError(
            "load_ratio",
            tr("A load of {load} % of the holding torque is not possible; type 0 to 99.", load=short(100 * load_ratio)),
        )
    return 2 / math.pi * math.asin(load_ratio) * describe_drive(drive).full_step_mm


def microstep_torque_ratio(drive: Drive) -> float:
    """Return the share of the holding torque that one microstep holds."""
    return math.sin(math.pi / 2 / drive.microsteps)


def rounding_sd_mm(drive: Drive) -> float:
    """Return the standard deviation of a target rounded to whole microsteps, 1/(S √12); it is not carried on."""
    return describe_drive(drive).microstep_mm / math.sqrt(12)
