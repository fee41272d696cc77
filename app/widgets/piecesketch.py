"""A test piece drawn to scale with the jaws at the place that is read next, from above or, a stair, from the side."""

from __future__ import annotations

from PySide6.QtCore import QLocale, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.faults import or_else, told_at_once
from app.theme import tokens
from app.units import inch_sentence
from app.widgets.roles import told_as_picture
from app.words import shown
from core.pieces.piece import Gauge, Outline, Piece, Point, Prism, box

_BAR_PX, _PLATE_PX = 84, 132
_ABOVE_PX = 24.0
_JAW_PX = 7.0
_STRETCH = 1.5  # of a bar across its axis, so that teeth and windows stay readable
_FLAT_RATIO = 0.3  # flatter than this it is drawn as a bar
_MARK_MM = 1.0  # prisms no higher than this are marks, too small for the sketch


@told_as_picture
class PieceSketch(QWidget):
    """Draws one piece; the gauge that is lit shows its jaws, its number and its nominal length."""

    def __init__(self, *, inch: bool = False, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._inch = inch
        self._piece: Piece | None = None
        self._lit: Gauge | None = None
        self._number = 0
        self._outlines: list[list[Outline]] = []
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setFixedHeight(_BAR_PX)
        self.hide()

    @or_else(QSize())
    def sizeHint(self) -> QSize:
        """Prefer a width at which the numbers fit."""
        return QSize(300, self.height())

    def light(self, piece: Piece | None, gauge: Gauge | None, number: int = 0) -> None:
        """Show a piece with one gauge lit; no piece hides the sketch."""
        self._piece, self._lit, self._number = piece, gauge, number
        self.setVisible(piece is not None)
        if piece is not None and gauge is not None:
            self._outlines = _seen(piece)
            x0, y0, x1, y1 = self._limits()
            self.setFixedHeight(_BAR_PX if (y1 - y0) < _FLAT_RATIO * (x1 - x0) else _PLATE_PX)
            self.setAccessibleName(self.tr("Sketch of the piece"))
            self.setAccessibleDescription(f"{self._length_text(gauge)}: {shown(gauge.says)}")
        self.update()

    @told_at_once
    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw bodies, cut-outs and jaws."""
        if self._piece is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme = tokens()
        painter.setPen(QPen(QColor(theme.quiet), 1.2))
        painter.setBrush(QColor(theme.soft))
        for outlines in self._outlines:
            path = QPainterPath()
            for outline in outlines:
                path.addPolygon(QPolygonF([self._at(x, y) for x, y in outline]))
                path.closeSubpath()
            painter.drawPath(path)
        if self._lit is not None:
            self._draw_jaws(painter, self._lit)
        painter.end()

    def _draw_jaws(self, painter: QPainter, gauge: Gauge) -> None:
        """Draw two jaws and the distance between them; along a bar they come from above."""
        painter.setPen(QPen(QColor(tokens().accent), 2))
        first, second = (self._at(*self._flat(point)) for point in (gauge.first_mm, gauge.second_mm))
        if abs(first.y() - second.y()) < 1.0:
            high = _ABOVE_PX - 8
            for place in (first, second):
                painter.drawLine(QPointF(place.x(), high - _JAW_PX), QPointF(place.x(), place.y()))
            first, second = QPointF(first.x(), high), QPointF(second.x(), high)
        else:
            along = second - first
            across = QPointF(-along.y(), along.x()) * (_JAW_PX / max((along.x() ** 2 + along.y() ** 2) ** 0.5, 1.0))
            for place in (first, second):
                painter.drawLine(place - across, place + across)
        painter.drawLine(first, second)
        self._write(painter, (first + second) / 2, gauge)

    def _write(self, painter: QPainter, middle: QPointF, gauge: Gauge) -> None:
        text = self._length_text(gauge)
        width = painter.fontMetrics().horizontalAdvance(text) + 8
        left = min(max(middle.x() - width / 2, 0.0), self.width() - width)
        label = QRectF(left, middle.y() - 9, width, 18)
        painter.fillRect(label, QColor(tokens().card))
        painter.drawText(label, Qt.AlignmentFlag.AlignCenter, text)

    def _length_text(self, gauge: Gauge) -> str:
        text = self.tr("№ {number}   {length} mm") if self._number else self.tr("{length} mm")
        length = QLocale().toString(gauge.nominal_mm, "f", 0 if gauge.nominal_mm == round(gauge.nominal_mm) else 2)
        text = text.format(number=self._number, length=length)
        return inch_sentence(text) if self._inch else text

    def _flat(self, point: Point) -> tuple[float, float]:
        return (point[0], point[2]) if self._piece is not None and self._piece.side_view else (point[0], point[1])

    def _limits(self) -> tuple[float, float, float, float]:
        corners = [corner for outlines in self._outlines for corner in outlines[0]] or [(0.0, 0.0), (1.0, 1.0)]
        xs, ys = zip(*corners, strict=True)
        return min(xs), min(ys), max(xs), max(ys)

    def _at(self, x_mm: float, y_mm: float) -> QPointF:
        """Return where a point of the piece lies on the sketch."""
        x0, y0, x1, y1 = self._limits()
        high = self.height() - _ABOVE_PX - 8
        along = (self.width() - 16) / (x1 - x0)
        upright = min(along * _STRETCH, high / (y1 - y0))
        if self.height() == _PLATE_PX:
            along = upright = min(along, upright)
        left = (self.width() - along * (x1 - x0)) / 2
        return QPointF(left + (x_mm - x0) * along, self.height() - 6 - (y_mm - y0) * upright)


def _seen(piece: Piece) -> list[list[Outline]]:
    """Return the outlines of each prism from above, or from the side; marks are left out."""
    prisms = [prism for prism in piece.prisms if prism.high_mm - prism.low_mm > _MARK_MM]
    if not piece.side_view:
        return [list(prism.outlines) for prism in prisms]
    return [[_side(prism)] for prism in prisms if _depth(prism) > 0.0]


def _side(prism: Prism) -> Outline:
    xs = [x for x, _ in prism.outlines[0]]
    return box(min(xs), prism.low_mm, max(xs), prism.high_mm)


def _depth(prism: Prism) -> float:
    return max(y for _, y in prism.outlines[0])
