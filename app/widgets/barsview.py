"""Stacked bars: each row a feature, its error made of causes that pull to either side of zero."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPoint, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QBrush, QColor, QFontInfo, QFontMetrics, QPainter, QPen

from app.theme import Tokens
from app.widgets.datapicture import DataPicture
from app.widgets.fields import local_text

_FOOT_PX, _KEY_PX, _MOST_ROW_PX, _LEAST_NAMED_PX = 22, 22, 26.0, 9.0
_KEY_LINE_PX = 18.0  # of a further line of the key
_PATTERNS = (
    Qt.BrushStyle.SolidPattern, Qt.BrushStyle.BDiagPattern, Qt.BrushStyle.Dense4Pattern, Qt.BrushStyle.FDiagPattern,
    Qt.BrushStyle.DiagCrossPattern,
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Bar:
    """One row: name, mm of each cause in the order of `BarsData.causes`, the whole, its half-width, and a sentence."""

    name: str
    parts_mm: Sequence[float]
    whole_mm: float
    U_mm: float
    says: str


@dataclass(frozen=True, slots=True)
class BarsData:
    """What is drawn; the last cause is what nothing explains and is left empty."""

    causes: Sequence[str]
    bars: Sequence[Bar]
    summary: str
    note: str


class BarsPane(DataPicture):
    """Shows one `BarsData`."""

    data: BarsData | None

    def points(self) -> list[tuple[QPoint, str]]:
        """Return the rows with their sentences."""
        if self.data is None:
            return []
        frame = _Frame(self.data, self.sheet.size(), self.fontMetrics())
        return [
            (QPointF(frame.x(bar.whole_mm), y).toPoint(), bar.says)
            for bar, y in zip(self.data.bars, frame.rows(), strict=True)
        ]

    def draw_data(self, painter: QPainter, size: QSize, theme: Tokens) -> None:
        """Draw key, axis and bars."""
        assert self.data is not None
        frame = _Frame(self.data, size, QFontMetrics(painter.font()))
        self._draw_key(painter, theme, frame)
        frame.draw_axis(painter, theme, self.in_unit)
        for bar, y in zip(self.data.bars, frame.rows(), strict=True):
            self._draw_bar(painter, theme, frame, bar, y)

    def _draw_key(self, painter: QPainter, theme: Tokens, frame: _Frame) -> None:
        assert self.data is not None
        for place, left, top in frame.key:
            painter.setPen(QPen(QColor(self._colour(theme, place)), 1))
            painter.setBrush(self._brush(theme, place))
            painter.drawRect(QRectF(left, top + 4, 12, 12))
            painter.setPen(QColor(theme.ink))
            painter.drawText(QPointF(left + 17, top + 15), self.data.causes[place])
        painter.setBrush(Qt.BrushStyle.NoBrush)

    def _draw_bar(self, painter: QPainter, theme: Tokens, frame: _Frame, bar: Bar, y: float) -> None:
        ends = {1: 0.0, -1: 0.0}
        thick = max(2.0, 0.62 * frame.row_px)
        for place, part in enumerate(bar.parts_mm):
            side = 1 if part >= 0 else -1
            left, right = sorted((frame.x(ends[side]), frame.x(ends[side] + part)))
            ends[side] += part
            painter.setPen(QPen(QColor(self._colour(theme, place)), 1))
            painter.setBrush(self._brush(theme, place))
            painter.drawRect(QRectF(left, y - thick / 2, max(right - left, 0.5), thick))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(QColor(theme.ink), 2))
        at = frame.x(bar.whole_mm)
        painter.drawLine(QPointF(at, y - thick / 2 - 2), QPointF(at, y + thick / 2 + 2))
        painter.setPen(QPen(QColor(theme.ink), 1))
        painter.drawLine(QPointF(frame.x(bar.whole_mm - bar.U_mm), y), QPointF(frame.x(bar.whole_mm + bar.U_mm), y))
        if frame.row_px >= _LEAST_NAMED_PX:
            painter.save()
            font = painter.font()
            font.setPixelSize(min(QFontInfo(font).pixelSize(), round(0.9 * frame.row_px)))  # no higher than its row
            painter.setFont(font)
            box = QRectF(0, y - 10, frame.low_px - 8, 20)
            align = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
            painter.drawText(box, int(align), bar.name)
            painter.restore()

    def _colour(self, theme: Tokens, place: int) -> str:
        assert self.data is not None
        return theme.quiet if place == len(self.data.causes) - 1 else theme.series[place % 5]

    def _brush(self, theme: Tokens, place: int) -> QBrush:
        assert self.data is not None
        if place == len(self.data.causes) - 1:
            return QBrush(Qt.BrushStyle.NoBrush)
        return QBrush(QColor(theme.series[place % 5]), _PATTERNS[place % len(_PATTERNS)])


class _Frame:
    """Where rows and millimetres stand on the sheet."""

    def __init__(self, data: BarsData, size: QSize, measure: QFontMetrics) -> None:
        names = max((measure.horizontalAdvance(bar.name) for bar in data.bars), default=0)
        self.low_px, self.high_px = min(names + 14.0, size.width() / 2), size.width() - 10.0
        ups = [sum(p for p in bar.parts_mm if p > 0) for bar in data.bars] + [b.whole_mm + b.U_mm for b in data.bars]
        downs = [sum(p for p in bar.parts_mm if p < 0) for bar in data.bars] + [b.whole_mm - b.U_mm for b in data.bars]
        self.low, self.high = min(*downs, -0.01), max(*ups, 0.01)
        self.key = _key(data.causes, size.width(), measure)
        self.top_px = _KEY_PX + max((top for _, _, top in self.key), default=0.0)
        self._count = max(len(data.bars), 1)
        self.row_px = min(_MOST_ROW_PX, max(size.height() - _FOOT_PX - self.top_px, 1.0) / self._count)

    def x(self, mm: float) -> float:
        """Place of an error."""
        return self.low_px + (mm - self.low) / (self.high - self.low) * (self.high_px - self.low_px)

    def rows(self) -> list[float]:
        """Height of the middle of each row."""
        return [self.top_px + self.row_px * (row + 0.5) for row in range(self._count)]

    def draw_axis(self, painter: QPainter, theme: Tokens, in_unit: Callable[[str], str]) -> None:
        """Draw zero and the ends of the scale, their texts in the unit that is shown."""
        foot = self.top_px + self.row_px * self._count
        painter.setPen(QPen(QColor(theme.hairline), 1))
        painter.drawLine(QPointF(self.low_px, foot), QPointF(self.high_px, foot))
        painter.setPen(QPen(QColor(theme.quiet), 1))
        painter.drawLine(QPointF(self.x(0), self.top_px), QPointF(self.x(0), foot))
        measure = QFontMetrics(painter.font())
        taken: list[tuple[float, float]] = []
        for mm in (0.0, self.low, self.high):
            text = "0" if mm == 0.0 else in_unit(local_text(f"{mm:+.2f}".replace("-", "−")) + " mm")
            wide = measure.horizontalAdvance(text)
            left = min(max(self.x(mm) - wide / 2, self.low_px), self.high_px + 8 - wide)
            if all(left > end + 4 or left + wide < start - 4 for start, end in taken):
                painter.drawText(QPointF(left, foot + 4 + measure.ascent()), text)
                taken.append((left, left + wide))


def _key(causes: Sequence[str], width_px: float, measure: QFontMetrics) -> list[tuple[int, float, float]]:
    """Return place, left and top of each cause in the key, which takes as many lines as it needs."""
    found, left, top = [], 4.0, 0.0
    last = len(causes) - 1
    for place in (last, *range(last)):
        wide = measure.horizontalAdvance(causes[place]) + 26.0
        if left > 4.0 and left + wide > width_px:
            left, top = 4.0, top + _KEY_LINE_PX
        found.append((place, left, top))
        left += wide + 6
    return found
