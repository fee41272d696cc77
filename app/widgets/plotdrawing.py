"""Puts a sheet on graphics items: each shape keeps its item, only the path is new."""

from __future__ import annotations

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QFont, QFontMetricsF, QPainterPath, QPen, QPixmap, QTransform
from PySide6.QtWidgets import QGraphicsItem, QGraphicsPathItem, QGraphicsPixmapItem, QGraphicsSimpleTextItem

from app.theme import Tokens
from app.widgets import plotmarks as marks
from app.widgets.plotdata import PlotData
from app.widgets.plotframe import Frame, Sheet, Stroke, series_ink
from app.widgets.plotlabels import Taken, Wish, place_names

_CLOUD_CELLS = 240, 140
_CLOUD_Z, _MARK_Z, _PAPER_Z, _NAME_Z = -16, 8, 9, 10
_PAPER_PX = 2.0  # beside a name that lies over the edge of a band, so that no line goes through it
_MARK_PX = 12.0


class Drawing:
    """The shapes inside the axes, children of `view` and in its pixels."""

    def __init__(self, view: QGraphicsItem) -> None:
        self._view = view
        self._paths: dict[str, QGraphicsPathItem] = {}
        self._names: list[QGraphicsSimpleTextItem] = []
        self._clouds: list[tuple[QGraphicsPixmapItem, QRectF]] = []

    def show_sheet(self, sheet: Sheet, frame: Frame, font: QFont) -> None:
        """Show what the sheet holds and nothing else."""
        for key, item in self._paths.items():
            item.setVisible(key in sheet.strokes)
        for key, stroke in sheet.strokes.items():
            self._put(key, stroke)
        for cloud, extent in self._clouds:
            _stretch(cloud, extent, frame)
        self._place_names(sheet, frame, font)

    def make_clouds(self, data: PlotData, theme: Tokens) -> None:
        """Make the density images of data with too many points; once for each new data, not for each zoom."""
        for cloud, _extent in self._clouds:
            cloud.scene().removeItem(cloud)
        self._clouds = []
        for series in data.points if data.dense else ():
            use = np.isfinite(series.x) & np.isfinite(series.y)
            x, y = series.x[use], series.y[use]
            if not x.size:
                continue
            extent = QRectF(x.min(), y.min(), np.ptp(x) or 1e-9, np.ptp(y) or 1e-9)
            image = marks.density_image(x, y, extent, series_ink(series.role, theme), *_CLOUD_CELLS)
            cloud = QGraphicsPixmapItem(QPixmap.fromImage(image), self._view)
            cloud.setZValue(_CLOUD_Z)
            self._clouds.append((cloud, extent))

    def paths(self) -> list[QGraphicsPathItem]:
        """Return the shapes now shown, lowest first, without the mark of the hover."""
        shown = [item for key, item in self._paths.items() if item.isVisible() and key != "mark"]
        return sorted(shown, key=lambda item: item.zValue())

    def names(self) -> list[QGraphicsSimpleTextItem]:
        """Return the names now shown."""
        return [item for item in self._names if item.isVisible()]

    def clouds(self) -> list[QGraphicsPixmapItem]:
        """Return the density images now shown."""
        return [cloud for cloud, _extent in self._clouds]

    def mark(self, place: QPointF | None, theme: Tokens) -> None:
        """Ring a place of the view in the accent colour, or take the ring away."""
        path = QPainterPath()
        if place is not None:
            path.addEllipse(place, _MARK_PX, _MARK_PX)
        self._put("mark", Stroke(path, _MARK_Z, QPen(QColor(theme.accent), 2.0)))

    def _put(self, key: str, stroke: Stroke) -> None:
        item = self._paths.get(key)
        if item is None:
            item = self._paths[key] = QGraphicsPathItem(self._view)
        item.setPath(stroke.path)
        item.setPen(stroke.pen or QPen(Qt.PenStyle.NoPen))
        item.setBrush(QBrush(Qt.BrushStyle.NoBrush) if stroke.fill is None else QBrush(stroke.fill))
        item.setZValue(stroke.z)
        item.setVisible(not stroke.path.isEmpty())

    def _place_names(self, sheet: Sheet, frame: Frame, font: QFont) -> None:
        while len(self._names) < len(sheet.names):
            fresh = QGraphicsSimpleTextItem(self._view)
            fresh.setZValue(_NAME_Z)
            self._names.append(fresh)
        measure = QFontMetricsF(font)
        wishes = [
            Wish(
                tuple(measure.horizontalAdvance(text) + 1 for text in name.wordings),
                measure.height(),
                name.line,
                name.sides,
                name.at_points,
            )  # fmt: skip
            for name in sheet.names
        ]
        taken = Taken(sheet.lines, np.concatenate([*sheet.boxes, np.empty((0, 4))]), sheet.fills, sheet.edges)
        places = place_names(wishes, taken, frame.width_px, frame.height_px)
        for item in self._names[len(sheet.names) :]:
            item.setVisible(False)
        paper = QPainterPath()
        for item, name, place in zip(self._names, sheet.names, places, strict=False):
            item.setVisible(place is not None)
            if place is not None:
                item.setText(name.wordings[place.wording])
                item.setFont(font)
                item.setBrush(name.ink)
                item.setPos(place.x_px, place.y_px)
                if place.on_edge:
                    paper.addRect(item.mapRectToParent(item.boundingRect()).adjusted(-_PAPER_PX, 0, _PAPER_PX, 0))
        self._put("paper", Stroke(paper, _PAPER_Z, fill=sheet.paper))


def _stretch(cloud: QGraphicsPixmapItem, extent: QRectF, frame: Frame) -> None:
    left, right = frame.across(np.array([extent.left(), extent.right()]))
    upper, lower = frame.down(np.array([extent.bottom(), extent.top()]))
    size = cloud.pixmap().size()
    cloud.setTransform(QTransform.fromScale((right - left) / size.width(), (lower - upper) / size.height()))
    cloud.setPos(left, upper)
