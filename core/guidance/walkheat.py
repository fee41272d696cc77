"""Whether a result was found at the nozzle temperature that is in force now: a flow factor holds within 5 K of it.

Reference: the limit: common practice, no source (`core.flow_trials.conditions`).
"""

from __future__ import annotations

from collections.abc import Sequence

from core.flow_trials.conditions import SAME_TEMPERATURE_K
from core.records.rows import SettingInForce

_HEAT = "nozzle_temperature"


def heat_moved(
    settings: Sequence[SettingInForce], lot_id: int | None, since: int
) -> tuple[float, SettingInForce] | None:
    """Return the nozzle temperature (°C) that was in force, and what is now where that is further off than 5 K.

    Args:
        settings: ever in force on the machine, in any order.
        lot_id: the lot that the result is of; its own temperature goes before that of the machine.
        since: serial of the result.

    Returns:
        None where it did not move so far, or where nobody knows what was in force then.
    """
    known = sorted(
        (setting for setting in settings if setting.name == _HEAT and setting.lot_id in (None, lot_id)),
        key=lambda setting: (setting.lot_id is not None, setting.serial or 0),
    )
    now = known[-1] if known else None
    if now is None or (now.serial or 0) <= since:
        return None
    before = [setting for setting in known if (setting.serial or 0) <= since]
    later = next(setting for setting in known if (setting.serial or 0) > since and setting.lot_id == now.lot_id)
    then_c = before[-1].new if before else later.old
    if then_c is None or abs(now.new - then_c) <= SAME_TEMPERATURE_K:
        return None
    return then_c, now
