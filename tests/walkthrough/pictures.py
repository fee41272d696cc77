"""The pictures of the walkthrough: the window as it is, with at most two numbered rings, in few colours."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import numpy as np
from PySide6.QtCore import QMargins, QPoint, QRect, Qt
from PySide6.QtGui import QColor, QFont, QImage, QPainter, QPen
from PySide6.QtWidgets import QWidget

_RING, _HALO = QColor("#d55e00"), QColor("#ffffff")  # vermilion of the Okabe-Ito palette
_AROUND_PX, _CORNER_PX, _BADGE_PX = 2, 7, 22
_COLOURS = 255
MOST_MARKS = 2


def place_of(window: QWidget, widget: QWidget, part: QRect | None = None) -> QRect:
    """Return where a widget, or a part of it, is in sight on the window."""
    part = widget.visibleRegion().boundingRect().intersected(widget.rect() if part is None else part)
    return QRect(widget.mapTo(window, part.topLeft()), part.size())


def picture(window: QWidget, marks: Sequence[QRect]) -> QImage:
    """Return the window with numbered rings around these places."""
    assert len(marks) <= MOST_MARKS
    image = window.grab().toImage().convertToFormat(QImage.Format.Format_RGB32)
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for number, mark in enumerate(marks, start=1):
        _draw_ring(painter, mark.marginsAdded(_margins()).intersected(image.rect().adjusted(3, 3, -3, -3)), number)
    painter.end()
    return image


def save_small(image: QImage, path: Path) -> None:
    """Write a picture as PNG with a palette of its most frequent colours; the others take the nearest of them."""
    height, width = image.height(), image.width()
    lines = np.frombuffer(image.constBits(), np.uint32).reshape(height, image.bytesPerLine() // 4)
    pixels = lines[:, :width] & 0xFFFFFF
    colours, inverse, counts = np.unique(pixels, return_inverse=True, return_counts=True)
    kept = colours[np.argsort(-counts, kind="stable")[:_COLOURS]]
    away = np.abs(_rgb(colours)[:, None, :] - _rgb(kept)[None, :, :]).sum(axis=2)
    indices = away.argmin(axis=1).astype(np.uint8)[inverse].reshape(height, width)
    small = QImage(np.ascontiguousarray(indices).tobytes(), width, height, width, QImage.Format.Format_Indexed8)
    small.setColorTable([0xFF000000 | int(colour) for colour in kept])
    path.parent.mkdir(parents=True, exist_ok=True)
    if not small.save(str(path), "PNG", 0):  # 0: as small as can be
        raise OSError(path)


def _rgb(colours: np.ndarray) -> np.ndarray:
    return np.stack([(colours >> shift) & 0xFF for shift in (16, 8, 0)], axis=1).astype(np.int32)


def _margins() -> QMargins:
    return QMargins(_AROUND_PX, _AROUND_PX, _AROUND_PX, _AROUND_PX)


def _draw_ring(painter: QPainter, place: QRect, number: int) -> None:
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for colour, width in ((_HALO, 4), (_RING, 2)):
        painter.setPen(QPen(colour, width))
        painter.drawRoundedRect(place, _CORNER_PX, _CORNER_PX)
    badge = QRect(0, 0, _BADGE_PX, _BADGE_PX)
    badge.moveCenter(place.topRight() - QPoint(_BADGE_PX // 2, 0))
    window = painter.window()
    badge.moveTop(max(badge.top(), window.top() + 1))
    painter.setPen(QPen(_HALO, 2))
    painter.setBrush(_RING)
    painter.drawEllipse(badge)
    font = QFont(painter.font())
    font.setPixelSize(14)
    font.setBold(True)
    painter.setFont(font)
    painter.drawText(badge, Qt.AlignmentFlag.AlignCenter, str(number))
