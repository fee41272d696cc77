"""What a rotary axis under a print allows: its step grid at a radius, the disc about its centre, a centre out of place.

    x = r cos θ        step at a radius = r Δθ        least radius = v/ω        size error up to 2 c

Symbols: r distance from the turning centre, Δθ microstep in rad, v speed of the nozzle over the bed, ω the highest
turning rate that may be used, c how far the true centre lies from where it is set. The turning rate v/r has no limit at
the centre, so a disc about it cannot be printed at that speed.

Reference: plane geometry; shares of a ceiling that may be used as in `resolution`, common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from core.errors import InputError
from core.machine_geometry.parts import Drive, short
from core.machine_geometry.resolution import USABLE_SHARE, speed_from_steps, winding_full_steps_per_s
from core.machine_geometry.rotary import describe_rotary
from core.machine_geometry.wanted import DriveLimit, Wanted
from core.measuring.reach import within_reach
from core.words import tr

WINDING_SHARE = 0.5  # torque falls well before the current cannot follow
_MOST_OFF_MM = 10.0  # further than this nobody's centre is out; it is a digit slipped (common practice, no source)


def step_at_radius_mm(drive: Drive, radius_mm: float) -> float:
    """Return the length of the arc of one microstep at a radius.

    Raises:
        InputError: field `at_radius_mm`, not a positive number; `kind`, for a drive that moves by lengths.
    """
    _check("at_radius_mm", radius_mm)
    return radius_mm * math.radians(describe_rotary(drive).microstep_deg)


@within_reach
def least_radius_mm(speed_mm_s: float, turning_deg_s: float) -> float:
    """Return the radius below which an axis of this turning rate cannot keep up with the speed, v/ω.

    Raises:
        InputError: field `speed_mm_s` or `turning_deg_s`, not a positive number.
    """
    _check("speed_mm_s", speed_mm_s)
    _check("turning_deg_s", turning_deg_s)
    return speed_mm_s / math.radians(turning_deg_s)


def turning_limits(drive: Drive, wanted: Wanted) -> Iterator[DriveLimit]:
    """Yield what a rotary axis allows of what is wanted; what lacks a number is left out.

    Raises:
        InputError: named after the field of `Wanted` that cannot be.
    """
    if wanted.at_radius_mm is not None:
        step_mm = step_at_radius_mm(drive, wanted.at_radius_mm)
        says = tr("At radius {radius} mm one microstep is {step} mm; it grows with the radius.",
                  radius=short(wanted.at_radius_mm), step=f"{step_mm:.2g}")  # fmt: skip
        yield DriveLimit(tr("Step grid"), says)
    yield from _rate(drive, wanted)
    if wanted.centre_off_mm is not None:
        off = wanted.centre_off_mm
        if not 0 <= off <= _MOST_OFF_MM:
            raise InputError(
                "centre_off_mm",
                tr("A centre {off} mm out of place is not possible; type 0 to {most} mm.", off=short(off),
                   most=short(_MOST_OFF_MM)),
            )  # fmt: skip
        says = tr("A centre {off} mm out of place makes sizes up to {twice} mm wrong, with the other sign across the "
                  "centre: set the centre, leave the steps.", off=short(off), twice=short(2 * off))  # fmt: skip
        yield DriveLimit(tr("Centre"), says, asks=off > 0)


def _rate(drive: Drive, wanted: Wanted) -> Iterator[DriveLimit]:
    ceilings = list(_ceilings(drive, wanted))
    if not ceilings:
        return
    usable = USABLE_SHARE * min(ceilings)
    values = {"rate": f"{usable:.3g}", "turns": f"{usable / 6.0:.3g}"}
    yield DriveLimit(tr("Turning"), tr("Use up to {rate} °/s, {turns} turns a minute.", **values))
    if wanted.speed_mm_s is None:
        return
    least = least_radius_mm(wanted.speed_mm_s, usable)
    at = wanted.at_radius_mm
    says = tr(
        "At {speed} mm/s nothing within {least} mm of the centre can be printed: the axis would have to turn faster.",
        speed=short(wanted.speed_mm_s),
        least=f"{least:.3g}",
    )
    yield DriveLimit(tr("Turning"), says, asks=at is not None and at < least)


def _ceilings(drive: Drive, wanted: Wanted) -> Iterator[float]:
    parts = describe_rotary(drive)
    if wanted.step_rate_per_s is not None:
        yield speed_from_steps(wanted.step_rate_per_s, parts.steps_deg)
    v, i, lh = wanted.supply_v, wanted.current_a, wanted.inductance_mh
    if v is not None and i is not None and lh is not None:
        yield WINDING_SHARE * winding_full_steps_per_s(v, i, lh) * parts.full_step_deg


def _check(field: str, value: float) -> None:
    if not 0 < value < math.inf:
        raise InputError(field, tr("“{value}” must be a number above 0; type it again.", value=short(value)))
