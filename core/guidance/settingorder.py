"""The settings of a machine in the order in which they came into force, and which of them were undone."""

from __future__ import annotations

from collections.abc import Iterable

from core.records.rows import SettingInForce


def in_order(settings: Iterable[SettingInForce]) -> list[SettingInForce]:
    """Return settings as they came into force, the oldest first; those of one trial as they were stored."""
    return sorted(settings, key=lambda setting: (setting.serial or 0, setting.id or 0))


def undone_ids(settings: Iterable[SettingInForce]) -> set[int]:
    """Return the ids of what was undone; what an undone undoing took back stands again."""
    undone: set[int] = set()
    for setting in reversed(in_order(settings)):
        if setting.undoes is not None and setting.id not in undone:
            undone.add(setting.undoes)
    return undone
