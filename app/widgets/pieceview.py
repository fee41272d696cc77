"""A set of test pieces as it lies on the bed, seen from above and in front, with its gauges numbered."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from PySide6.QtCore import QLineF, QLocale, QPoint, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QImage, QPainter, QPen

from app.rownames import shown_name
from app.theme import Tokens
from app.widgets.picturepane import PicturePane
from app.words import shown
from core.pieces.piece import Gauge, PrintSet

if TYPE_CHECKING:
    from core.pieces.solid import Solid
    from core.pieces.view import View

_BADGE_PX = 9.0
_AWAY_PX = 15.0  # of a number from the wall its jaw touches
_JAW_PX = 26.0
_MARGIN_PX = 34
_TURNS = tuple(math.radians(turn) for turn in (0, -35, 35, -70, 70, -105, 105, -140, 140, 180))


class PieceView(PicturePane):
    """Draws the solids; `gauge_shown` follows the gauge that is pointed at, by its number from 0."""

    gauge_shown = Signal(int)

    def __init__(self) -> None:
        super().__init__("")
        self._planned: PrintSet | None = None
        self._solids: tuple[Solid, ...] = ()
        self._lit = -1
        self._drawn: tuple[tuple[int, int, str], View, QImage] | None = None

    def show_set(self, planned: PrintSet, solids: tuple[Solid, ...]) -> None:
        """Show another set; the first gauge is lit."""
        self._planned, self._solids, self._drawn = planned, solids, None
        self._lit = 0 if planned.gauges else -1
        self.heading.setText(shown(planned.name))
        self.picture_button.show()
        self.refresh()
        gauges = [self._sentence(number) for number in range(len(planned.gauges))]
        self.describe("\n".join([shown(planned.purpose), *gauges]))

    def show_nothing(self, why: str = "") -> None:
        """Show no piece: none fits."""
        self._planned, self._solids, self._drawn, self._lit = None, (), None, -1
        self.heading.setText("")
        self.picture_button.hide()
        self.refresh()

    def light(self, number: int) -> None:
        """Draw the jaws of one gauge; -1 for none."""
        self._lit = number
        self.tells.setText(self.hint())
        self.tells.setVisible(bool(self.tells.text()))
        self.sheet.update()

    def tell(self, point: int) -> None:
        """Light the gauge that is walked to or pointed at."""
        super().tell(point)
        if point >= 0 and point != self._lit:
            self._lit = point
            self.gauge_shown.emit(point)

    def hint(self) -> str:
        """Return the sentence of the gauge that is lit."""
        return self._sentence(self._lit) if self._lit >= 0 else ""

    def points(self) -> list[tuple[QPoint, str]]:
        """Return the numbers in the picture with their sentences."""
        view = self._view(self.sheet.size())
        if view is None or self._planned is None:
            return []
        return [(place.toPoint(), self._sentence(number)) for number, place in enumerate(self._badges(view))]

    def draw(self, painter: QPainter, size: QSize, theme: Tokens) -> None:
        """Draw faces, edges, the lit jaws and the numbers."""
        view = self._view(size)
        if view is None or self._planned is None:
            return
        painter.drawImage(0, 0, self._image(view, size, theme))
        painter.setPen(QPen(QColor(theme.quiet), 1.1))
        painter.drawLines([QLineF(*edge) for edge in view.edges_px.reshape(-1, 4).tolist()])
        badges = self._badges(view)
        if self._lit >= 0:
            self._draw_jaws(painter, view, theme)
        for number, place in enumerate(badges):
            self._draw_badge(painter, place, number, theme)

    def _view(self, size: QSize) -> View | None:
        """Return the picture for this size, worked out once."""
        if not self._solids:
            return None
        if self._drawn is None or self._drawn[0][:2] != (size.width(), size.height()):
            from core.pieces.view import view_of  # the window opens before the mathematics is needed

            view = view_of(self._solids, size.width(), size.height(), _MARGIN_PX)
            self._drawn = ((size.width(), size.height(), ""), view, QImage())
        return self._drawn[1]

    def _image(self, view: View, size: QSize, theme: Tokens) -> QImage:
        """Return the shaded faces in the colours of the theme, worked out once."""
        assert self._drawn is not None
        key = (size.width(), size.height(), theme.name)
        if self._drawn[0] != key:
            self._drawn = (key, view, _coloured(view, theme))
        return self._drawn[2]

    def _ends(self, view: View, number: int) -> tuple[QPointF, QPointF]:
        assert self._planned is not None
        first, second = view.at_px(self._planned.places()[number]).tolist()
        return QPointF(*first), QPointF(*second)

    def _badges(self, view: View) -> list[QPointF]:
        """Place each number beside its first jaw, outside the wall or in the opening, where no other number stands."""
        assert self._planned is not None
        placed: list[QPointF] = []
        for number in range(len(self._planned.gauges)):
            first, second = self._ends(view, number)
            start = (second - first) if self._gauge(number).inside else (first - second)
            around = [_beside(first, start, turn) for turn in _TURNS]
            free = (p for p in around if all(_apart(p, other) >= 2 * _BADGE_PX for other in placed))
            placed.append(next(free, around[0]))
        return placed

    def _draw_badge(self, painter: QPainter, place: QPointF, number: int, theme: Tokens) -> None:
        lit = number == self._lit
        painter.setPen(QPen(QColor(theme.accent if lit else theme.quiet), 1.4))
        painter.setBrush(QColor(theme.accent if lit else theme.card))
        painter.drawEllipse(place, _BADGE_PX, _BADGE_PX)
        painter.setPen(QColor(theme.on_accent if lit else theme.ink))
        around = QRectF(place.x() - 12, place.y() - 12, 24, 24)
        painter.drawText(around, Qt.AlignmentFlag.AlignCenter, str(number + 1))
        painter.setBrush(Qt.BrushStyle.NoBrush)

    def _draw_jaws(self, painter: QPainter, view: View, theme: Tokens) -> None:
        """Draw two jaws that come from above, their distance written between them."""
        first, second = self._ends(view, self._lit)
        gauge = self._gauge(self._lit)
        lift = QPointF(_JAW_PX, 0.0) if gauge.axis == "z" else QPointF(0.0, -_JAW_PX)
        painter.setPen(QPen(QColor(theme.accent), 2.4))
        for place in (first, second):
            painter.drawLine(place, place + lift)
        painter.drawLine(first + lift, second + lift)
        text = _length_text(gauge)
        width = painter.fontMetrics().horizontalAdvance(text) + 10
        middle = (first + second) / 2 + lift
        label = QRectF(middle.x() - width / 2, middle.y() - 10, width, 20)
        painter.fillRect(label, QColor(theme.card))
        painter.drawText(label, Qt.AlignmentFlag.AlignCenter, text)

    def _gauge(self, number: int) -> Gauge:
        assert self._planned is not None
        return self._planned.gauges[number]

    def _sentence(self, number: int) -> str:
        gauge = self._gauge(number)
        text = self.tr("№ {number}   {name}, {length}: {says}")
        name, says = shown_name(gauge.name), shown(gauge.says)
        return text.format(number=number + 1, name=name, length=_length_text(gauge), says=says)


def _beside(point: QPointF, direction: QPointF, turn: float) -> QPointF:
    """Return a place beside a point, in a direction turned by so many radians."""
    angle = math.atan2(direction.y(), direction.x()) + turn
    return QPointF(point.x() + _AWAY_PX * math.cos(angle), point.y() + _AWAY_PX * math.sin(angle))


def _apart(a: QPointF, b: QPointF) -> float:
    return math.hypot(a.x() - b.x(), a.y() - b.y())


def _length_text(gauge: Gauge) -> str:
    places = 0 if abs(gauge.nominal_mm - round(gauge.nominal_mm)) < 1e-6 else 2
    return QLocale().toString(gauge.nominal_mm, "f", places) + " mm"


def _coloured(view: View, theme: Tokens) -> QImage:
    """Mix each face from a dark and a bright colour of the theme."""
    import numpy as np

    dark, bright, ground = (QColor(name) for name in _face_colours(theme))
    height, width = view.shade.shape
    share = np.nan_to_num(view.shade)[:, :, None]
    low, high, empty = (np.array([c.red(), c.green(), c.blue()], dtype=float) for c in (dark, bright, ground))
    rgb = np.where(np.isnan(view.shade)[:, :, None], empty, low + share * (high - low)).astype(np.uint8)
    data = np.ascontiguousarray(rgb).tobytes()
    return QImage(data, width, height, 3 * width, QImage.Format.Format_RGB888).copy()


def _face_colours(theme: Tokens) -> tuple[str, str, str]:
    return (theme.box, theme.soft, theme.card) if theme.name == "light" else (theme.ground, theme.box, theme.card)
