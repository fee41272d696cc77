"""Who printed what: machines at the left, lots at the right, each with its share and interval, prints as lines between.

The pale bar behind an interval is what was known before any print. A dashed ring marks a figure that is mostly that.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from operator import itemgetter

from PySide6.QtCore import QLineF, QPoint, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPen

from app.theme import Tokens
from app.widgets.datapicture import DataPicture
from app.widgets.fields import local_text

_TOP_PX, _FOOT_PX = 22, 22
_MOST_ROW_PX, _LEAST_NAMED_PX = 30.0, 11.0
_NAME_PX = 92
_ISLANDS = (0, 1, 2, 3)  # data colours, one an island; its number stands at the names too
_STYLES = (Qt.PenStyle.SolidLine, Qt.PenStyle.DashLine, Qt.PenStyle.DotLine, Qt.PenStyle.DashDotLine)  # as well


@dataclass(frozen=True, slots=True)
class Share:
    """One machine or lot.

    Attributes:
        name: for people.
        percent: its share; `U_percent` the half-width of its interval, `prior_percent` and `prior_half_percent` before.
        by_prior: whether the figure is mostly the prior's.
        island: number of the island it belongs to, None where it was never printed.
        picked: whether it is the one picked in the window.
        says: sentence for the line below.
    """

    name: str
    percent: float
    U_percent: float
    prior_percent: float
    prior_half_percent: float
    by_prior: bool
    island: int | None
    picked: bool
    says: str


@dataclass(frozen=True, slots=True)
class ShopData:
    """What is drawn: machines, lots, and (machine, lot, number of prints)."""

    machines: Sequence[Share]
    lots: Sequence[Share]
    links: Sequence[tuple[int, int, int]]
    machine_label: str
    lot_label: str
    summary: str
    note: str


class ShopPane(DataPicture):
    """Shows one `ShopData`."""

    data: ShopData | None

    def points(self) -> list[tuple[QPoint, str]]:
        """Return machines, then lots, with their sentences."""
        if self.data is None:
            return []
        size = self.sheet.size()
        return [
            (QPointF(side.x(share.percent), y).toPoint(), share.says)
            for side in (_Side(self.data.machines, size, left=True), _Side(self.data.lots, size, left=False))
            for share, y in zip(side.shares, side.rows(), strict=True)
        ]

    def draw_data(self, painter: QPainter, size: QSize, theme: Tokens) -> None:
        """Draw links first, then both sides."""
        assert self.data is not None
        machines, lots = (_Side(self.data.machines, size, left=True), _Side(self.data.lots, size, left=False))
        self._draw_links(painter, machines, lots, theme)
        for side, label in ((machines, self.data.machine_label), (lots, self.data.lot_label)):
            side.draw(painter, theme, label)

    def _draw_links(self, painter: QPainter, machines: _Side, lots: _Side, theme: Tokens) -> None:
        assert self.data is not None
        from_y, to_y = machines.rows(), lots.rows()
        lines: dict[tuple[float, int], list[QLineF]] = {}  # by pen: of a large shop there are thousands
        for machine, lot, prints in self.data.links:
            island = (machines.shares[machine].island or 0) % len(_ISLANDS)
            picked = machines.shares[machine].picked and lots.shares[lot].picked
            wide = min(1.0 + 0.7 * (prints - 1), 5.0) + (1.0 if picked else 0.0)
            line = QLineF(machines.inner + 4, from_y[machine], lots.inner - 4, to_y[lot])
            lines.setdefault((wide, island), []).append(line)
        for (wide, island), alike in sorted(lines.items(), key=itemgetter(0)):  # the broadest lie above
            painter.setPen(QPen(QColor(theme.series[_ISLANDS[island]]), wide, _STYLES[island]))
            painter.drawLines(alike)


class _Side:
    """Machines or lots: where their rows, names and intervals stand."""

    def __init__(self, shares: Sequence[Share], size: QSize, *, left: bool) -> None:
        self.shares, self._left = shares, left
        width, self._height = size.width(), size.height()
        plot = max(80.0, 0.5 * (width - 2 * _NAME_PX - 0.22 * width))
        self.low_px, self.high_px = (8.0, plot) if left else (width - plot, width - 8.0)
        self.inner = plot + _NAME_PX if left else width - plot - _NAME_PX
        ends = [s.percent + sign * s.U_percent for s in shares for sign in (-1, 1)] + [0.0]
        self.low, self.high = min(ends), max(ends)
        if self.high - self.low < 0.05:
            self.low, self.high = self.low - 0.025, self.high + 0.025
        if left:
            self.high = max(self.high, -self.low)
            self.low = -self.high
        self.row_px = min(_MOST_ROW_PX, (self._height - _TOP_PX - _FOOT_PX) / max(len(shares), 1))

    def rows(self) -> list[float]:
        """Height of the middle of each row."""
        used = self.row_px * len(self.shares)
        top = _TOP_PX + max(0.0, (self._height - _TOP_PX - _FOOT_PX - used) / 2)
        return [top + self.row_px * (row + 0.5) for row in range(len(self.shares))]

    def x(self, percent: float) -> float:
        """Place of a share, kept within the side."""
        share = (percent - self.low) / (self.high - self.low)
        return self.low_px + min(max(share, 0.0), 1.0) * (self.high_px - self.low_px)

    def draw(self, painter: QPainter, theme: Tokens, label: str) -> None:
        """Draw axis, names, priors, intervals and dots."""
        self._draw_axis(painter, theme, label)
        measure = QFontMetrics(painter.font())
        for share, y in zip(self.shares, self.rows(), strict=True):
            self._draw_share(painter, theme, share, y)
            if self.row_px < _LEAST_NAMED_PX:
                continue
            font = painter.font()
            font.setBold(share.picked)
            painter.setFont(font)
            painter.setPen(QColor(theme.accent if share.picked else theme.ink))
            name = share.name if not share.island else f"{share.name} ({share.island + 1})"
            text = measure.elidedText(name, Qt.TextElideMode.ElideRight, _NAME_PX - 12)
            start = self.high_px + 4 if self._left else self.inner + 4
            align = Qt.AlignmentFlag.AlignRight if self._left else Qt.AlignmentFlag.AlignLeft
            box = QRectF(start, y - 10, _NAME_PX - 8, 20)
            painter.drawText(box, int(align | Qt.AlignmentFlag.AlignVCenter), text)
            font.setBold(False)
            painter.setFont(font)

    def _draw_axis(self, painter: QPainter, theme: Tokens, label: str) -> None:
        foot = self._height - _FOOT_PX
        painter.setPen(QPen(QColor(theme.hairline), 1))
        painter.drawLine(QPointF(self.low_px, foot), QPointF(self.high_px, foot))
        painter.drawLine(QPointF(self.x(0.0), _TOP_PX), QPointF(self.x(0.0), foot))
        painter.setPen(QColor(theme.quiet))
        measure = QFontMetrics(painter.font())
        taken: list[tuple[float, float]] = []
        for percent in (0.0, self.low, self.high):
            text = "0" if percent == 0.0 else local_text(f"{percent:+.2f}".replace("-", "−"))
            wide = measure.horizontalAdvance(text)
            left = min(max(self.x(percent) - wide / 2, self.low_px - 8), self.high_px + 8 - wide)
            if all(left > end + 2 or left + wide < start - 2 for start, end in taken):
                painter.drawText(QPointF(left, foot + 2 + measure.ascent()), text)
                taken.append((left, left + wide))
        wide = measure.horizontalAdvance(label)
        left = self.low_px if self._left else min(self.low_px, self.high_px + 8 - wide)
        painter.drawText(QPointF(left, measure.ascent()), label)

    def _draw_share(self, painter: QPainter, theme: Tokens, share: Share, y: float) -> None:
        thick = max(2.0, min(8.0, self.row_px * 0.4))
        ghost = QColor(theme.quiet)
        ghost.setAlphaF(0.18)
        low, high = self.x(share.prior_percent - share.prior_half_percent), self.x(
            share.prior_percent + share.prior_half_percent)  # fmt: skip
        painter.setPen(QPen(QColor(theme.box), 1))
        painter.setBrush(ghost)
        painter.drawRect(QRectF(low, y - thick, high - low, 2 * thick))
        colour = QColor(theme.series[0 if self._left else 1])
        painter.setPen(QPen(colour, 2))
        ends = self.x(share.percent - share.U_percent), self.x(share.percent + share.U_percent)
        painter.drawLine(QPointF(ends[0], y), QPointF(ends[1], y))
        radius = max(1.5, min(4.0, self.row_px * 0.3))
        if share.by_prior:
            painter.setBrush(QColor(theme.card))
            painter.setPen(QPen(colour, 1.2, Qt.PenStyle.DotLine))
        else:
            painter.setBrush(colour)
        painter.drawEllipse(QPointF(self.x(share.percent), y), radius, radius)
        painter.setBrush(Qt.BrushStyle.NoBrush)
