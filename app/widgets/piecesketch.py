"""A test piece drawn to scale with the jaws at the place that is read next."""

from __future__ import annotations

from PySide6.QtCore import QLocale, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.theme import tokens
from core.pieces.comb import Gauge, Piece

_HEIGHT_PX = 84
_ABOVE_PX = 24.0
_JAW_PX = 7.0
_STRETCH = 1.5  # across the axis, so that teeth and window stay readable


class PieceSketch(QWidget):
    """Draws one piece; the gauge that is lit shows its jaws and its nominal length."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._piece: Piece | None = None
        self._lit: Gauge | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setFixedHeight(_HEIGHT_PX)
        self.hide()

    def sizeHint(self) -> QSize:
        """Prefer a width at which the numbers fit."""
        return QSize(300, _HEIGHT_PX)

    def light(self, piece: Piece | None, gauge: Gauge | None) -> None:
        """Show a piece with one gauge lit; no piece hides the sketch."""
        self._piece, self._lit = piece, gauge
        self.setVisible(piece is not None)
        if piece is not None and gauge is not None:
            self.setAccessibleName(self.tr("Sketch of the piece"))
            self.setAccessibleDescription(str(gauge.says))
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw body, cut-outs and jaws."""
        if self._piece is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme = tokens()
        path = QPainterPath()
        for outline in self._piece.outlines:
            path.addPolygon(QPolygonF([self._at(x, y) for x, y in outline]))
            path.closeSubpath()
        painter.setPen(QPen(QColor(theme.quiet), 1.2))
        painter.setBrush(QColor(theme.soft))
        painter.drawPath(path)
        if self._lit is not None:
            self._draw_jaws(painter, self._lit)
        painter.end()

    def _draw_jaws(self, painter: QPainter, gauge: Gauge) -> None:
        painter.setPen(QPen(QColor(tokens().accent), 2))
        left, right = (self._at(x, gauge.height_mm) for x in gauge.jaws_mm)
        high = _ABOVE_PX - 8
        for place in (left, right):
            painter.drawLine(QPointF(place.x(), high - _JAW_PX), QPointF(place.x(), place.y()))
        painter.drawLine(QPointF(left.x(), high), QPointF(right.x(), high))
        text = self.tr("{length} mm").format(length=QLocale().toString(gauge.nominal_mm, "f", 0))
        width = painter.fontMetrics().horizontalAdvance(text) + 8
        box = QRectF((left.x() + right.x() - width) / 2, high - 9, width, 18)
        painter.fillRect(box, QColor(tokens().card))
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, text)

    def _at(self, x_mm: float, y_mm: float) -> QPointF:
        body = self._piece.outlines[0] if self._piece is not None else ((1.0, 1.0),)
        longest = max(x for x, _ in body)
        scale = (self.width() - 16) / longest
        upright = min(scale * _STRETCH, (_HEIGHT_PX - _ABOVE_PX - 8) / max(y for _, y in body))
        return QPointF(8 + x_mm * scale, _HEIGHT_PX - 6 - y_mm * upright)
