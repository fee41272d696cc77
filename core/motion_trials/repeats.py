"""What repeats along an axis: the parts of its drive by their periods, to tell their marks from ringing.

    tooth p      pulley turn p z      lead P starts      full step (one turn)/M      electrical cycle 4 full steps

Symbols: p pitch of the belt or rack, z teeth of the pulley, P pitch of the screw, M full steps of the motor per turn.

Reference: core.machine_geometry.drive has the feed constants; a bearing repeats with its circumference, elementary.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

from core.measuring.finite import finite_in
from core.measuring.reach import within_reach
from core.motion_trials.ringing import Part
from core.words import tr

_CYCLE = 4  # full steps after which the field of a stepping motor repeats


@within_reach
@finite_in("bearing_mm")
def parts_of(drive: Mapping[str, Any] | None, bearing_mm: float | None = None) -> tuple[Part, ...]:
    """Return what repeats along an axis.

    Args:
        drive: parts of the drive as a machine keeps them (kind, pitch_mm, teeth, starts, full_steps); None: unknown.
        bearing_mm: diameter over which a bearing or idler rolls on the axis; None where there is none.

    Raises:
        InputError: field `bearing_mm` or `drive`, no number of a workshop.
    """
    found = []
    drive = drive or {}
    pitch, turn_mm = _number(drive, "pitch_mm"), 0.0
    if pitch and drive.get("kind") == "screw":
        turn_mm = pitch * (_number(drive, "starts") or 1.0)
        found.append(Part(tr("lead of the screw, {mm:g} mm", mm=turn_mm), turn_mm))
    elif pitch and (teeth := _number(drive, "teeth")):
        turn_mm = pitch * teeth
        found.append(Part(tr("tooth of the belt, {mm:g} mm", mm=pitch), pitch))
        found.append(Part(tr("turn of the pulley, {mm:g} mm", mm=turn_mm), turn_mm))
    if turn_mm and (steps := _number(drive, "full_steps")):
        full = turn_mm / steps
        found.append(Part(tr("full step of the motor, {mm:g} mm", mm=full), full))
        found.append(Part(tr("electrical cycle of the motor, {mm:g} mm", mm=_CYCLE * full), _CYCLE * full))
    if bearing_mm:
        around = math.pi * bearing_mm
        found.append(Part(tr("turn of a bearing of {d:g} mm, {mm:.1f} mm", d=bearing_mm, mm=around), around))
    return tuple(found)


def _number(drive: Mapping[str, Any], key: str) -> float | None:
    value = drive.get(key)
    return float(value) if isinstance(value, int | float) and value > 0 else None
