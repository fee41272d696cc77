"""What is on record of machine and lot where speed is tried: how much the hot end melts, and the level in force."""

from __future__ import annotations

from typing import TYPE_CHECKING

from app.context import Context
from app.pages.motion_trials.speedform import SPEED
from core.errors import StoreError
from core.records.rows import SettingInForce

if TYPE_CHECKING:
    from core.guidance.halfspeedadvice import HalfSpeedJudgement
    from core.guidance.motionadvice import SpeedJudgement


def ceiling_mm3_s(context: Context) -> float | None:
    """Return the flow ceiling measured for this lot, or the one of the machine's record."""
    machine, lot = context.machine, context.lot
    if machine is None:
        return None
    try:
        found = context.store.newest("flow_ceiling", machine.id, lot.id) if lot else None
    except StoreError:
        found = None  # keeping will say what is wrong with the store
    stated = machine.limits.get("max_flow_mm3_s")
    return found[1].value if found else float(stated) if stated else None


def level_to_put_in_force(
    context: Context, judged: SpeedJudgement | HalfSpeedJudgement | None
) -> tuple[SettingInForce, ...]:
    """Return the level advised, for this lot on this machine; the same level again verifies the one in force."""
    from core.guidance.motionadvice import UNITS, SpeedJudgement

    machine, lot_id = context.machine, context.lot_id
    if machine is None or machine.id is None or not isinstance(judged, SpeedJudgement) or judged.new_value is None:
        return ()
    of = judged.readings.of
    name = "print_speed" if of == SPEED else "acceleration"
    now = context.store.in_force(name, machine.id, lot_id)
    if now is not None and now.lot_id == lot_id and now.new == judged.new_value:
        return (now,)
    old = now.new if now is not None and now.lot_id == lot_id else None
    return (SettingInForce(machine.id, lot_id, name, old, judged.new_value, UNITS[of]),)
