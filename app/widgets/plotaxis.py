"""An axis whose numbers read well: steps of 1, 2 or 5, just the decimals they need, a typographic minus."""

from __future__ import annotations

import math

import numpy as np
import pyqtgraph as pg

from app.widgets.plotdata import Floats


class Axis(pg.AxisItem):  # type: ignore[misc]
    """An axis with ticks in steps of 1, 2 or 5 and a typographic minus; the unit stands in the label's text."""

    def tickSpacing(self, low: float, high: float, length_px: float) -> list[tuple[float, float]]:
        """Return one step, at least 28 px apart upright and 60 px across."""
        apart_px = 60 if self.orientation == "bottom" else 28
        raw = (high - low) / max(length_px / apart_px, 1)
        decade = 10.0 ** math.floor(math.log10(raw))
        step = next(s for s in (1, 2, 5, 10) if s * decade >= raw * 0.999)
        return [(step * decade, 0.0)]

    def tickStrings(self, values: list[float], scale: float, spacing: float) -> list[str]:  # noqa: ARG002
        """Return the values with just the decimals that the step needs."""
        places = max(0, -math.floor(math.log10(spacing) + 1e-9))
        return [f"{round(value, places) + 0.0:.{places}f}".replace("-", "−") for value in values]

    def ticks(self, low: float, high: float, length_px: float) -> tuple[Floats, list[str]]:
        """Return values and texts of the ticks over a range."""
        spacing, values = self.tickValues(low, high, max(length_px, 1.0))[0]
        return np.array(values, dtype=float), self.tickStrings(list(values), 1.0, spacing)
