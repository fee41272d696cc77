"""Which part of a plane is seen: all of it, or enlarged about a place and moved."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QPointF, QRectF, QSize

_EDGE_PX = 26.0
_STEP = 1.25
_MOST = 40.0


class Sight:
    """Puts millimetres, y upwards, on a sheet in pixels; `whole_mm` tells what all of it is."""

    def __init__(self, whole_mm: Callable[[], QRectF]) -> None:
        self._whole_mm = whole_mm
        self._zoom = 1.0
        self._shift_mm = QPointF()  # of the middle

    def show_all(self) -> None:
        """See all of it."""
        self._zoom, self._shift_mm = 1.0, QPointF()

    def enlarge(self, steps: int, about: QPointF, size: QSize) -> None:
        """Enlarge about a place of the sheet, which stays where it is; no steps show all."""
        if not steps:
            self.show_all()
            return
        before = self._zoom
        self._zoom = min(max(before * _STEP**steps, 1.0), _MOST)
        away = about - QPointF(size.width() / 2, size.height() / 2)
        scale = self.scale(size)
        gained = 1.0 / (scale * before / self._zoom) - 1.0 / scale
        self._shift_mm += QPointF(away.x() * gained, -away.y() * gained)
        if self._zoom == 1.0:
            self._shift_mm = QPointF()

    def drag(self, way_px: QPointF, size: QSize) -> None:
        """Move what is seen with the mouse."""
        self._shift_mm += QPointF(-way_px.x(), way_px.y()) / self.scale(size)

    def scale(self, size: QSize) -> float:
        """Return the pixels of a millimetre."""
        whole = self._whole_mm()
        fits = min((size.width() - 2 * _EDGE_PX) / whole.width(), (size.height() - 2 * _EDGE_PX) / whole.height())
        return fits * self._zoom

    def at(self, size: QSize, x_mm: float, y_mm: float) -> QPointF:
        """Return where a place is on the sheet."""
        scale, middle = self.scale(size), self._whole_mm().center() + self._shift_mm
        return QPointF(
            size.width() / 2 + (x_mm - middle.x()) * scale, size.height() / 2 - (y_mm - middle.y()) * scale
        )
