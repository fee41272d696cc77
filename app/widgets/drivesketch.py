"""A drive train drawn from motor to carriage, with the numbers that were counted."""

from __future__ import annotations

import math

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.faults import or_else, told_at_once
from app.theme import tokens
from app.widgets.roles import told_as_picture
from core.machine_geometry.drive import Drive, DriveKind, Reeving

_HEIGHT_PX = 92
_AXLE_Y = 34.0  # height of the axles
_LABEL_Y = 60.0


@told_as_picture
class DriveSketch(QWidget):
    """Draws motor, gear pairs, pulley, screw, rack or wheel, and the carriage."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._drive: Drive | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setFixedHeight(_HEIGHT_PX)
        self.setAccessibleName(self.tr("Sketch of the drive"))

    @or_else(QSize())
    def sizeHint(self) -> QSize:
        """Prefer a width at which the numbers fit."""
        return QSize(380, _HEIGHT_PX)

    def show_drive(self, drive: Drive | None) -> None:
        """Draw this drive; None leaves the place empty."""
        self._drive = drive
        self.setAccessibleDescription(self._says(drive) if drive else "")
        self.update()

    @told_at_once
    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw from left to right, each part with its number below."""
        if self._drive is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(QColor(tokens().ink), 1.2))
        painter.setBrush(QColor(tokens().soft))
        labels = self._labels(self._drive)
        width = self.width() / (len(labels) + 0.6)  # the travel at the right takes more room
        shafts = [width * (place + 0.5) for place in range(len(labels) - 1)]
        painter.drawLine(QPointF(shafts[0], _AXLE_Y), QPointF(shafts[-1], _AXLE_Y))
        self._draw_motor(painter, shafts[0])
        for x in shafts[1:-1]:
            self._draw_pair(painter, x)
        self._draw_mover(painter, self._drive, shafts[-1])
        for x, label in zip(shafts, labels, strict=False):
            self._write(painter, x, width, label)
        self._write(painter, shafts[-1] + 1.3 * width, 1.6 * width, labels[-1])
        painter.end()

    def _says(self, drive: Drive) -> str:
        motor = self.tr("motor of {steps} steps × {microsteps} microsteps").format(
            steps=drive.full_steps, microsteps=drive.microsteps)  # fmt: skip
        gears = [self.tr("gears {teeth}").format(teeth=f"{a}/{b}") for a, b in drive.gears]
        rest = self._labels(drive)[1 + len(gears) :]
        return ", ".join([motor, *gears, *rest]).replace("\n", " ")

    def _labels(self, drive: Drive) -> list[str]:
        labels = [f"{drive.full_steps} × {drive.microsteps}", *(f"{a}/{b}" for a, b in drive.gears)]
        if drive.kind is DriveKind.BELT:
            labels.append(self.tr("{teeth} teeth").format(teeth=drive.teeth))
            labels.append(self.tr("belt {pitch} mm").format(pitch=f"{drive.pitch_mm:.6g}"))
        elif drive.kind is DriveKind.SCREW:
            starts = self.tr("1 start") if drive.starts == 1 else self.tr("{n} starts").format(n=drive.starts)
            labels.append(starts)
            labels.append(self.tr("pitch {pitch} mm").format(pitch=f"{drive.pitch_mm:.6g}"))
        elif drive.kind is DriveKind.RACK:
            labels.append(self.tr("{teeth} teeth").format(teeth=drive.teeth))
            rack = self.tr("module {size} mm") if drive.module_mm else self.tr("pitch {size} mm")
            labels.append(rack.format(size=f"{drive.module_mm or drive.pitch_mm:.6g}"))
        elif drive.kind is DriveKind.ROTARY:
            labels += [self.tr("rotary axis"), "360°"]
        else:
            labels.append(f"⌀ {drive.diameter_mm:.6g} mm")
            labels.append(self.tr("carriage"))
        if drive.reeving is not Reeving.DIRECT:
            labels[-1] += "\n× 1/2" if drive.reeving is Reeving.HALF else "\n× 2"
        return labels

    def _write(self, painter: QPainter, x: float, width: float, label: str) -> None:
        box = QRectF(x - width / 2, _LABEL_Y, width, self.height() - _LABEL_Y)
        flags = Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop | Qt.TextFlag.TextWordWrap
        painter.drawText(box, flags, label)

    def _draw_motor(self, painter: QPainter, x: float) -> None:
        painter.drawRoundedRect(QRectF(x - 22, _AXLE_Y - 22, 44, 44), 4, 4)
        painter.drawEllipse(QPointF(x, _AXLE_Y), 9, 9)

    def _draw_pair(self, painter: QPainter, x: float) -> None:
        painter.drawPolygon(_toothed(QPointF(x - 6, _AXLE_Y + 10), 8, 9))
        painter.drawPolygon(_toothed(QPointF(x + 4, _AXLE_Y - 8), 15, 16))

    def _draw_mover(self, painter: QPainter, drive: Drive, x: float) -> None:
        """The pulley, screw, pinion or wheel and, to the right of it, what it moves; a table that turns."""
        if drive.kind is DriveKind.ROTARY:
            painter.setPen(QPen(QColor(tokens().accent), 2))
            painter.drawEllipse(QPointF(x, _AXLE_Y), 26, 20)
            painter.setPen(QPen(QColor(tokens().ink), 1.2))
            painter.drawLine(QPointF(x, _AXLE_Y), QPointF(x + 26, _AXLE_Y))
            return
        end = self.width() - 14.0
        middle = (x + end) / 2 + 12
        accent = QPen(QColor(tokens().accent), 2)
        if drive.kind is DriveKind.SCREW:
            painter.drawRect(QRectF(x - 14, _AXLE_Y - 5, end - x + 14, 10))
            for place in range(int((end - x) / 9)):
                left = x - 8 + 9 * place
                painter.drawLine(QPointF(left, _AXLE_Y + 5), QPointF(left + 5, _AXLE_Y - 5))
        elif drive.kind is DriveKind.BELT:
            painter.setPen(accent)
            painter.drawLine(QPointF(x, _AXLE_Y - 16), QPointF(end - 8, _AXLE_Y - 16))
            painter.drawLine(QPointF(x, _AXLE_Y + 16), QPointF(end - 8, _AXLE_Y + 16))
            painter.setPen(QPen(QColor(tokens().ink), 1.2))
            painter.drawEllipse(QPointF(end - 8, _AXLE_Y), 8, 16)
            painter.drawPolygon(_toothed(QPointF(x, _AXLE_Y), 16, 14))
        else:
            painter.setPen(accent)
            painter.drawLine(QPointF(x - 20, _AXLE_Y + 17), QPointF(end, _AXLE_Y + 17))
            painter.setPen(QPen(QColor(tokens().ink), 1.2))
            teeth = 14 if drive.kind is DriveKind.RACK else 0
            centre = QPointF(x, _AXLE_Y)
            painter.drawPolygon(_toothed(centre, 16, teeth)) if teeth else painter.drawEllipse(centre, 16, 16)
        painter.setBrush(QColor(tokens().accent))
        painter.setPen(Qt.PenStyle.NoPen)
        top = _AXLE_Y - 24 if drive.kind in (DriveKind.BELT, DriveKind.SCREW) else _AXLE_Y
        painter.drawRoundedRect(QRectF(middle - 16, top, 32, 16), 3, 3)
        painter.setPen(QPen(QColor(tokens().ink), 1.2))


def _toothed(centre: QPointF, radius: float, teeth: int) -> QPolygonF:
    """A wheel of this radius with so many drawn teeth; the counted number stands below it."""
    points = []
    for half in range(4 * teeth):
        angle = math.pi * half / (2 * teeth)
        r = radius + (1.5 if half % 4 < 2 else -1.5)
        points.append(QPointF(centre.x() + r * math.cos(angle), centre.y() + r * math.sin(angle)))
    return QPolygonF(points)
