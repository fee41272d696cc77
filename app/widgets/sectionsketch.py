"""The cross-section of a filament, its deviations drawn larger, with the jaws as they stand for the next reading."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.faults import or_else, told_at_once
from app.theme import tokens
from app.widgets.fields import number_text
from app.widgets.roles import told_as_picture

_HEIGHT_PX = 76
_RADIUS_PX = 24.0
_LARGER = 5.0  # so that a few hundredths are seen
_MOST_SHARE = 0.45
_JAW_PX = 16.0


@told_as_picture
class SectionSketch(QWidget):
    """Draws the nominal circle dashed, the ellipse of a pair over it, and two jaws."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._nominal_mm = 0.0
        self._pair: tuple[float | None, float | None] = (None, None)
        self._turned = False
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setFixedHeight(_HEIGHT_PX)
        self.setAccessibleName(self.tr("Sketch of the cross-section"))

    @or_else(QSize())
    def sizeHint(self) -> QSize:
        """Prefer a width at which the words fit."""
        return QSize(280, _HEIGHT_PX)

    def show_pair(self, nominal_mm: float, first_mm: float | None, second_mm: float | None, *, turned: bool) -> None:
        """Show one place: the largest reading across, the other upright; `turned` where the second is read next."""
        self._nominal_mm, self._pair, self._turned = nominal_mm, (first_mm, second_mm), turned
        self.setAccessibleDescription(self._says())
        self.update()

    @told_at_once
    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw circle, ellipse, jaws and words."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme = tokens()
        middle = QPointF(2.5 * _RADIUS_PX, self.height() / 2)
        across, upright = (self._radius_px(reading) for reading in self._pair)
        painter.setPen(QPen(QColor(theme.quiet), 1.2))
        painter.setBrush(QColor(theme.soft))
        painter.drawEllipse(middle, across, upright)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(QColor(theme.quiet), 1, Qt.PenStyle.DashLine))
        painter.drawEllipse(middle, _RADIUS_PX, _RADIUS_PX)
        painter.setPen(QPen(QColor(theme.accent), 2))
        for side in (-1.0, 1.0):
            if self._turned:
                y = middle.y() + side * upright
                painter.drawLine(QPointF(middle.x() - _JAW_PX, y), QPointF(middle.x() + _JAW_PX, y))
            else:
                x = middle.x() + side * across
                painter.drawLine(QPointF(x, middle.y() - _JAW_PX), QPointF(x, middle.y() + _JAW_PX))
        painter.setPen(QColor(theme.ink))
        room = QRectF(5.0 * _RADIUS_PX, 0, max(self.width() - 5.0 * _RADIUS_PX, 1.0), self.height())
        painter.drawText(room, int(Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextWordWrap), self._says())
        painter.end()

    def _radius_px(self, reading_mm: float | None) -> float:
        if reading_mm is None or self._nominal_mm <= 0:
            return _RADIUS_PX
        share = _LARGER * (reading_mm / self._nominal_mm - 1.0)
        return _RADIUS_PX * (1.0 + min(max(share, -_MOST_SHARE), _MOST_SHARE))

    def _says(self) -> str:
        first, second = self._pair
        if first is not None and second is not None:
            return self.tr("{first} by {second} mm, deviations drawn {factor} times").format(
                first=number_text(first), second=number_text(second), factor=number_text(_LARGER))
        return self.tr("Now at 90° to it.") if self._turned else self.tr("Turn it until it reads most.")
