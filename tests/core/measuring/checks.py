"""Checks of invented instruments whose faults are known."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from core.measuring.checkpoints import bore_under_read
from core.measuring.checkreadings import CheckReadings
from core.measuring.instrumentkinds import Part, Plan, plan_check

FEATURE = 10.06
LAND = 0.4


def taken(
    kind: str = "caliper", plan: Plan = Plan.FULL, *, zero: float = 0.0, scale: float = 0.0, inside: float = 0.0,
    offset: float = 0.0, sd: float = 0.004, resolution: float = 0.01, rng: np.random.Generator | None = None,
    **settings: object,
) -> CheckReadings:
    """Return the readings of a plan by an instrument with these errors; without `rng` nothing scatters."""
    planned = plan_check(kind, plan)
    measured = []
    for reading in planned:
        true = FEATURE if reading.reference is None else reading.reference
        error = zero + scale * true
        if reading.part is Part.INSIDE:
            error = inside + scale * true - bore_under_read(LAND, true)
        if reading.part is Part.SECOND:
            error += offset
        noise = rng.normal(0.0, sd) if rng is not None else 0.0
        measured.append(float(np.round((true + error + noise) / resolution) * resolution))
    return CheckReadings(
        kind=kind,
        part=[reading.part for reading in planned],
        reference=[reading.reference for reading in planned],
        half_width=[reading.half_width for reading in planned],
        measured=measured,
        resolution=resolution,
        **settings,  # type: ignore[arg-type]
    )


def rows(kind: str, *readings: tuple[Part, float | None, float | None, float], **settings: object) -> CheckReadings:
    """Return a check typed row by row: part, reference, half-width, reading."""
    part, reference, half_width, measured = (list(column) for column in zip(*readings, strict=True))
    given = {"resolution": 0.01, **settings}
    return CheckReadings(kind, part, reference, half_width, measured, **given)  # type: ignore[arg-type]


def with_reading(readings: CheckReadings, row: int, value: float) -> CheckReadings:
    """Return the check with one reading changed."""
    measured: Sequence[float] = [value if place == row else y for place, y in enumerate(readings.measured)]
    return replace(readings, measured=measured)
