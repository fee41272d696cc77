"""A kept size trial read back: its readings that count, and the fit of them."""

from __future__ import annotations

import math

from core.errors import InputError
from core.guidance.partgroups import rows_that_count
from core.guidance.sizetrial import SizeReadings, fit_readings
from core.part_size.lengths import PartTemperature
from core.part_size.sizeerror import SizeError
from core.records.rows import Instrument, Trial
from core.words import tr


def size_readings(trial: Trial) -> SizeReadings:
    """Return the readings of a kept size trial that count.

    Raises:
        InputError: field `value` where there is none, or one that is no number.
    """
    read = trial.readings
    used = rows_that_count(trial)
    if not used:
        raise InputError("value", tr("Trial № {number} holds no readings.", number=trial.id))
    if not all(math.isfinite(read[name][row]) for name in ("nominal_mm", "measured_mm") for row in used):
        raise InputError("value", tr("Trial № {number} holds a reading that is no number.", number=trial.id))
    part_c = trial.conditions.get("part_temperature_c")
    return SizeReadings(
        nominal_mm=[read["nominal_mm"][row] for row in used],
        measured_mm=[read["measured_mm"][row] for row in used],
        kind=[read["kind"][row] for row in used],
        axis=[read["axis"][row] for row in used],
        feature=[read["feature"][row] if "feature" in read else "" for row in used],
        tolerance=trial.conditions.get("tolerance", "m"),
        part_temperature=None if part_c is None else PartTemperature(float(part_c)),
    )


def fit_of(trial: Trial, instrument: Instrument | None) -> SizeError:
    """Fit a kept size trial again, with the uncertainties of an instrument."""
    return fit_readings(size_readings(trial), instrument)
