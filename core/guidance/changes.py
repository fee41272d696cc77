"""The settings that were ever in force: what held at a moment, and whether a change started from it."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from core.guidance.logentries import change_words, plain_value, setting_name_words
from core.guidance.settingorder import in_order
from core.records.rows import SettingInForce
from core.words import Words, side_by_side, tr

_SAME_RATIO = 1e-6


def in_force_when(
    settings: Sequence[SettingInForce], name: str, lot_id: int | None, at: datetime | None
) -> SettingInForce | None:
    """Return what was set before a moment, such as when a piece was made: of the lot, else of the machine as such.

    Args:
        settings: every setting that was ever in force on the machine, in any order.
        name: of the setting.
        lot_id: the lot in use.
        at: the moment; what is set at that very moment holds only after it. None for now.
    """
    earlier = [setting for setting in settings if setting.name == name and setting.since is not None]
    earlier = [setting for setting in earlier if at is None or (setting.since is not None and setting.since < at)]
    for wanted in dict.fromkeys((lot_id, None)):
        of_lot = [setting for setting in earlier if setting.lot_id == wanted]
        if of_lot:
            return in_order(of_lot)[-1]
    return None


def wrong_base(setting: SettingInForce, settings: Sequence[SettingInForce], made_at: datetime) -> SettingInForce | None:
    """Return what was in force when the piece was made, where a change did not start from it; None where it did.

    Args:
        setting: the change.
        settings: every setting that was ever in force on the machine.
        made_at: when the piece was made, or its trial begun.
    """
    before = [other for other in settings if (other.serial or 0) < (setting.serial or 0)]
    held = in_force_when(before, setting.name, setting.lot_id, made_at)
    if held is None or setting.old is None or abs(held.new - setting.old) <= _SAME_RATIO * max(abs(held.new), 1.0):
        return None
    return held


def base_words(setting: SettingInForce, settings: Sequence[SettingInForce], made_at: datetime) -> Words | None:
    """Say where a change did not start from what was in force when the piece was made; None where it did."""
    held = wrong_base(setting, settings, made_at)
    if held is None or setting.old is None:
        return None
    return tr(
        "{name}: the correction started from {old}, but {held} was in force when the trial was begun. Undo it in the "
        "Logbook unless the piece was made with {old}.",
        name=setting_name_words(setting.name),
        old=plain_value(setting.old, setting.unit),
        held=plain_value(held.new, held.unit),
    )


def put_words(trial_id: int | None, settings: Sequence[SettingInForce]) -> Words | None:
    """Say what a kept trial has put in force anew; None where it left all as it was.

    Args:
        trial_id: number of the trial.
        settings: every setting that was ever in force on the machine.
    """
    own = [setting for setting in settings if setting.trial_id == trial_id and setting.new != setting.old]
    if not own:
        return None
    return tr("In force now: {changes}.", changes=side_by_side(map(change_words, in_order(own)), ", "))


def now_in_force(settings: Sequence[SettingInForce], lot_id: int | None) -> tuple[SettingInForce, ...]:
    """Return what holds now by name: of the lot where it has a value of its own, else of the machine as such."""
    ordered = in_order(settings)
    found = {setting.name: setting for setting in ordered if setting.lot_id is None}
    if lot_id is not None:
        found |= {setting.name: setting for setting in ordered if setting.lot_id == lot_id}
    return tuple(found[name] for name in sorted(found))
