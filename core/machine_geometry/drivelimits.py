"""What a drive allows, in sentences: layer height, speed, lag under load, tension of a belt, rods of a delta.

Reference: as `resolution`, `belttone` and `delta`. The share of a ceiling that may be used, and half of what the
windings follow, are common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from core.errors import InputError
from core.machine_geometry.belttone import belt_tension
from core.machine_geometry.delta import scale_from_rods
from core.machine_geometry.drive import exact_mm, full_step_travel
from core.machine_geometry.parts import Drive, DriveKind, short
from core.machine_geometry.resolution import (
    USABLE_SHARE,
    load_lag_mm,
    microstep_torque_ratio,
    question_height,
    question_speed,
    rounding_sd_mm,
    speed_ceiling,
    speed_from_steps,
    winding_ceiling_mm_s,
)
from core.machine_geometry.turning import WINDING_SHARE, turning_limits
from core.machine_geometry.wanted import DriveLimit, Wanted
from core.measuring.reach import within_reach
from core.quantity import size_text, value_text
from core.records.rows import Motion
from core.words import Words, tr

__all__ = ["DriveLimit", "Wanted", "limits_of"]

_BELT_G_M = 1.4  # mass per length for each millimetre of width of a 2 mm pitch belt; common practice, no source


@within_reach
def limits_of(drive: Drive, motion: Motion, wanted: Wanted) -> tuple[DriveLimit, ...]:
    """Return what the drive allows of what is wanted; what lacks a number is left out.

    Raises:
        InputError: named after the field of `Wanted` that cannot be.
    """
    if drive.kind is DriveKind.ROTARY:
        return (*turning_limits(drive, wanted), *_extruder(wanted))
    parts = (_layer(drive, wanted), _speed(drive, motion, wanted), _extruder(wanted), _load(drive, wanted),
             _belt(drive, wanted), _rods(motion, wanted))  # fmt: skip
    return tuple(limit for part in parts for limit in part)


def _layer(drive: Drive, wanted: Wanted) -> Iterator[DriveLimit]:
    if wanted.height_mm is None:
        return
    question = question_height(drive, wanted.height_mm)
    if question is not None:
        yield DriveLimit(tr("Step grid"), question.says, asks=True)
        return
    says = tr(
        "{height} mm is {count} full steps: layers are alike.",
        height=short(wanted.height_mm),
        count=round(exact_mm(wanted.height_mm) / full_step_travel(drive)),
    )
    yield DriveLimit(tr("Step grid"), says)


def _speed(drive: Drive, motion: Motion, wanted: Wanted) -> Iterator[DriveLimit]:
    ceilings = dict(_ceilings(drive, motion, wanted))
    if not ceilings:
        return
    about = tr("Speed")
    if wanted.step_rate_per_s is not None and wanted.speed_mm_s is not None:
        question = question_speed(drive, wanted.speed_mm_s, wanted.step_rate_per_s, motion)
        if question is not None:
            yield DriveLimit(about, question.says, asks=True)
            return
    what, least = min(ceilings.items(), key=lambda item: item[1])
    usable, speed = USABLE_SHARE * least, wanted.speed_mm_s or 0.0
    values = {
        "what": what,
        "ceiling": f"{least:.3g}",
        "usable": f"{usable:.3g}",
        "speed": short(speed),
    }
    if speed > usable * (1 + 1e-9):
        says = tr(
            "{speed} mm/s is too near to the {ceiling} mm/s that {what} allow; use up to {usable} mm/s.", **values
        )
        yield DriveLimit(about, says, asks=True)
    else:
        yield DriveLimit(about, tr("Use up to {usable} mm/s: {what} allow {ceiling} mm/s.", **values))
    if motion is Motion.DELTA:
        yield DriveLimit(
            about, tr("That is the carriage's: near the rim it runs two to three times as fast as the nozzle.")
        )


def _ceilings(drive: Drive, motion: Motion, wanted: Wanted) -> Iterator[tuple[Words, float]]:
    if wanted.step_rate_per_s is not None:
        yield tr("the steps of the controller"), speed_ceiling(drive, wanted.step_rate_per_s, motion).ceiling_mm_s
    v, i, lh = wanted.supply_v, wanted.current_a, wanted.inductance_mh
    if v is not None and i is not None and lh is not None:
        yield tr("the windings of the motor"), WINDING_SHARE * winding_ceiling_mm_s(drive, v, i, lh)


def _extruder(wanted: Wanted) -> Iterator[DriveLimit]:
    """Hold the extruder's steps against the same ceiling: S Q / A, Q the flow and A the section of the filament."""
    steps_mm, flow, filament = wanted.extruder_steps_mm, wanted.flow_mm3_s, wanted.filament_mm
    if steps_mm is None or flow is None or filament is None:
        return
    for field, value in (("extruder_steps_mm", steps_mm), ("flow_mm3_s", flow), ("filament_mm", filament)):
        if not 0 < value < math.inf:
            raise InputError(field, tr("“{value}” must be a number above 0; type it again.", value=short(value)))
    per_mm3 = steps_mm / (math.pi * filament**2 / 4)
    values = {"flow": short(flow), "filament": short(filament), "needed": f"{flow * per_mm3:.0f}"}
    about = tr("Extruder")
    if wanted.step_rate_per_s is None:
        yield DriveLimit(about, tr("{flow} mm³/s of {filament} mm filament needs {needed} steps/s.", **values))
        return
    ceiling = speed_from_steps(wanted.step_rate_per_s, per_mm3)
    values |= {"rate": f"{wanted.step_rate_per_s:.0f}", "usable": f"{USABLE_SHARE * ceiling:.3g}"}
    if flow > USABLE_SHARE * ceiling * (1 + 1e-9):
        says = tr(
            "{flow} mm³/s of {filament} mm filament needs {needed} steps/s; this controller's ceiling is {rate}. Use "
            "up to {usable} mm³/s, or fewer microsteps at the extruder.",
            **values,
        )
        yield DriveLimit(about, says, asks=True)
    else:
        says = tr("{flow} mm³/s needs {needed} steps/s of {rate}; up to {usable} mm³/s may be used.", **values)
        yield DriveLimit(about, says)


def _load(drive: Drive, wanted: Wanted) -> Iterator[DriveLimit]:
    if wanted.load_ratio is None:
        return
    lag, one = load_lag_mm(drive, wanted.load_ratio), microstep_torque_ratio(drive)
    values = {"lag": f"{lag:.2g}", "twice": f"{2 * lag:.2g}", "one": f"{100 * one:.2g}",
              "sd": f"{rounding_sd_mm(drive):.2g}", "load": short(100 * wanted.load_ratio)}  # fmt: skip
    says = tr(
        "{load} % of the holding torque lets the motor lag by {lag} mm, which looks like a reversal of {twice} mm. One "
        "microstep holds {one} %; rounding to it scatters by {sd} mm.",
        **values,
    )
    yield DriveLimit(tr("Load"), says)
    if one < wanted.load_ratio:
        says = tr("Friction above {one} % swallows single microsteps: finer ones are no finer travel.", **values)
        yield DriveLimit(tr("Load"), says, asks=True)


def _belt(drive: Drive, wanted: Wanted) -> Iterator[DriveLimit]:
    width, span, tone = wanted.belt_width_mm, wanted.span_mm, wanted.tone_hz
    if drive.kind is not DriveKind.BELT or width is None or span is None or tone is None:
        return
    if not width > 0:
        raise InputError("belt_width_mm", tr("The width of the belt is above 0 mm; measure it."))
    tension = size_text(belt_tension(tone, span, _BELT_G_M * width))
    says = tr("Its tension is {tension}; hold the belts of a pair against each other.", tension=tension)
    yield DriveLimit(tr("Belt"), says)


def _rods(motion: Motion, wanted: Wanted) -> Iterator[DriveLimit]:
    rod, measured, radius = wanted.rod_mm, wanted.rod_measured_mm, wanted.radius_mm
    if motion is not Motion.DELTA or rod is None or measured is None or radius is None:
        return
    scale = scale_from_rods(rod, measured, radius)
    values = {"scale": value_text(scale), "measured": short(measured)}
    if scale.significant:
        says = tr(
            "Parts come out {scale} off in X and Y although the bed probes flat: enter {measured} mm, then trim end "
            "stops and radius for a flat bed again. Leave the steps.",
            **values,
        )
        yield DriveLimit(tr("Rods"), says, asks=True)
    else:
        yield DriveLimit(tr("Rods"), tr("They agree: {scale} of the size in X and Y.", **values))
