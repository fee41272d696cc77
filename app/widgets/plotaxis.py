"""An axis whose numbers read well: steps of 1, 2 or 5, just the decimals they need, a typographic minus; or dates."""

from __future__ import annotations

import math

import numpy as np
import pyqtgraph as pg
from PySide6.QtCore import QDate, Qt

from app.faults import or_else
from app.widgets.fields import local_text
from app.widgets.plotdata import Floats

_EPOCH = QDate(1970, 1, 1)
_DAYS = (1, 2, 7, 14, 28, 56, 91, 182, 364, 728, 1820, 3640)  # whole weeks, so that ticks keep their day of the week


class Axis(pg.AxisItem):  # type: ignore[misc]
    """An axis with ticks in steps of 1, 2 or 5 and a typographic minus; the unit stands in the label's text.

    With `dates` its values are days since 1970-01-01, the ticks whole days; with `whole` no tick stands between two
    whole numbers, for there is no half piece.
    """

    dates = whole = False

    @or_else([])
    def tickSpacing(self, low: float, high: float, length_px: float) -> list[tuple[float, float]]:
        """Return one step, at least 28 px apart upright and 60 px across."""
        if self.dates:
            apart_days = (high - low) / max(length_px / 88, 1)
            return [(float(next((step for step in _DAYS if step >= apart_days), _DAYS[-1])), 0.0)]
        apart_px = 60 if self.orientation == "bottom" else 28
        raw = (high - low) / max(length_px / apart_px, 1)
        decade = 10.0 ** math.floor(math.log10(raw))
        step = next(s for s in (1, 2, 5, 10) if s * decade >= raw * 0.999)
        return [(max(step * decade, 1.0) if self.whole else step * decade, 0.0)]

    @or_else([])
    def tickStrings(self, values: list[float], scale: float, spacing: float) -> list[str]:  # noqa: ARG002
        """Return the values with just the decimals that the step needs."""
        if self.dates:
            return [_EPOCH.addDays(round(day)).toString(Qt.DateFormat.ISODate) for day in values]
        places = max(0, -math.floor(math.log10(spacing) + 1e-9))
        return [local_text(f"{round(value, places) + 0.0:.{places}f}".replace("-", "−")) for value in values]

    def ticks(self, low: float, high: float, length_px: float) -> tuple[Floats, list[str]]:
        """Return values and texts of the ticks over a range."""
        spacing, values = self.tickValues(low, high, max(length_px, 1.0))[0]
        return np.array(values, dtype=float), self.tickStrings(list(values), 1.0, spacing)
