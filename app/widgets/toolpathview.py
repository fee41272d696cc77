"""A toolpath from above: beads as wide as they are laid, one layer at a time, with the names of its parts."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QLineF, QObject, QPoint, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QKeyEvent, QMouseEvent, QPainter, QPainterPath, QPen, QTransform, QWheelEvent
from PySide6.QtWidgets import QLabel, QSlider, QWidget

from app.faults import or_else
from app.theme import Tokens
from app.widgets.fields import number_text
from app.widgets.picturepane import PicturePane
from app.widgets.sight import Sight
from app.words import shown

if TYPE_CHECKING:
    from core.pieces.toolpath import Toolpath

_RULERS_MM = (1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0)
_RULER_SHARE = 0.25  # of the width, at most
_NAME_GAP_PX = 8.0
_STRAND_MM = 8.0  # a strand is drawn as a heap of this width
_STRANDS_ROOM_MM = 14.0
_LEAST_EDGED_PX, _EDGES_PX = 3.0, 1.6
_TRAVEL_DASHES = (5.0, 4.0)
_ZOOM_KEYS = {"+": 1, "=": 1, "-": -1, "−": -1, "0": 0}


@dataclass(frozen=True, slots=True)
class Bed:
    """The travel of X and Y as it is drawn."""

    low_mm: tuple[float, float] = (0.0, 0.0)
    high_mm: tuple[float, float] = (220.0, 220.0)
    round_bed: bool = False


class ToolpathPane(PicturePane):
    """Shows one toolpath.

    Attributes:
        layer: chooses the layer; the arrow keys step through them.
    """

    def __init__(self, title: str, parent: QWidget | None = None) -> None:
        super().__init__(title, parent)
        self.layer = QSlider(Qt.Orientation.Horizontal)
        self.layer.setAccessibleName(self.tr("Layer"))
        self.layer.setMinimumWidth(60)
        self.layer_text = QLabel()
        self.whole_bed = self.add_switch(self.tr("&Bed"), on=False)
        self.travels = self.add_switch(self.tr("Tra&vels"), on=False)
        self._switches.insert(0, self.layer, shares=True)
        self._switches.insert(1, self.layer_text)
        QWidget.setTabOrder(self.picture_button, self.layer)
        self._path: Toolpath | None = None
        self._bed = Bed()
        self._layers: list[float] = []
        self._drawn: dict[float, tuple[QPainterPath, float]] = {}  # by height
        self._told: list[tuple[tuple[float, float], str]] = []  # places in millimetres, and what is said there
        self.sight = Sight(self._seen_mm)
        self._held: QPointF | None = None
        self.layer.valueChanged.connect(self._show_layer)
        self.whole_bed.toggled.connect(self._show_all)
        self.sheet.installEventFilter(self)
        self.show_nothing()

    def show_path(self, path: Toolpath, bed: Bed) -> None:
        """Show a toolpath; the layer stays where it still exists."""
        at_top = self.layer.value() >= self.layer.maximum()
        self._path, self._bed, self._drawn = path, bed, {}
        self._told = [(part.at_mm, self._saying(number)) for number, part in enumerate(path.parts, start=1)]
        self._layers = [float(z) for z in path.layers_mm()]
        self.layer.setRange(1, max(len(self._layers), 1))
        self.layer.setEnabled(len(self._layers) > 1)
        if at_top:
            self.layer.setValue(self.layer.maximum())
        says = self.tr("{title}. Parts: {parts}; layers: {layers}; filament: {length} mm.")
        self.describe(says.format(title=shown(path.title), parts=len(path.parts), layers=max(len(self._layers), 1),
                                  length=number_text(path.commanded_mm(), 0)))  # fmt: skip
        self._show_layer()

    def show_nothing(self, why: str = "") -> None:
        """Show the empty bed."""
        self._path, self._layers, self._told = None, [], []
        self.layer.setRange(1, 1)
        self.layer.setEnabled(False)
        self.layer_text.setText("")
        self.describe(self.tr("No path yet."))
        self.refresh()

    def _saying(self, number: int) -> str:
        """Say what a part is, and what it is fed."""
        assert self._path is not None
        says, fed = shown(self._path.parts[number - 1].name), self._path.commanded_mm(number)
        if not fed:
            return says
        return self.tr("{part}: {length} mm of filament").format(part=says, length=number_text(fed, 2))

    def hint(self) -> str:
        """Say how it is drawn."""
        if self._path is None:
            return self.tr("No path: see below what stands against it.")
        return self.tr("Beads are to scale. Wheel, + and − enlarge; 0 shows all.")

    def points(self) -> list[tuple[QPoint, str]]:
        """Return the parts: where their names stand, and what each one is fed."""
        size = self.sheet.size()
        return [(self.sight.at(size, *at).toPoint(), says) for at, says in self._told]

    def draw(self, painter: QPainter, size: QSize, theme: Tokens) -> None:
        """Draw bed, the layer below faint, the layer, travels, names and a ruler."""
        self._draw_bed(painter, size, theme)
        if self._path is None:
            return
        place = self.layer.value() - 1
        if place > 0:
            self._draw_beads(painter, size, self._layers[place - 1], theme.hairline, theme.soft)
        if self._layers:
            self._draw_beads(painter, size, self._layers[place], theme.accent, _between(theme.accent, theme.card))
        else:
            self._draw_strands(painter, size, theme)
        if self.travels.isChecked():
            self._draw_travels(painter, size, theme)
        self._draw_names(painter, size, theme)
        self._draw_ruler(painter, size, theme)

    @or_else(False)
    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Enlarge with the wheel or + and −, drag what is enlarged."""
        if isinstance(event, QWheelEvent):
            self._enlarge(1 if event.angleDelta().y() > 0 else -1, event.position())
            return True
        if isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress and event.text() in _ZOOM_KEYS:
            self._enlarge(_ZOOM_KEYS[event.text()], QPointF(self.sheet.rect().center()))
            return True
        if isinstance(event, QMouseEvent):
            return self._drag(event)
        return super().eventFilter(watched, event)

    def _drag(self, event: QMouseEvent) -> bool:
        """Move what is enlarged with the mouse; a mouse without a button walks through the points."""
        if event.type() == QEvent.Type.MouseButtonPress and event.button() == Qt.MouseButton.LeftButton:
            self._held = event.position()
        elif event.type() == QEvent.Type.MouseButtonRelease:
            self._held = None
        elif self._held is not None and event.type() == QEvent.Type.MouseMove:
            way = event.position() - self._held
            self._held = event.position()
            self.sight.drag(way, self.sheet.size())
            self.refresh()
            return True
        return False

    def _enlarge(self, steps: int, about: QPointF) -> None:
        self.sight.enlarge(steps, about, self.sheet.size())
        self.refresh()

    def _show_all(self) -> None:
        self.sight.show_all()
        self.refresh()

    def _show_layer(self) -> None:
        if self._layers:
            text = self.tr("{number} of {count}, Z {height} mm")
            height = number_text(self._layers[self.layer.value() - 1], 3)
            self.layer_text.setText(text.format(number=self.layer.value(), count=len(self._layers), height=height))
        else:
            self.layer_text.setText("")
        self.refresh()

    def _seen_mm(self) -> QRectF:
        """Return what is shown, in millimetres: the bed, or the path with the names beside it."""
        bed = QRectF(QPointF(*self._bed.low_mm), QPointF(*self._bed.high_mm))
        if self._path is None or self.whole_bed.isChecked():
            return bed
        moves = self._path.moves
        low, high = (moves.x_mm.min(), moves.y_mm.min()), (moves.x_mm.max(), moves.y_mm.max())
        seen = QRectF(QPointF(*map(float, low)), QPointF(*map(float, high))).adjusted(-6, -6, 6, 6)
        if any(part.beside for part in self._path.parts):
            seen.setRight(seen.right() + 0.3 * seen.width())
        return seen if self._layers else seen.adjusted(-_STRANDS_ROOM_MM, -6, _STRANDS_ROOM_MM, 6)

    def _draw_bed(self, painter: QPainter, size: QSize, theme: Tokens) -> None:
        box = QRectF(self.sight.at(size, *self._bed.low_mm), self.sight.at(size, *self._bed.high_mm)).normalized()
        painter.setPen(QPen(QColor(theme.box), 1.2))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        if self._bed.round_bed:
            painter.drawEllipse(box)
        else:
            painter.drawRect(box)

    def _draw_beads(self, painter: QPainter, size: QSize, z_mm: float, edge: str, fill: str) -> None:
        """Draw the beads of a height; from a few pixels on each has an edge, so that neighbours are told apart."""
        if z_mm not in self._drawn:
            self._drawn[z_mm] = self._beads_of(z_mm)
        path, width_mm = self._drawn[z_mm]
        scale, zero = self.sight.scale(size), self.sight.at(size, 0.0, 0.0)
        painter.save()
        painter.setTransform(QTransform(scale, 0, 0, -scale, zero.x(), zero.y()), combine=True)
        pen = QPen(QColor(edge), max(width_mm, 1.0 / scale))
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        painter.setPen(pen)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawPath(path)
        if width_mm * scale >= _LEAST_EDGED_PX:
            pen.setColor(QColor(fill))
            pen.setWidthF(width_mm - _EDGES_PX / scale)
            painter.setPen(pen)
            painter.drawPath(path)
        painter.restore()

    def _beads_of(self, z_mm: float) -> tuple[QPainterPath, float]:
        """Return the centre lines of a height in millimetres, and the width of its beads."""
        assert self._path is not None
        moves, path, last = self._path.moves, QPainterPath(), -2
        laid = (moves.width_mm > 0) & (moves.z_mm == z_mm)
        x, y = moves.x_mm.tolist(), moves.y_mm.tolist()
        for row in laid.nonzero()[0].tolist():
            if last != row - 1:
                path.moveTo(x[max(row - 1, 0)], y[max(row - 1, 0)])
            path.lineTo(x[row], y[row])
            last = row
        return path, float(moves.width_mm[laid].max())

    def _draw_strands(self, painter: QPainter, size: QSize, theme: Tokens) -> None:
        assert self._path is not None
        painter.setPen(QPen(QColor(theme.accent), 1.4))
        painter.setBrush(QColor(_between(theme.accent, theme.card)))
        radius = _STRAND_MM / 2 * self.sight.scale(size)
        for part in self._path.parts:
            painter.drawEllipse(self.sight.at(size, *part.at_mm), radius, radius)

    def _draw_travels(self, painter: QPainter, size: QSize, theme: Tokens) -> None:
        assert self._path is not None
        moves = self._path.moves
        z = self._layers[self.layer.value() - 1] if self._layers else None
        pen = QPen(QColor(theme.warning), 1)
        pen.setDashPattern(_TRAVEL_DASHES)
        painter.setPen(pen)
        x, y = moves.x_mm.tolist(), moves.y_mm.tolist()
        here = (moves.part < 0) & ((moves.z_mm == z) if z is not None else True)
        for row in here.nonzero()[0].tolist():
            if row:
                before, after = (self.sight.at(size, x[place], y[place]) for place in (row - 1, row))
                painter.drawLine(QLineF(before, after))

    def _draw_names(self, painter: QPainter, size: QSize, theme: Tokens) -> None:
        assert self._path is not None
        measure, beside_y = painter.fontMetrics(), -math.inf
        places = [self.sight.at(size, *part.at_mm) for part in self._path.parts]
        texts = names_with_room([shown(part.name) for part in self._path.parts], places, measure.horizontalAdvance)
        for part, at, text in reversed(list(zip(self._path.parts, places, texts, strict=True))):
            if part.beside and at.y() - beside_y < measure.height() - 2:
                continue  # one below another, as many as there is room for
            beside_y = at.y()
            box = QRectF(0, 0, measure.horizontalAdvance(text) + 8, measure.height())
            box.moveCenter(at)
            if not self._layers:
                box.moveTop(at.y() + _STRAND_MM / 2 * self.sight.scale(size) + 2)
            if part.beside:
                box.moveLeft(at.x())
            elif self._layers:
                ground = QColor(theme.card)
                ground.setAlpha(215)
                painter.fillRect(box, ground)
            painter.setPen(QColor(theme.ink))
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter, text)

    def _draw_ruler(self, painter: QPainter, size: QSize, theme: Tokens) -> None:
        scale = self.sight.scale(size)
        length = max((r for r in _RULERS_MM if r * scale <= _RULER_SHARE * size.width()), default=_RULERS_MM[0])
        left, y = 10.0, size.height() - 8.0
        painter.setPen(QPen(QColor(theme.quiet), 1.4))
        painter.drawLine(QPointF(left, y), QPointF(left + length * scale, y))
        for x in (left, left + length * scale):
            painter.drawLine(QPointF(x, y - 4), QPointF(x, y + 4))
        text = self.tr("{length} mm").format(length=number_text(length))
        painter.drawText(QPointF(left + length * scale + 8, y + 4), text)


def names_with_room(texts: Sequence[str], places: Sequence[QPointF], width_px: Callable[[str], float]) -> list[str]:
    """Return the names of parts; their last words alone, pad A as A, where neighbours in a row would overlap."""
    named = zip(places, texts, strict=True)
    rows = sorted((round(at.y()), at.x(), width_px(text) + _NAME_GAP_PX) for at, text in named)
    tight = any(a[0] == b[0] and a[1] + (a[2] + b[2]) / 2 > b[1] for a, b in pairwise(rows))
    return [text.rpartition(" ")[2] for text in texts] if tight else list(texts)


def _between(first: str, second: str) -> str:
    """Return the colour half-way between two."""
    a, b = QColor(first), QColor(second)
    return QColor((a.red() + b.red()) // 2, (a.green() + b.green()) // 2, (a.blue() + b.blue()) // 2).name()
