"""Empty rows of a readings table for the gauges of a test piece."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from core.pieces.piece import Gauge


def rows_of(gauges: Sequence[Gauge], times: Sequence[int] | None = None) -> list[dict[str, Any]]:
    """Return one row for each reading, round by round, so that a drift does not copy into one gauge.

    Args:
        gauges: in the order that spares the hand.
        times: how often each is read; once when None.
    """
    counts = list(times) if times is not None else [1] * len(gauges)
    return [
        {
            "feature": gauge.name,
            "axis": gauge.axis,
            "kind": str(gauge.kind),
            "nominal_mm": gauge.nominal_mm,
            "nominal_raw": f"{gauge.nominal_mm:.3f}".rstrip("0").ljust(len(f"{gauge.nominal_mm:.2f}"), "0"),
        }
        for number in range(max(counts, default=0))
        for gauge, count in zip(gauges, counts, strict=True)
        if number < count
    ]
