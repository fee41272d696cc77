"""The parallelogram of two axes, its angle drawn large: which diagonal is long, which way it leans, what to push."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from PySide6.QtCore import QLineF, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF
from PySide6.QtWidgets import QWidget

from app.theme import Tokens
from app.widgets.picturepane import PicturePane

_LARGE, _SMALLER = 100.0, 10.0
_MOST_DRAWN_RAD = 0.6
_LEANS_ROOM = 0.3  # share of the width on either side that a leaning top may take
_PILLAR_PX = 9.0


@dataclass(frozen=True, slots=True)
class SkewData:
    """What is drawn.

    Attributes:
        plane: the two axes, "xy".
        pillars: whether the corners are pillars.
        angle_rad: None while there is no result.
        lines: texts beside the picture, the first one in bold.
        diagonals: texts at the two diagonals.
        push: +1 to bring the far side back, -1 forward, 0 for nothing to push.
        lit: the diagonal that is read next, "1", "2" or "".
        lit_text: how it is read.
        summary: for those who cannot see it.
    """

    plane: str = "xy"
    pillars: bool = True
    angle_rad: float | None = None
    lines: tuple[str, ...] = ()
    diagonals: tuple[str, str] = ("1", "2")
    push: int = 0
    lit: str = ""
    lit_text: str = ""
    summary: str = ""


class SkewPane(PicturePane):
    """Shows one `SkewData`."""

    def __init__(self, title: str, parent: QWidget | None = None) -> None:
        super().__init__(title, parent)
        self.data = SkewData()
        self._why = ""

    def show_skew(self, data: SkewData) -> None:
        """Show a parallelogram; the diagonal lit before stays lit."""
        self.data = replace(data, lit=self.data.lit, lit_text=self.data.lit_text)
        self._why = ""
        if self.inch:
            first, second = (self.in_unit(text) for text in data.diagonals)
            self.data = replace(self.data, lines=tuple(map(self.in_unit, data.lines)), diagonals=(first, second))
        self.describe(data.summary)
        self.refresh()

    def show_nothing(self, why: str = "") -> None:
        """Show the axes with the sign convention, without an angle; and what is wrong, if anything."""
        self.show_skew(SkewData(self.data.plane, self.data.pillars))
        self._why = why
        self.describe(self.hint())
        self.refresh()

    def light(self, plane: str, diagonal: str, text: str, *, pillars: bool) -> None:
        """Show which diagonal is read next, whatever else is shown."""
        self.data = replace(self.data, plane=plane, lit=diagonal, lit_text=text, pillars=pillars)
        self.refresh()

    def factor(self) -> float:
        """Return how many times larger the angle is drawn."""
        g = abs(self.data.angle_rad or 0.0)
        return _LARGE if _LARGE * g <= _MOST_DRAWN_RAD else _SMALLER

    def hint(self) -> str:
        """Say the sign convention, or why there is no angle."""
        if self._why:
            return self._why
        first, second = self._axes()
        return self.tr(
            "Angle above 0: {second} leans towards +{first}, and diagonal 1 (from −− to ++) is the long one."
        ).format(first=first, second=second)

    def draw(self, painter: QPainter, size: QSize, theme: Tokens) -> None:
        """Draw square, parallelogram, diagonals and arrows; texts at the right."""
        corners = self._corners(size)
        base = self._corners(size, straight=True)
        painter.setPen(QPen(QColor(theme.quiet), 1, Qt.PenStyle.DashLine))
        painter.drawPolygon(QPolygonF(base))
        painter.setPen(QPen(QColor(theme.ink), 1.6))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawPolygon(QPolygonF(corners))
        self._draw_diagonals(painter, corners, theme)
        self._draw_axes(painter, base, theme)
        if self.data.pillars:
            painter.setPen(QPen(QColor(theme.ink), 1.4))
            painter.setBrush(QColor(theme.soft))
            for corner in corners:
                painter.drawEllipse(corner, _PILLAR_PX, _PILLAR_PX)
        if self.data.push:
            self._draw_push(painter, corners, theme)
        self._write(painter, size, theme)

    def _axes(self) -> tuple[str, str]:
        return self.data.plane[0].upper(), self.data.plane[1].upper()

    def _side_px(self, size: QSize) -> float:
        return max(60.0, min(size.height() - 62.0, size.width() * 0.34))

    def _corners(self, size: QSize, *, straight: bool = False) -> list[QPointF]:
        """Return the corners (-,-), (+,-), (+,+), (-,+)."""
        side = self._side_px(size)
        lean = 0.0 if straight else side * math.tan((self.data.angle_rad or 0.0) * self.factor())
        left, bottom = 46.0 + side * _LEANS_ROOM, (size.height() + side) / 2 - 8
        return [
            QPointF(left, bottom),
            QPointF(left + side, bottom),
            QPointF(left + side + lean, bottom - side),
            QPointF(left + lean, bottom - side),
        ]

    def _draw_diagonals(self, painter: QPainter, corners: list[QPointF], theme: Tokens) -> None:
        for number, (start, end, role, style) in enumerate(
            ((0, 2, 0, Qt.PenStyle.SolidLine), (3, 1, 1, Qt.PenStyle.DashDotLine)), start=1
        ):
            lit = self.data.lit == str(number)
            painter.setPen(QPen(QColor(theme.series[role]), 3.5 if lit else 1.6, style))
            line = QLineF(corners[start], corners[end])
            painter.drawLine(line)
            text = self.data.diagonals[number - 1]
            at = line.pointAt(0.8)  # one above the other at the right, where each has room
            box = QRectF(painter.fontMetrics().boundingRect(text)).adjusted(-4, -1, 4, 1)
            box.moveCenter(at)
            painter.fillRect(box, QColor(theme.card))
            painter.setPen(QColor(theme.ink))
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter, text)

    def _draw_axes(self, painter: QPainter, base: list[QPointF], theme: Tokens) -> None:
        painter.setPen(QColor(theme.quiet))
        first, second = self._axes()
        under = QRectF(base[0].x(), base[0].y() + 12, base[1].x() - base[0].x(), 20)
        painter.drawText(under, Qt.AlignmentFlag.AlignCenter, f"+{first} →")
        beside = QRectF(2, base[3].y(), 40, base[0].y() - base[3].y())
        painter.drawText(beside, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, f"+{second} ↑")

    def _draw_push(self, painter: QPainter, corners: list[QPointF], theme: Tokens) -> None:
        """Draw an arrow where to push: the + side of the beam in XY, else the far end of the upright."""
        painter.setPen(QPen(QColor(theme.warning), 2.5))
        if self.data.plane == "xy":
            at = QLineF(corners[1], corners[2]).pointAt(0.5) + QPointF(24, 0)
            tip = at + QPointF(0, 26.0 * self.data.push)
        else:
            at = QLineF(corners[2], corners[3]).pointAt(0.5) + QPointF(0, -14)
            tip = at + QPointF(-26.0 * self.data.push, 0)
        painter.drawLine(at, tip)
        back = QLineF(tip, at)
        for turn in (28, -28):
            barb = QLineF(back)
            barb.setAngle(back.angle() + turn)
            barb.setLength(10)
            painter.drawLine(barb)

    def _write(self, painter: QPainter, size: QSize, theme: Tokens) -> None:
        left = 46.0 + self._side_px(size) * (1 + 2 * _LEANS_ROOM) + 40
        box = QRectF(left, 8, size.width() - left - 6, size.height() - 16)
        lines = [*self.data.lines]
        if self.data.angle_rad is not None:
            lines.append(self.tr("The angle is drawn {factor:.0f} times.").format(factor=self.factor()))
        if self.data.lit_text:
            lines.append(self.tr("Next: {what}").format(what=self.data.lit_text))
        font = painter.font()
        for place, text in enumerate(lines):
            bold = place == 0 and bool(self.data.lines)
            font.setBold(bold)
            painter.setFont(font)
            painter.setPen(QColor(theme.ink if bold else theme.quiet))
            flags = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop | Qt.TextFlag.TextWordWrap
            painter.drawText(box, flags, text)
            box.setTop(painter.boundingRect(box, flags, text).bottom() + 8)
        font.setBold(False)
        painter.setFont(font)
