"""One laying of a plot: every shape as a path in pixels of the view, and the names that ask for a place.

Because the paths are in pixels, no pen is cosmetic: symbols keep their size in every zoom, and an export to SVG is the
same picture.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QPen

from app.theme import Tokens
from app.widgets import plotmarks as marks
from app.widgets.plotbands import lay_bands, lay_ground, thin_pen
from app.widgets.plotdata import (
    Bools,
    EventMark,
    FitCurve,
    Floats,
    LimitLine,
    PlotData,
    PointSeries,
    WarningCurve,
)
from app.widgets.plotframe import Frame, Name, Sheet, Shown, Stroke, series_ink, text_ink

WARNING_ROLE = 3  # the fourth data colour belongs to the curve that warns
CROWDED = 400  # joined points; above it the line alone is easier to read, and quicker
NAMED_EVENTS = 12  # the newest; more names would stand in one another's way


def lay_sheet(data: PlotData, frame: Frame, shown: Shown, theme: Tokens, y_ticks: Floats) -> Sheet:
    """Draw from the ground upwards."""
    sheet = Sheet(paper=QColor(theme.card))
    _lay_grid(sheet, frame, theme, y_ticks, zero=data.zero_line)
    for index, curve in enumerate(data.curves):
        _lay_curve(sheet, f"{index}", curve, data, frame, shown, theme)
    if data.warning_curve is not None and shown.warning:
        _lay_warning(sheet, data.warning_curve, frame, theme)
    for index, line in enumerate(data.limits):
        _lay_limit(sheet, f"{index}", line, frame, theme)
    _lay_events(sheet, data.events, frame, theme)
    for index, series in enumerate(data.points):
        if data.dense:
            sheet.fills.append(_cloud_outline(series, frame))
        _lay_points(sheet, f"{index}", series, data, frame, theme)
    _ask_for_sign_names(sheet, data, frame, theme)
    if data.ground is not None and shown.ground:
        lay_ground(sheet, data.ground, frame, theme)
    return sheet


def seen_points(series: PointSeries, *, dense: bool) -> Bools:
    """Return which points are drawn one by one: all that have a value; among too many only the flagged ones."""
    use = np.isfinite(series.x) & np.isfinite(series.y)
    return use & series.flagged if dense else use


def _lay_grid(sheet: Sheet, frame: Frame, theme: Tokens, y_ticks: Floats, *, zero: bool) -> None:
    left, right = np.zeros(y_ticks.size), np.full(y_ticks.size, frame.width_px)
    y = np.floor(frame.down(y_ticks)) + 0.5  # on the pixel, or a hairline looks grey and wide
    pen = QPen(marks.with_alpha(theme.hairline, 130), 1.0)
    sheet.strokes["grid"] = Stroke(marks.segments_path(left, y, right, y), -26, pen)
    if zero:
        level = np.floor(frame.down(np.zeros(2))) + 0.5
        line = np.column_stack([[0.0, frame.width_px], level])
        sheet.strokes["zero"] = Stroke(marks.line_path(*line.T), -24, QPen(marks.with_alpha(theme.quiet, 150), 1.0))
        sheet.edges.append(line)


def _lay_curve(
    sheet: Sheet, key: str, curve: FitCurve, data: PlotData, frame: Frame, shown: Shown, theme: Tokens
) -> None:
    ink = series_ink(curve.role, theme)
    if shown.bands:
        lay_bands(sheet, key, curve, frame, ink)
    line = frame.pixels(curve.x, curve.mean)
    sheet.strokes[f"mean {key}"] = Stroke(marks.line_path(*line.T), -10, QPen(ink, 2.0))
    sheet.lines.append(line)
    symbols = {series.symbol for series in data.points if series.role == curve.role and series.x.size}
    name, comma, rest = curve.name.partition(",")
    sign = (
        f" ({symbols.pop()})" if len(symbols) == 1 else ""
    )  # inside the text: before it, it would look like a reading
    if curve.name:
        sheet.names.append(Name(name + sign + comma + rest, line, text_ink(ink.name(), theme)))


def _lay_warning(sheet: Sheet, curve: WarningCurve, frame: Frame, theme: Tokens) -> None:
    ink = series_ink(WARNING_ROLE, theme)
    line = frame.pixels(curve.x, curve.y)
    pen = QPen(ink, 2.0, Qt.PenStyle.CustomDashLine)
    pen.setDashPattern([4.0, 3.0])
    near = np.abs(line[:, 1]) < 20 * frame.height_px  # dashes far outside would be laid for nothing
    sheet.strokes["warning"] = Stroke(marks.line_path(*line[near].T), -12, pen)
    sheet.lines.append(line)
    sheet.names.append(Name(curve.label, line, text_ink(ink.name(), theme)))


def _lay_limit(sheet: Sheet, key: str, limit: LimitLine, frame: Frame, theme: Tokens) -> None:
    line = frame.pixels(limit.x, limit.y)
    level = np.diff(limit.y) == 0
    flat = np.append(level, False) | np.append(False, level)
    line[flat, 1] = np.floor(line[flat, 1]) + 0.5  # on the pixel, as the grid
    pen = thin_pen(QColor(theme.box)) if limit.centre else QPen(QColor(theme.quiet), 1.5)
    if limit.dashed:
        pen.setStyle(Qt.PenStyle.CustomDashLine)
        pen.setDashPattern([6.0, 4.0])
    sheet.strokes[f"limit {key}"] = Stroke(marks.line_path(*line.T), -14, pen)
    broken = np.flatnonzero(~np.all(np.isfinite(line), axis=1))
    last = line[broken[-1] + 1 if broken.size else 0 :]
    sheet.edges.append(line)
    if limit.name and len(last):
        sheet.names.append(_limit_name(limit, last, frame, theme))


def _limit_name(limit: LimitLine, line: Floats, frame: Frame, theme: Tokens) -> Name:
    """Ask for a place behind the right end; where that is out of sight, along the line."""
    ink, end = text_ink(theme.quiet, theme), line[-1:]
    if 0 <= end[0, 0] <= frame.width_px:
        return Name(limit.name, end, ink, ("right",), at_points=True, short=limit.short)
    return Name(limit.name, line, ink, ("above", "below"), short=limit.short)


def _lay_events(sheet: Sheet, events: Sequence[EventMark], frame: Frame, theme: Tokens) -> None:
    """Draw the marks; each name stands beside the upper end of its own."""
    x = np.floor(frame.across(np.array([event.x for event in events]))) + 0.5
    columns = np.unique(x[(x > -1.0) & (x < frame.width_px + 1.0)])  # many thousands share those in sight
    pen = QPen(marks.with_alpha(theme.quiet, 190), 1.0, Qt.PenStyle.CustomDashLine)
    pen.setDashPattern([2.0, 3.0])
    low, high = np.full(columns.size, frame.height_px), np.zeros(columns.size)
    sheet.strokes["events"] = Stroke(marks.segments_path(columns, high, columns, low), -22, pen)
    for place, event in zip(x[-NAMED_EVENTS:].tolist(), events[-NAMED_EVENTS:], strict=True):
        upright = np.array([[place, 0.0], [place, frame.height_px]])
        sheet.edges.append(upright)
        sheet.names.append(Name(event.name, np.array([[place, 8.0], [place, 30.0]]), text_ink(theme.quiet, theme),
                                ("right", "left")))  # fmt: skip


def _lay_points(sheet: Sheet, key: str, series: PointSeries, data: PlotData, frame: Frame, theme: Tokens) -> None:
    seen = seen_points(series, dense=data.dense)
    if not seen.any():
        return
    ink, card = series_ink(series.role, theme), QColor(theme.card)
    at = frame.pixels(series.x, series.y)
    if series.joined and not data.dense:
        crowded = series.x.size > CROWDED
        line = np.insert(at, series.breaks, np.nan, axis=0)
        sheet.strokes[f"joined {key}"] = Stroke(marks.line_path(*line.T), -2, QPen(ink, 1.0))
        sheet.edges.append(line)
        seen = seen & series.flagged if crowded else seen
    half = np.where(np.isfinite(series.U), series.U, 0.0)
    top, bottom = frame.down(series.y + half), frame.down(series.y - half)
    barred = seen & (half > 0)
    size = _symbol_scale(data.point_count)
    edge = QPen(card, 1.0) if size > 0.7 else None  # edges of hundreds would hide one another
    shape = marks.scaled(marks.SYMBOLS[series.symbol], size)
    used, hollow = at[seen & ~series.hollow], at[seen & series.hollow]
    sheet.strokes[f"bars {key}"] = Stroke(
        marks.bars_path(at[barred, 0], top[barred], bottom[barred]), 0, QPen(ink, 1.2)
    )
    sheet.strokes[f"symbols {key}"] = Stroke(marks.at_places(shape, used), 2, edge, ink)
    sheet.strokes[f"hollow {key}"] = Stroke(marks.at_places(shape, hollow), 2, QPen(ink, 1.4), card)
    rings = marks.at_places(marks.scaled(marks.RING, size), at[seen & series.ringed])
    sheet.strokes[f"rings {key}"] = Stroke(rings, 4, QPen(ink, 1.5))
    crossed = at[seen & series.flagged]
    sheet.strokes[f"crosses {key}"] = Stroke(marks.at_places(marks.CROSS, crossed), 6, QPen(QColor(theme.warning), 2.0))
    reach = np.where(series.ringed, marks.RING_PX, marks.SYMBOL_PX)[seen] / 2 * size
    x, y = at[seen].T
    upper, lower = np.minimum(top[seen], y - reach), np.maximum(bottom[seen], y + reach)
    sheet.boxes.append(np.column_stack([x - reach, upper, x + reach, lower]))
    sheet.boxes.append(np.hstack([crossed + marks.CROSS_BOX_PX[:2], crossed + marks.CROSS_BOX_PX[2:]]))
    told = series.joined and len(data.points) == 1  # the axis says what they are
    if not told and series.role not in {curve.role for curve in data.curves}:  # no fitted line bears the name yet
        sheet.names.append(Name(series.name, at[seen], text_ink(ink.name(), theme), at_points=True))


def _cloud_outline(series: PointSeries, frame: Frame) -> Floats:
    """Return roughly where a density image lies, (n, 3): x, top, bottom; some thousand of its points tell."""
    at = frame.pixels(series.x, series.y)[:: series.x.size // 4000 + 1]
    at = at[np.all(np.isfinite(at), axis=1)]
    edges = np.linspace(0, frame.width_px, 33)
    column = np.clip(np.digitize(at[:, 0], edges) - 1, 0, 31)
    top, bottom = np.full(32, np.inf), np.full(32, -np.inf)
    np.minimum.at(top, column, at[:, 1])
    np.maximum.at(bottom, column, at[:, 1])
    return np.column_stack([(edges[:-1] + edges[1:]) / 2, top, bottom])


def _symbol_scale(points: int) -> float:
    """Return 1 for a few points, down to a half for hundreds, so that they stay apart."""
    return float(np.clip((40 / max(points, 1)) ** 0.4, 0.5, 1.0))


def _ask_for_sign_names(sheet: Sheet, data: PlotData, frame: Frame, theme: Tokens) -> None:
    """Say at one of them what rings and crosses mean; no legend needs to be looked up."""
    beside = (marks.CROSS_BOX_PX[:2] + marks.CROSS_BOX_PX[2:]) / 2
    signs = (
        ("○ ", data.ring_label, "ringed", theme.quiet, np.zeros(2)),
        ("✕ ", data.flag_label, "flagged", theme.warning, beside),
    )
    for sign, label, which, colour, offset in signs:
        places = [
            frame.pixels(series.x, series.y)[getattr(series, which) & seen_points(series, dense=data.dense)]
            for series in data.points
        ]
        at = np.concatenate([*places, np.empty((0, 2))]) + offset
        if label and len(at):
            sheet.names.append(Name(sign + label, at, text_ink(colour, theme), at_points=True))
