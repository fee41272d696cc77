"""A bed seen from above: heights as colours on a scale that stays the same, numbers at the probes, screws to turn."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QPoint, QPointF, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetrics, QImage, QLinearGradient, QPainter, QPen
from PySide6.QtWidgets import QWidget

from app.theme import Tokens
from app.units import hold, inch_numbers
from app.widgets.fields import local_text, number_text
from app.widgets.picturepane import PicturePane

Floats = NDArray[np.float64]

FIXED_MM = 0.3  # so that two days compare
_LOW, _HIGH = "#0072b2", "#d55e00"  # Okabe-Ito blue and vermilion; the sign stands at each place too
_MOST_INK = 0.85  # share of the pure colour at the end of the scale
_CELLS = 48
_RIM_PX = 14  # between the numbers and the edge, so that the screws in the corners stay in sight
_SIGN_PX = 3.0  # half as wide
_NEAREST_POWER = 3.0  # of the distance, by which a probe counts between the probes


@dataclass(frozen=True, slots=True)
class Screw:
    """A levelling screw: place and what to do there in a few signs."""

    x_mm: float
    y_mm: float
    text: str
    says: str


@dataclass(frozen=True, slots=True, eq=False)
class MapData:
    """What is drawn.

    Attributes:
        x_mm, y_mm: (n,) probed places.
        height_mm: (n,) above the middle of the plane.
        residual_mm: (n,) above the plane.
        flagged: (n,) places that stand out.
        names: n names for the tip.
        screws: of the bed.
        size_mm: travel along X and Y.
        summary: for those who cannot see it.
    """

    x_mm: Floats
    y_mm: Floats
    height_mm: Floats
    residual_mm: Floats
    flagged: NDArray[np.bool_]
    names: tuple[str, ...]
    screws: tuple[Screw, ...] = ()
    size_mm: tuple[float, float] = (220.0, 220.0)
    summary: str = ""
    note: str = field(default="")


class MapPane(PicturePane):
    """Shows one `MapData`; switches take the plane out and fix the scale."""

    is_chart = True

    def __init__(self, title: str, empty_text: str, parent: QWidget | None = None) -> None:
        super().__init__(title, parent)
        self.data: MapData | None = None
        self._empty_text = self._nothing = empty_text
        self.plane_box = self.add_switch(self.tr("plane taken out"))
        self.fixed_box = self.add_switch("")
        self._name_switch()
        self.show_nothing()

    def show_inches(self) -> None:
        """Show heights in inch."""
        super().show_inches()
        self._name_switch()

    def _name_switch(self) -> None:
        text = self.tr("scale ±{limit} mm").format(limit=number_text(FIXED_MM))
        self.fixed_box.setText(self.in_unit(text))

    def _bare(self, text: str) -> str:
        """Return a number without a unit in the unit that is shown."""
        return inch_numbers(text) if self.inch else text

    def show_map(self, data: MapData) -> None:
        """Show a bed."""
        self.data = data
        self.describe(data.summary)
        self.refresh()

    def show_nothing(self, why: str = "") -> None:
        """Say what is missing, or wrong."""
        self.data, self._nothing = None, why or self._empty_text
        self.describe(self._nothing)
        self.refresh()

    def hint(self) -> str:
        """Say what the colours mean."""
        return self.data.note if self.data else ""

    def values_mm(self) -> Floats:
        """Return the heights that are now drawn."""
        if self.data is None:
            return np.empty(0)
        return self.data.residual_mm if self.plane_box.isChecked() else self.data.height_mm

    def limit_mm(self) -> float:
        """Return the height at the end of the colour scale."""
        if self.fixed_box.isChecked():
            return FIXED_MM
        return max(float(np.abs(self.values_mm()).max(initial=0.0)), 0.01)

    def points(self) -> list[tuple[QPoint, str]]:
        """Return the probes with their heights, then the screws."""
        data = self.data
        if data is None:
            return []
        mm = self.tr("mm")
        found = []
        for place, name in enumerate(data.names):
            says = self.tr("{name} at {x}, {y} mm: {height} {mm}, above the plane {residual} {mm}")
            text = hold(says).format(  # a place is told to the machine, in mm
                name=name,
                x=number_text(data.x_mm[place], 1),
                y=number_text(data.y_mm[place], 1),
                height=local_text(f"{data.height_mm[place]:+.3f}"),
                residual=local_text(f"{data.residual_mm[place]:+.3f}"),
                mm=mm,
            )
            found.append((self._at(data.x_mm[place], data.y_mm[place]).toPoint(), text))
        return found + [(self._at(s.x_mm, s.y_mm).toPoint(), s.says) for s in data.screws]

    def draw(self, painter: QPainter, size: QSize, theme: Tokens) -> None:
        """Draw the plate, the colours, the numbers, the screws and the scale."""
        if self.data is None:
            painter.setPen(QColor(theme.quiet))
            flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
            painter.drawText(QRect(QPoint(0, 0), size).adjusted(24, 0, -24, 0), flags, self._nothing)
            return
        plate = self._plate()
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.drawImage(plate, self._colours(self.data, theme))
        painter.setPen(QPen(QColor(theme.quiet), 1))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(plate)
        self._draw_axes(painter, plate, theme)
        for screw in self.data.screws:
            self._draw_screw(painter, plate, screw, theme)
        self._draw_numbers(painter, self.data, theme)
        self._draw_scale(painter, plate, theme)

    def _plate(self) -> QRectF:
        """Return where the bed is drawn, to scale; screws have a line above and below it."""
        size, line = self.sheet.size(), self.fontMetrics().height()
        wide, deep = self.data.size_mm if self.data else (1.0, 1.0)
        room = QSize(max(size.width() - 150, 60), max(size.height() - 4 * line, 60))
        scale = min(room.width() / wide, room.height() / deep)
        left = 48 + (room.width() - wide * scale) / 2
        return QRectF(left, 1.4 * line + (room.height() - deep * scale) / 2, wide * scale, deep * scale)

    def _at(self, x_mm: float, y_mm: float) -> QPointF:
        plate = self._plate()
        wide, deep = self.data.size_mm if self.data else (1.0, 1.0)
        return QPointF(plate.left() + x_mm / wide * plate.width(), plate.bottom() - y_mm / deep * plate.height())

    def _colours(self, data: MapData, theme: Tokens) -> QImage:
        wide, deep = data.size_mm
        x = (np.arange(_CELLS) + 0.5) / _CELLS * wide
        y = deep - (np.arange(_CELLS) + 0.5) / _CELLS * deep
        gx, gy = np.meshgrid(x, y)
        share = between(data.x_mm, data.y_mm, self.values_mm(), gx, gy) / self.limit_mm()
        return tinted(share, theme.card)

    def _draw_axes(self, painter: QPainter, plate: QRectF, theme: Tokens) -> None:
        painter.setPen(QColor(theme.quiet))
        wide, deep = self.data.size_mm if self.data else (1.0, 1.0)
        line = painter.fontMetrics().height()
        under = QRectF(plate.left() - 30, plate.bottom() + 1.2 * line, plate.width() + 60, line)
        painter.drawText(under, Qt.AlignmentFlag.AlignCenter, self.tr("X, mm (front)"))
        painter.drawText(under.adjusted(22, 0, 0, 0), Qt.AlignmentFlag.AlignLeft, "0")
        painter.drawText(under.adjusted(0, 0, -18, 0), Qt.AlignmentFlag.AlignRight, number_text(wide, 0))
        for y, text in ((plate.bottom() - line, "0"), (plate.top(), number_text(deep, 0)),
                        (plate.center().y() - line / 2, self.tr("Y"))):  # fmt: skip
            painter.drawText(QRectF(plate.left() - 46, y, 40, line), Qt.AlignmentFlag.AlignRight, text)

    def _draw_screw(self, painter: QPainter, plate: QRectF, screw: Screw, theme: Tokens) -> None:
        """Draw a slotted head, its text outside the plate, so that no number is covered."""
        at = self._at(screw.x_mm, screw.y_mm)
        painter.setPen(QPen(QColor(theme.ink), 1.4))
        painter.setBrush(QColor(theme.card))
        painter.drawEllipse(at, 5, 5)
        painter.drawLine(at - QPointF(3.5, 3.5), at + QPointF(3.5, 3.5))
        metrics = painter.fontMetrics()
        width, line = metrics.horizontalAdvance(screw.text) + 2, metrics.height()
        top = plate.top() - 1.2 * line if at.y() < plate.center().y() else plate.bottom() + 0.1 * line
        left = min(max(at.x() - width / 2, plate.left() - 44), plate.right() + 40 - width)
        painter.drawText(QRectF(left, top, width, line), Qt.AlignmentFlag.AlignCenter, screw.text)

    def numbers(self, metrics: QFontMetrics) -> list[tuple[int, str, QRect]]:
        """Return place, text and box of the heights that have room.

        Where they would cover each other the larger ones stay, those that stand out first; the arrow keys tell all.
        """
        data = self.data
        if data is None:
            return []
        inside = self._plate().adjusted(_RIM_PX, 1, -_RIM_PX, -1).toRect()
        values, found = self.values_mm().tolist(), list[tuple[int, str, QRect]]()
        for place in sorted(range(len(values)), key=lambda n: (not data.flagged[n], -abs(values[n]))):
            value = values[place]
            text = self._bare(local_text(f"{value:+.2f}")) if round(value, 2) else "0"
            if data.flagged[place]:
                text = f"⚑ {text}"
            box = _box(metrics, text)
            box.moveCenter(self._at(data.x_mm[place], data.y_mm[place]).toPoint())
            box.moveLeft(max(min(box.left(), inside.right() - box.width()), inside.left()))
            box.moveTop(max(min(box.top(), inside.bottom() - box.height()), inside.top()))
            if not any(box.intersects(other) for _, _, other in found):
                found.append((place, text, box))
        return found

    def _draw_numbers(self, painter: QPainter, data: MapData, theme: Tokens) -> None:
        """Write heights with their sign on a ground of their own, the sign alone where there is no room for more."""
        numbers, values = self.numbers(painter.fontMetrics()), self.values_mm().tolist()
        painter.setPen(QPen(QColor(theme.ink), 1.4))
        for place in set(range(len(values))).difference(place for place, _, _ in numbers):
            _draw_sign(painter, self._at(data.x_mm[place], data.y_mm[place]), round(values[place], 2))
        for place, text, box in numbers:
            ground = QColor(theme.card)
            ground.setAlpha(235)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(ground)
            painter.drawRoundedRect(box, 3, 3)
            painter.setPen(QColor(theme.warning if data.flagged[place] else theme.ink))
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter, text)

    def _draw_scale(self, painter: QPainter, plate: QRectF, theme: Tokens) -> None:
        bar = QRectF(self.sheet.width() - 76.0, plate.top(), 14.0, plate.height())
        shades = QLinearGradient(bar.topLeft(), bar.bottomLeft())
        for step in range(21):
            share = 1.0 - step / 10.0
            shades.setColorAt(step / 20, QColor(tinted(np.array([[share]]), theme.card).pixel(0, 0)))
        painter.fillRect(bar, shades)
        painter.setPen(QColor(theme.quiet))
        line = painter.fontMetrics().height()
        limit = self._bare(local_text(f"{self.limit_mm():.2f}"))
        for y, text in ((bar.top(), f"+{limit}"), (bar.center().y() - line / 2, self.in_unit(self.tr("0 mm"))),
                        (bar.bottom() - line, f"−{limit}")):  # fmt: skip
            painter.drawText(QRectF(bar.right() + 4, y, 58, line), Qt.AlignmentFlag.AlignLeft, text)


def _draw_sign(painter: QPainter, at: QPointF, value: float) -> None:
    """Draw plus, minus, or a dot for nothing."""
    arm = _SIGN_PX if value else 0.5
    painter.drawLine(at - QPointF(arm, 0), at + QPointF(arm, 0))
    if value > 0:
        painter.drawLine(at - QPointF(0, arm), at + QPointF(0, arm))


def between(x: Floats, y: Floats, values: Floats, at_x: Floats, at_y: Floats) -> Floats:
    """Return heights between probes, nearer ones counting more; nothing is drawn higher or lower than a probe."""
    away = (at_x[..., np.newaxis] - x) ** 2 + (at_y[..., np.newaxis] - y) ** 2
    weight = 1.0 / np.maximum(away, 1e-6) ** (_NEAREST_POWER / 2)
    return np.asarray(np.sum(weight * values, axis=-1) / np.sum(weight, axis=-1))


def tinted(share: Floats, ground: str) -> QImage:
    """Return an image (rows, columns) of shares -1 to 1: blue below, orange above, the ground at zero."""
    share = np.clip(share, -1.0, 1.0)
    under = np.array(_rgb(ground))
    ends = np.where(share[..., np.newaxis] < 0, np.array(_rgb(_LOW)), np.array(_rgb(_HIGH)))
    ink = _MOST_INK * np.abs(share)[..., np.newaxis]
    rgb = np.round(ink * ends + (1 - ink) * under).astype(np.uint32)
    pixels = np.ascontiguousarray(0xFF000000 | (rgb[..., 0] << 16) | (rgb[..., 1] << 8) | rgb[..., 2], dtype=np.uint32)
    rows, columns = pixels.shape
    return QImage(pixels.data, columns, rows, 4 * columns, QImage.Format.Format_RGB32).copy()


def _rgb(colour: str) -> tuple[int, int, int]:
    c = QColor(colour)
    return c.red(), c.green(), c.blue()


def _box(metrics: QFontMetrics, text: str) -> QRect:
    return QRect(0, 0, metrics.horizontalAdvance(text) + 8, metrics.height())
