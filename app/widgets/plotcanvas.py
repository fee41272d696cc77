"""The drawing surface of a plot: pyqtgraph gives axes, zoom and drag; hover and keys tell the single readings."""

from __future__ import annotations

import numpy as np
import pyqtgraph as pg
from PySide6.QtCore import QEvent, QPointF, QRect, QRectF, QSignalBlocker, QSize, Qt
from PySide6.QtGui import (
    QAccessible,
    QAccessibleAnnouncementEvent,
    QColor,
    QFocusEvent,
    QFontMetricsF,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPen,
    QResizeEvent,
)
from PySide6.QtWidgets import QGraphicsSimpleTextItem, QWidget

from app.faults import or_else, told_at_once
from app.theme import Tokens
from app.widgets.plotaxis import Axis
from app.widgets.plotdata import Floats, PlotData
from app.widgets.plotdrawing import Drawing
from app.widgets.plotframe import Frame, Shown
from app.widgets.plotranges import home_ranges
from app.widgets.plotsheet import lay_sheet, seen_points
from app.widgets.plottip import Tip, tip_text
from app.widgets.roles import told_as_chart

HOVER_PX = 10.0
_ZOOM = 1.25


@told_as_chart
class PlotCanvas(pg.PlotWidget):  # type: ignore[misc]
    """Draws one `PlotData`.

    Wheel and drag zoom and move; `0` or a double click comes back. Arrow keys walk through the points and show their
    tip, as the mouse does within 10 px.
    """

    def __init__(self, theme: Tokens, parent: QWidget | None = None) -> None:
        self.theme, self.data, self.shown = theme, PlotData(()), Shown()
        self._home = home_ranges(self.data)
        self._current: tuple[int, int] | None = None  # series and point that the tip tells
        self._least_left_px = 0
        axes = {"left": Axis("left"), "bottom": Axis("bottom")}
        super().__init__(parent, background=theme.card, axisItems=axes, enableMenu=False)
        self.axes = axes
        self.view: pg.ViewBox = self.plotItem.getViewBox()
        self.drawing = Drawing(self.view)
        self.y_label = QGraphicsSimpleTextItem(self.plotItem)
        self._tip = Tip(self)
        self.plotItem.hideButtons()
        self.setMinimumSize(200, 120)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        for axis in axes.values():
            axis.enableAutoSIPrefix(False)
            axis.setStyle(tickLength=4, hideOverlappingLabels=False)
        self.show_home()
        self.set_theme(theme)
        self.plotItem.sigRangeChanged.connect(self._lay)
        self.view.sigResized.connect(self._lay)

    @or_else(QSize())
    def sizeHint(self) -> QSize:
        """Ask for little: the layout gives what is left."""
        return QSize(480, 300)

    def set_theme(self, theme: Tokens) -> None:
        """Dress background, axes and shapes."""
        self.theme = theme
        self.setBackground(theme.card)
        for axis in self.axes.values():
            axis.setPen(pg.mkPen(theme.hairline))
            axis.setTextPen(pg.mkPen(theme.quiet))
            axis.setTickFont(self.font())
        self._dress_axes()
        self.drawing.make_clouds(self.data, theme)
        self._lay()

    def set_data(self, data: PlotData) -> None:
        """Show new data; a zoom made by hand stays, else the range follows the data."""
        at_home = self.is_home()
        self.tell(None)
        relabelled = (data.x_label, data.y_label) != (self.data.x_label, self.data.y_label)
        self.data = data
        self.axes["bottom"].dates, self.axes["bottom"].whole = data.x_dates, data.x_whole
        self._home = (x0, x1), (y0, y1) = home_ranges(data)
        with QSignalBlocker(self.plotItem):  # one laying at the end instead of one for each range
            self.view.setLimits(minXRange=(x1 - x0) * 1e-3, maxXRange=(x1 - x0) * 20,
                                minYRange=(y1 - y0) * 1e-3, maxYRange=(y1 - y0) * 20)  # fmt: skip
            if at_home:
                self.show_home()
        if relabelled:  # only then: it lays out the whole plot anew
            self._dress_axes()
        self.plotItem.setVisible(data.point_count > 0 or bool(data.curves))
        self.drawing.make_clouds(data, self.theme)
        self._lay()
        self.setAccessibleDescription(data.summary)

    def set_shown(self, shown: Shown) -> None:
        """Show or hide parts."""
        self.shown = shown
        self._lay()

    def show_home(self) -> None:
        """Undo zoom and drag."""
        self.view.setRange(xRange=self._home[0], yRange=self._home[1], padding=0)

    def is_home(self) -> bool:
        """Whether the range is the one that follows the data."""
        return bool(np.allclose(np.array(self.view.viewRange()), np.array(self._home), rtol=1e-6, atol=0))

    def left_px(self) -> int:
        """Return the width that the numbers of the left axis need."""
        low, high = self.view.viewRange()[1]
        return self._left_px(self.axes["left"].ticks(low, high, self.view.height())[1])

    def align_left(self, least_px: int) -> None:
        """Give the left axis at least this width, so that plots below one another share their x."""
        if least_px != self._least_left_px:
            self._least_left_px = least_px
            self._lay()

    def lay_out(self, size: QSize) -> None:
        """Give the canvas a size and lay out its axes at once, also where no window is shown."""
        self.resize(size)
        self.resizeEvent(QResizeEvent(size, size))
        self.plotItem.layout.activate()
        self._lay()

    def frame_now(self) -> Frame:
        """Return the range now seen and the size of the view."""
        x, y = self.view.viewRange()
        return Frame((x[0], x[1]), (y[0], y[1]), self.view.width(), self.view.height())

    def place(self, x: float, y: float) -> QPointF:
        """Return where a value is, in pixels of this widget."""
        return self.view_rect().topLeft() + QPointF(*self.frame_now().pixels(np.array([x]), np.array([y]))[0])

    def view_rect(self) -> QRectF:
        """Return the area inside the axes, in pixels of this widget."""
        return QRectF(self.view.mapRectToScene(self.view.boundingRect()))

    def name_rects(self) -> dict[str, QRectF]:
        """Return the names now placed with their rectangles, in pixels of this widget."""
        corner = self.view_rect().topLeft()
        return {
            item.text(): item.mapRectToParent(item.boundingRect()).translated(corner) for item in self.drawing.names()
        }

    def tip(self) -> str:
        """Return the sentence that the tip now shows, or an empty one."""
        return self._tip.text() if self._current is not None else ""

    def tell(self, point: tuple[int, int] | None) -> None:
        """Show the tip of one point (index of its series, its index) and ring it; None hides both."""
        if point is None and self._current is not None:
            self.setAccessibleDescription(self.data.summary)  # no longer what `walk` said of the point
        self._current = point
        if point is None:
            self._tip.hide()
            self.drawing.mark(None, self.theme)
            return
        series = self.data.points[point[0]]
        at = self.frame_now().pixels(series.x[[point[1]]], series.y[[point[1]]])[0]
        self.drawing.mark(QPointF(*at), self.theme)
        self._tip.tell(tip_text(self.data, *point), self.view_rect().topLeft() + QPointF(*at), self.rect())

    def walk(self, step: int) -> None:
        """Go to the next (+1) or previous (-1) point from left to right, and say its tip to a screen reader."""
        points, at = self._places()
        if not points:
            return
        order = [points[i] for i in np.lexsort((at[:, 1], at[:, 0]))]
        now = order.index(self._current) + step if self._current in order else (0 if step > 0 else -1)
        self.tell(order[now % len(order)])
        self.setAccessibleDescription(self._tip.text())
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, self._tip.text()))

    @told_at_once
    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Walk with the arrows, zoom with + and -, come back with 0, hide the tip with Escape."""
        key = Qt.Key
        steps = {key.Key_Right: 1, key.Key_Down: 1, key.Key_Left: -1, key.Key_Up: -1}
        if event.key() in steps:
            self.walk(steps[Qt.Key(event.key())])
        elif event.key() in (key.Key_Plus, key.Key_Equal, key.Key_Minus):
            factor = _ZOOM if event.key() == key.Key_Minus else 1 / _ZOOM
            self.view.scaleBy((factor, factor))
        elif event.key() == key.Key_0:
            self.show_home()
        elif event.key() == key.Key_Escape and self._current is not None:
            self.tell(None)
        else:
            event.ignore()

    @told_at_once
    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Tell the point under the mouse."""
        super().mouseMoveEvent(event)
        points, at = self._places()
        if not points:
            return
        away = np.hypot(*(at - (event.position() - self.view_rect().topLeft()).toTuple()).T)
        nearest = int(np.argmin(away))
        found = points[nearest] if away[nearest] <= HOVER_PX else None
        if found != self._current:
            self.tell(found)

    @told_at_once
    def mouseDoubleClickEvent(self, _event: QMouseEvent) -> None:
        """Come back from zoom and drag."""
        self.show_home()

    @told_at_once
    def leaveEvent(self, event: QEvent) -> None:
        """Hide the tip, unless the keyboard walks."""
        super().leaveEvent(event)
        if not self.hasFocus():
            self.tell(None)

    @told_at_once
    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Hide the tip and the frame of the focus."""
        super().focusOutEvent(event)
        self.tell(None)
        self.viewport().update()

    @told_at_once
    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the frame of the focus."""
        super().focusInEvent(event)
        self.viewport().update()

    @told_at_once
    def drawForeground(self, painter: QPainter, rect: QRectF | QRect) -> None:
        """Frame the view while it has the keyboard; not part of an exported picture."""
        super().drawForeground(painter, rect)
        if self.hasFocus() and self.plotItem.isVisible():
            painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
            painter.setPen(QPen(QColor(self.theme.accent), 1.0))
            painter.drawRect(self.view_rect().adjusted(0, 0, -1, -1))

    def _dress_axes(self) -> None:
        """Write the axis labels: that of y lies above its axis, read without turning the head and never cut."""
        line_px = QFontMetricsF(self.font()).height()
        self.axes["bottom"].setLabel(self.data.x_label, color=self.theme.quiet)
        self.axes["bottom"].setHeight(round(line_px * (2 if self.data.x_label else 1) + 12))
        self.y_label.setText(self.data.y_label)
        self.y_label.setBrush(QColor(self.theme.quiet))
        self.y_label.setFont(self.font())
        self.y_label.setPos(4, 2)
        self.plotItem.layout.setContentsMargins(0, line_px + 8, 14, 6)
        self.plotItem.layout.activate()

    def _lay(self, *_changed: object) -> None:
        """Lay all shapes for the present data, range and size."""
        frame = self.frame_now()
        if min(frame.width_px, frame.height_px) < 10:
            return
        y_ticks, texts = self.axes["left"].ticks(*frame.y, frame.height_px)
        if self._fit_left_axis(texts):
            frame = self.frame_now()
        self.drawing.show_sheet(lay_sheet(self.data, frame, self.shown, self.theme, y_ticks), frame, self.font())
        self.tell(self._current)

    def _fit_left_axis(self, texts: list[str]) -> bool:
        """Give the left axis the width of its widest number before it paints, or the plot would be laid out twice."""
        axis, width = self.axes["left"], max(self._left_px(texts), self._least_left_px)
        if axis.fixedWidth == width:
            return False
        axis.setWidth(width)
        with QSignalBlocker(self.view):  # its new size is laid by the caller
            self.plotItem.layout.activate()
        return True

    def _left_px(self, texts: list[str]) -> int:
        font = QFontMetricsF(self.font())
        return round(max(font.horizontalAdvance(text) for text in [*texts, "−0.00"]) + 14)

    def _places(self) -> tuple[list[tuple[int, int]], Floats]:
        """Return the points drawn one by one, as (series, index), and their (n, 2) pixels in the view."""
        frame, points, places = self.frame_now(), [], [np.empty((0, 2))]
        for number, series in enumerate(self.data.points):
            seen = np.flatnonzero(seen_points(series, dense=self.data.dense))
            points += [(number, int(index)) for index in seen]
            places.append(frame.pixels(series.x[seen], series.y[seen]))
        return points, np.concatenate(places)
