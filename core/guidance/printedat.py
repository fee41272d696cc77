"""At which nozzle and bed temperature a piece was printed: what was in force when its readings were begun.

Nobody reads a temperature off a cold part. What the machine was told is in force by then, for the lot or for the
machine as such; a temperature that was never put in force is not known, and not guessed.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import datetime
from typing import Any

from core.guidance.changes import in_force_when
from core.records.rows import SettingInForce
from core.words import Words, side_by_side, tr

NOZZLE, BED = "nozzle_temperature", "bed_temperature"
_KEY = {NOZZLE: "nozzle_temperature_c", BED: "bed_temperature_c"}  # as a trial keeps them


def heat_in_force(settings: Sequence[SettingInForce], lot_id: int | None, at: datetime | None) -> dict[str, float]:
    """Return the temperatures in force at a moment as a trial keeps them; one that nobody set is left out.

    Args:
        settings: every setting that was ever in force on the machine.
        lot_id: the lot in use.
        at: when the readings of the piece were begun; None for now.
    """
    held = {key: in_force_when(settings, name, lot_id, at) for name, key in _KEY.items()}
    return {key: setting.new for key, setting in held.items() if setting is not None}


def nozzle_of(conditions: Mapping[str, Any]) -> float | None:
    """Return the nozzle temperature (°C) that a trial was kept with; None where it knows none."""
    value = conditions.get(_KEY[NOZZLE])
    return float(value) if isinstance(value, int | float) else None


def heat_words(conditions: Mapping[str, Any]) -> Words | None:
    """Return the temperatures that a trial was kept with, for people; None where it knows none."""
    told = {key: conditions.get(key) for key in _KEY.values()}
    known = {key: float(value) for key, value in told.items() if isinstance(value, int | float)}
    says = []
    if (nozzle := known.get(_KEY[NOZZLE])) is not None:
        says.append(tr("nozzle {temperature:g} °C", temperature=nozzle))
    if (bed := known.get(_KEY[BED])) is not None:
        says.append(tr("bed {temperature:g} °C", temperature=bed))
    return side_by_side(says, ", ") if says else None
