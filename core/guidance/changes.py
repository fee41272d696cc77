"""The settings that were ever in force: which can be told apart by their checks, and what held at a moment.

One change, one check. A second change that acts on the same thing before the first was checked makes both "not
attributable": whatever the next print shows may come from either. Which settings act on what: common practice, no
source.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from core.guidance.logentries import plain_value, setting_name_words
from core.records.rows import SettingInForce
from core.words import Words, tr

# What a setting acts on; one that is not named here may act on anything.
_ACTS_ON = {
    "extruder_steps_mm": {"feed"},
    "filament_diameter": {"amount"},
    "flow_factor": {"amount", "outset"},
    "contour_offset": {"outset"},
    "shrink_allowance": {"scale"},
    "axis_scale": {"scale"},
    "scale": {"scale"},
    "steps": {"scale"},
    "skew": {"skew"},
    "nozzle_temperature": {"amount"},
    "retraction": {"retraction"},
    "pressure_lag": {"corners"},
    "cornering": {"corners"},
    "cooling": {"cooling"},
    "first_layer_gap": {"squash"},
    "height_offset": {"squash"},
    "print_speed": {"pace"},
    "acceleration": {"pace"},
}
_SAME_RATIO = 1e-6
_AXES = ("x", "y", "z", "xy", "xz", "yz")


class Attribution(StrEnum):
    """What can be said of the effect of a change."""

    CHECKED = "checked"
    OPEN = "open"
    UNDONE = "undone"
    NOT_ATTRIBUTABLE = "not_attributable"


@dataclass(frozen=True, slots=True)
class Change:
    """A setting with what can be said of its effect.

    Attributes:
        in_force: whether it still holds.
        with_ids: the other changes whose effect cannot be told from its own.
    """

    setting: SettingInForce
    attribution: Attribution
    in_force: bool
    with_ids: tuple[int, ...] = ()


def judge_changes(settings: Sequence[SettingInForce], serial_of: Mapping[int, int]) -> tuple[Change, ...]:
    """Judge all changes of one machine, newest first.

    Args:
        settings: every setting that was ever in force on the machine, in any order.
        serial_of: serial numbers of the kept trials that verified some of them, by their ids.
    """
    ordered = sorted(settings, key=lambda setting: (setting.serial or 0, setting.id or 0))
    undone = {setting.undoes for setting in ordered if setting.undoes is not None}
    confused: dict[int, list[int]] = {}
    for place, second in enumerate(ordered):
        for first in ordered[:place]:
            if _cannot_be_told_apart(first, second, serial_of) and first.id not in undone:
                confused.setdefault(first.id or 0, []).append(second.id or 0)
                confused.setdefault(second.id or 0, []).append(first.id or 0)
    newest = {(setting.lot_id, setting.name): setting.id for setting in ordered}
    found = [
        Change(
            setting,
            _attribution(setting, undone, confused),
            newest[setting.lot_id, setting.name] == setting.id,
            tuple(confused.get(setting.id or 0, ())),
        )
        for setting in ordered
    ]
    return tuple(reversed(found))


def _attribution(setting: SettingInForce, undone: set[int], confused: Mapping[int, Sequence[int]]) -> Attribution:
    if setting.id in undone:
        return Attribution.UNDONE
    if setting.id in confused:
        return Attribution.NOT_ATTRIBUTABLE
    return Attribution.CHECKED if setting.verified_by is not None else Attribution.OPEN


def _cannot_be_told_apart(first: SettingInForce, second: SettingInForce, serial_of: Mapping[int, int]) -> bool:
    """Whether the second change came before the first was checked, and acts on the same thing."""
    if second.serial == first.serial or second.undoes is not None:
        return False  # one trial's changes are one change; an undoing is the end of one
    if first.old == first.new or second.old == second.new:
        return False  # what was found right and written down changes nothing
    if first.lot_id is not None and second.lot_id is not None and first.lot_id != second.lot_id:
        return False
    checked_at = serial_of.get(first.verified_by) if first.verified_by is not None else None
    if checked_at is not None and checked_at < (second.serial or 0):
        return False
    one, other = acts_on(first.name), acts_on(second.name)
    return not one or not other or bool(one & other)


def acts_on(name: str) -> frozenset[str]:
    """Return what a setting acts on; nothing where nobody knows."""
    stem, _, axis = name.rpartition("_")
    if axis in _AXES and stem in _ACTS_ON:
        return frozenset(_ACTS_ON[stem])
    return frozenset(_ACTS_ON.get(name, ()))


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
            return max(of_lot, key=lambda setting: (setting.serial or 0, setting.id or 0))
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


def now_in_force(settings: Sequence[SettingInForce], lot_id: int | None) -> tuple[SettingInForce, ...]:
    """Return what holds now by name: of the lot where it has a value of its own, else of the machine as such."""
    ordered = sorted(settings, key=lambda setting: (setting.serial or 0, setting.id or 0))
    found = {setting.name: setting for setting in ordered if setting.lot_id is None}
    if lot_id is not None:
        found |= {setting.name: setting for setting in ordered if setting.lot_id == lot_id}
    return tuple(found[name] for name in sorted(found))
