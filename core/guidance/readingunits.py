"""In which unit the readings of a kept trial are, and the steps they were taken at, row by row.

A row keeps the unit that was typed with its reading. What is scored, or measured at a step, is typed without one: the
way it is read tells its unit, and the ladder or the levels that a row belongs to tell that of its step.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from core.guidance.motionadvice import UNITS
from core.motion_trials.ladders import OF_ANY_KIND, Read, ladders
from core.records.rows import Trial

OF_SCORES = "of 4"  # of a score from 0 to 4
OF_PADS = "of ±5"  # of a score from -5 to +5
_STEPPED = ("ladder", "speed")
_RUNS = "half"  # runs at the usual and at half speed


def reading_units(trial: Trial) -> list[str]:
    """Return the unit of each reading; empty where it has none, or nobody knows it."""
    readings, count = trial.readings, max(map(len, trial.readings.values()), default=0)
    if trial.subject == "top":
        return [OF_PADS] * count
    if trial.subject in _STEPPED:
        return list(_told_units(readings, [""] * count, trial.conditions))
    typed = readings.get("unit", ["mm"] * count)
    return ["mm" if unit == "in" else str(unit or "") for unit in typed]  # what is typed in inch is stored in mm


def step_units(trial: Trial) -> list[str | None]:
    """Return the unit of the step of each row; empty where nobody knows it, None for a numbered run, which has none."""
    if trial.subject not in _STEPPED:
        return []
    groups = [_group(name) for name in trial.readings.get("axis", ())]
    if trial.subject == "speed":
        return [None if of == _RUNS else UNITS.get(of, "") for of, _ in groups]
    return [ladders()[key].unit if key in ladders() else "" for key, _ in groups]


def read_with_instrument(trial: Trial) -> bool:
    """Return whether an instrument of the shop was read: none is where steps are scored, or read in another unit."""
    units = reading_units(trial)
    return trial.subject not in (*_STEPPED, "top") or any(
        raw and unit == "mm" for raw, unit in zip(trial.readings.get("raw", ()), units, strict=False)
    )


def _told_units(
    readings: Mapping[str, Sequence[Any]], empty: Sequence[str], conditions: Mapping[str, Any]
) -> Iterator[str]:
    """Yield what the way of reading tells: a judge scores, a criterion has its unit, widths are lengths.

    A value of any other kind has the unit that was typed for those of the trial's own group; rows that were read in
    another way before have none.
    """
    own, typed = f"{conditions.get('ladder')}/{conditions.get('read')}", str(conditions.get("value_unit") or "")
    judges, criteria = readings.get("judge", empty), readings.get("criterion", empty)
    for judge, name, group in zip(judges, criteria, readings.get("axis", empty), strict=True):
        key, read = _group(group)
        criterion = ladders()[key].criterion(str(name)) if name and key in ladders() else None
        other = "mm" if read == Read.WIDTHS else typed if group == own and read in OF_ANY_KIND else ""
        yield OF_SCORES if judge else criterion.unit if criterion else other


def _group(name: object) -> tuple[str, str]:
    """Return what the rows of a group were varied by, and how they were read."""
    of, _, read = str(name).partition("/")
    return of, read
