"""The readings of kept pieces by classes of features: which count, and how far a gauge can be off on each.

Windows, notches and bores are one class each, each with mistakes of its own. Pieces printed before the newest setting
or repair of a machine were other parts.

Reference: the classes are common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

from core.guidance.splitshop import newest_event
from core.measuring.choices import one_of
from core.measuring.reach import within_reach
from core.part_size.features import FeatureKind
from core.part_size.lengths import PartTemperature, check_lengths
from core.quantity import coverage_factor
from core.records.rows import Event, Instrument, SettingInForce, Trial
from core.words import Words, tr

Floats = NDArray[np.float64]
_PART_EVENTS = ("belt_changed", "screw_changed", "nozzle_other", "crash", "path_program")  # as in resources/walk.toml
_PART_SETTINGS = ("shrink_allowance", "axis_scale", "contour_offset", "flow_ratio", "flow_factor")


class Group(StrEnum):
    """Features that go wrong together."""

    OUTSIDE = "outside"
    INSIDE = "inside"
    HOLE = "hole"
    HEIGHT = "height"


GROUP_OF = {
    FeatureKind.OUTSIDE: Group.OUTSIDE,
    FeatureKind.TOOTH: Group.OUTSIDE,
    FeatureKind.BOSS: Group.OUTSIDE,
    FeatureKind.CLOSED_HOLE: Group.INSIDE,
    FeatureKind.NOTCH: Group.INSIDE,
    FeatureKind.GAP: Group.INSIDE,
    FeatureKind.BORE: Group.HOLE,
    FeatureKind.HEIGHT: Group.HEIGHT,
}


def group_words(group: Group) -> Words:
    """Return the name of a class of features for people."""
    return {
        Group.OUTSIDE: tr("outside lengths"),
        Group.INSIDE: tr("windows and notches"),
        Group.HOLE: tr("round bores"),
        Group.HEIGHT: tr("heights"),
    }[group]


@dataclass(frozen=True, slots=True, eq=False)
class Parts:
    """Readings of one class over pieces (N): number of the trial, nominal length, error."""

    group: Group
    trial: tuple[int, ...]
    nominal_mm: Floats
    error_mm: Floats

    @property
    def pieces(self) -> int:
        """How many pieces."""
        return len(set(self.trial))


def pieces_since(
    settings: Sequence[SettingInForce], lot_id: int | None, events: Sequence[Event] = ()
) -> datetime | None:
    """Return when parts of this machine and lot last became others, by a setting or an event; None for never.

    Args:
        settings: that were ever in force on the machine.
        lot_id: of the lot.
        events: of the machine.
    """
    found = [
        setting.since
        for setting in settings
        if setting.since is not None and setting.lot_id in (None, lot_id) and setting.name.startswith(_PART_SETTINGS)
    ]
    return max([*found, *newest_event(events, _PART_EVENTS).values()], default=None)


def parts_of(trials: Sequence[Trial]) -> tuple[Parts, ...]:
    """Return the readings that count, by class; errors are those at 20 degrees Celsius.

    Args:
        trials: kept size trials with their readings, one a piece.
    """
    found: dict[Group, list[tuple[int, float, float]]] = {}
    for trial in trials:
        for kind, _, nominal, error in feature_errors(trial):
            if group := GROUP_OF.get(kind):
                found.setdefault(group, []).append((trial.id or 0, nominal, error))
    return tuple(
        Parts(group, tuple(row[0] for row in rows), *(np.array([row[k] for row in rows]) for k in (1, 2)))
        for group in Group
        if (rows := found.get(group))
    )


def rows_that_count(trial: Trial) -> list[int]:
    """Return the rows of a size trial that hold a reading and a nominal length and are not excluded."""
    read = trial.readings
    count = len(read.get("measured_mm", ()))
    excluded = read.get("excluded", [False] * count)
    return [
        row
        for row in range(count)
        if not excluded[row] and read["measured_mm"][row] is not None and read["nominal_mm"][row] is not None
    ]


def feature_errors(trial: Trial) -> list[tuple[FeatureKind, str, float, float]]:
    """Return kind, axis, nominal length and error (mm) of each feature of a size trial, the mean of its repeats."""
    read = trial.readings
    counted = rows_that_count(trial)
    used = [row for row in counted if one_of(FeatureKind, read["kind"][row], "kind", row) is not FeatureKind.TRAVEL]
    if not used:
        return []
    part_c = trial.conditions.get("part_temperature_c")
    columns = {name: [read[name][row] for row in used] for name in ("nominal_mm", "measured_mm", "kind", "axis")}
    features = [read["feature"][row] if "feature" in read else "" for row in used]
    temperature = None if part_c is None else PartTemperature(float(part_c))
    lengths = check_lengths(**columns, feature=features, part_temperature=temperature, layers=None)
    by_label: dict[tuple[str, ...], list[int]] = {}
    for row, label in enumerate(lengths.labels):
        by_label.setdefault(label, []).append(row)
    return [
        (
            lengths.kinds[rows[0]],
            lengths.axes[rows[0]],
            float(lengths.wanted_mm[rows[0]]),
            float(np.mean(lengths.error_mm[rows])),
        )
        for rows in by_label.values()
    ]


@within_reach
def guard_of(group: Group, instrument: Instrument | None) -> tuple[float, float]:
    """Return the expanded uncertainty that no repeat removes: at zero length (mm), and its growth with the length."""
    if instrument is None:
        return 0.0, 0.0
    inside = group in (Group.INSIDE, Group.HOLE)
    k = coverage_factor(math.inf)
    return k * (instrument.u_inside_zero_mm if inside else instrument.u_outside_zero_mm), k * instrument.u_scale_ratio
