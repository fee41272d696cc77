"""The ranges from which a plot is first seen: readings, fit and bands whole, all else as far as they stay readable."""

from __future__ import annotations

import numpy as np

from app.widgets.plotdata import Bools, Floats, PlotData, Range

_ROOM = 0.08  # share of the range left free at either end of y
_NAME_ROOM = 0.22  # share of the range left free at the right, where the names of limits stand
_LENT = 0.45  # share by which unused readings, ground and warning curve may widen y on each side


def home_ranges(data: PlotData) -> tuple[Range, Range]:
    """Return the x and y ranges that show readings, fit and bands; the rest widens them only a little."""
    x_range = _x_range(data)
    low, high = _extent(data)
    low, high = _at_least(low, high, data.least_y_span)
    limit = _LENT * (high - low)
    floor, ceiling = low - limit, high + limit
    for values in _guests(data, x_range):
        low = min(low, max(_least(values, low), floor))
        high = max(high, min(_most(values, high), ceiling))
    pad = (2 if data.limits else 1) * _ROOM * (high - low)  # a limit at the edge of the range has its name in sight
    return x_range, (low - pad, high + pad)


def _x_range(data: PlotData) -> Range:
    """Return the places of readings with some room, and all of the curves; from zero where that is near and empty."""
    places = np.concatenate([np.empty(0), *(series.x for series in data.points)])
    ends = np.concatenate([np.empty(0), *(curve.x for curve in data.curves)])
    places, ends = places[np.isfinite(places)], ends[np.isfinite(ends)]
    every = np.concatenate([places, ends])
    low, high = _least(every, 0.0), _most(every, 1.0)
    pad = 0.05 * (high - low) or 0.5 * max(abs(high), 1.0)
    low, high = min(_least(places, low) - pad, low), max(_most(places, high) + pad, high)
    if any(line.name for line in data.limits):
        high += _NAME_ROOM * (high - low)
    return (0.0 if low <= 0.25 * high and _least(every, 0.0) >= 0 and _least(places, 1.0) > 0 else low), high


def _extent(data: PlotData) -> Range:
    """Return the lowest and highest y of used readings with their bars, of curves with their bands, and of limits."""
    lows, highs = [], []
    for series in data.points:
        use = np.isfinite(series.x) & np.isfinite(series.y) & ~series.hollow
        half = np.where(np.isfinite(series.U), series.U, 0.0)[use]
        lows.append(series.y[use] - half)
        highs.append(series.y[use] + half)
    for curve in data.curves:
        half = np.fmax(curve.confidence_half, curve.prediction_half)
        lows.append(curve.mean - half)
        highs.append(curve.mean + half)
    still = [line.y for line in data.limits] + ([np.zeros(1)] if data.zero_line else [])
    lows += still
    highs += still
    low, high = (np.concatenate(part) if part else np.empty(0) for part in (lows, highs))
    low, high = low[np.isfinite(low)], high[np.isfinite(high)]
    return _least(low, 0.0), _most(high, 0.0)


def _guests(data: PlotData, x_range: Range) -> list[Floats]:
    """Return the y of what may widen the range a little: unused readings, ground, warning curve."""
    guests = [series.y[series.hollow] for series in data.points]
    if data.ground is not None:
        half = data.ground.half_height[_within(data.ground.x, x_range)]
        guests += [half, -half]
    if data.warning_curve is not None:
        guests.append(data.warning_curve.y[_within(data.warning_curve.x, x_range)])
    return [values[np.isfinite(values)] for values in guests]


def _at_least(low: float, high: float, span: float) -> Range:
    lack = max(span, 1e-6 * max(abs(low), abs(high))) - (high - low)
    return (low, high) if lack <= 0 else (low - lack / 2, high + lack / 2)


def _within(x: Floats, x_range: Range) -> Bools:
    return (x >= x_range[0]) & (x <= x_range[1])


def _least(values: Floats, otherwise: float) -> float:
    return float(values.min()) if values.size else otherwise


def _most(values: Floats, otherwise: float) -> float:
    return float(values.max()) if values.size else otherwise
