"""Shapes and inks of a plot, in pixels: symbols, error bars, bands, crosses, and text that can be read."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np
import pyqtgraph as pg
from numpy.typing import NDArray
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QImage, QPainterPath, QPolygonF, QTransform

Floats = NDArray[np.float64]

SYMBOL_PX = 11.0
RING_PX = 19.0
CROSS_PX = 7.0
CROSS_BOX_PX = np.array([5.0, -15.0, 15.0, -5.0])  # left, top, right, bottom around the cross beside a point
_CAP_PX = 3.0


def _polygon(*corners: tuple[float, float]) -> QPainterPath:
    path = QPainterPath()
    path.addPolygon(QPolygonF([QPointF(x, y) for x, y in corners]))
    path.closeSubpath()
    return path


def _circle(diameter: float) -> QPainterPath:
    path = QPainterPath()
    path.addEllipse(QRectF(-diameter / 2, -diameter / 2, diameter, diameter))
    return path


def _cross() -> QPainterPath:
    """Return a cross above and to the right of its point, clear of symbol and ring."""
    path, half = QPainterPath(), CROSS_PX / 2
    x, y = (CROSS_BOX_PX[:2] + CROSS_BOX_PX[2:]) / 2
    for dx, dy in ((half, half), (half, -half)):
        path.moveTo(x - dx, y - dy)
        path.lineTo(x + dx, y + dy)
    return path


_H = SYMBOL_PX / 2
SYMBOLS = {
    "▲": _polygon((0, -_H), (_H, _H * 0.8), (-_H, _H * 0.8)),
    "▼": _polygon((0, _H), (_H, -_H * 0.8), (-_H, -_H * 0.8)),
    "●": _circle(SYMBOL_PX * 0.9),
    "■": _polygon((-_H * 0.8, -_H * 0.8), (_H * 0.8, -_H * 0.8), (_H * 0.8, _H * 0.8), (-_H * 0.8, _H * 0.8)),
    "◆": _polygon((0, -_H * 1.1), (_H * 1.1, 0), (0, _H * 1.1), (-_H * 1.1, 0)),
    "▶": _polygon((_H, 0), (-_H * 0.8, _H), (-_H * 0.8, -_H)),
    "◀": _polygon((-_H, 0), (_H * 0.8, _H), (_H * 0.8, -_H)),
    "❘": QPainterPath(),  # its error bar alone: an interval that does not lie evenly about its value
}
RING = _circle(RING_PX)
CROSS = _cross()


def scaled(shape: QPainterPath, factor: float) -> QPainterPath:
    """Return the shape larger or smaller about its place."""
    return QTransform.fromScale(factor, factor).map(shape)


def at_places(shape: QPainterPath, places: Floats) -> QPainterPath:
    """Return one path with the shape at each place (n, 2)."""
    path = QPainterPath()
    path.setFillRule(Qt.FillRule.WindingFill)  # where two overlap both stay filled
    for x, y in places.tolist():
        path.addPath(shape.translated(x, y))
    return path


def line_path(x: Floats, y: Floats) -> QPainterPath:
    """Return the polyline through (n,) x and y; values that are not finite break it."""
    if x.size < 2:
        return QPainterPath()
    path: QPainterPath = pg.arrayToQPath(x, y, connect="finite")
    return path


def segments_path(left: Floats, top: Floats, right: Floats, bottom: Floats) -> QPainterPath:
    """Return separate straight pieces from (left, top) to (right, bottom), arrays (n,)."""
    if not left.size:
        return QPainterPath()
    x, y = np.column_stack([left, right]).ravel(), np.column_stack([top, bottom]).ravel()
    path: QPainterPath = pg.arrayToQPath(x, y, connect="pairs")
    return path


def bars_path(x: Floats, top: Floats, bottom: Floats) -> QPainterPath:
    """Return vertical bars with small caps, arrays (n,)."""
    cap = np.full(x.size, _CAP_PX)
    return segments_path(
        np.concatenate([x, x - cap, x - cap]),
        np.concatenate([top, top, bottom]),
        np.concatenate([x, x + cap, x + cap]),
        np.concatenate([bottom, top, bottom]),
    )


def band_path(x: Floats, top: Floats, bottom: Floats) -> QPainterPath:
    """Return the closed area between two curves over (n,) x; gaps where either is not finite are skipped."""
    use = np.isfinite(top) & np.isfinite(bottom)
    x, top, bottom = x[use], top[use], bottom[use]
    if x.size < 2:
        return QPainterPath()
    around_x, around_y = np.concatenate([x, x[::-1]]), np.concatenate([top, bottom[::-1]])
    path: QPainterPath = pg.arrayToQPath(around_x, around_y, connect="all")
    path.closeSubpath()
    return path


def edges_path(x: Floats, top: Floats, bottom: Floats) -> QPainterPath:
    """Return the two curves by which an area over (n,) x is bounded."""
    gap = [np.nan]
    return line_path(np.concatenate([x, gap, x]), np.concatenate([top, gap, bottom]))


def density_image(x: Floats, y: Floats, extent: QRectF, colour: QColor, columns: int, rows: int) -> QImage:
    """Return how many points lie in each cell of `extent` as the opacity of one colour, on a logarithmic scale."""
    column = np.floor((x - extent.left()) / extent.width() * columns)
    row = np.floor((extent.bottom() - y) / extent.height() * rows)
    inside = (column >= 0) & (column < columns) & (row >= 0) & (row < rows)
    cell = row[inside].astype(np.int64) * columns + column[inside].astype(np.int64)
    count = np.bincount(cell, minlength=columns * rows).reshape(rows, columns)
    share = np.log1p(count) / max(float(np.log1p(count.max())), 1e-9)
    alpha = np.where(count > 0, 40 + 215 * share, 0).astype(np.uint32)
    pixels = np.ascontiguousarray((alpha << 24) | (colour.rgb() & 0xFFFFFF), dtype=np.uint32)
    return QImage(pixels.data, columns, rows, 4 * columns, QImage.Format.Format_ARGB32).copy()


def with_alpha(colour: str, alpha: int) -> QColor:
    """Return a colour with an opacity of 0 to 255."""
    out = QColor(colour)
    out.setAlpha(alpha)
    return out


def blended(over: str, under: str, share: float) -> QColor:
    """Return `over` painted on `under` with an opacity of 0 to 1."""
    a, b = QColor(over), QColor(under)
    mixed = (round(share * p + (1 - share) * q) for p, q in zip(_rgb(a), _rgb(b), strict=True))
    return QColor(*mixed)


def readable(colour: str, ink: str, grounds: Iterable[QColor], least: float = 4.5) -> QColor:
    """Return the colour, drawn towards the ink until its contrast on every ground is `least` (WCAG 2.2, 1.4.3)."""
    shades = list(grounds)
    for step in range(21):
        tried = blended(ink, colour, step / 20)
        if all(contrast(tried, ground) >= least for ground in shades):
            return tried
    return QColor(ink)


def contrast(a: QColor, b: QColor) -> float:
    """Return the contrast ratio of two colours, 1 to 21 (WCAG 2.2, relative luminance)."""
    light, dark = sorted((_luminance(a), _luminance(b)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def _luminance(colour: QColor) -> float:
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in (v / 255 for v in _rgb(colour))]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def _rgb(colour: QColor) -> tuple[int, int, int]:
    return colour.red(), colour.green(), colour.blue()
